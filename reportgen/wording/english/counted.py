"""English: what exact tests decide about yes and no, counts and grades."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

COUNTED: Mapping[str, str | Forms] = {
    "chance.place": "first",
    "chance.up-to": "up to {p}",
    "chance.under": "under {p}",
    "chance.enough.yes-no": "{count} tries each",
    "chance.enough.grade": "{count} grades each",
    "chance.enough.count": "{count} runs each",
    "chance.now.yes-no": {"one": "one try each", "other": "{count} tries each"},
    "chance.now.grade": {"one": "one grade each", "other": "{count} grades each"},
    "chance.now.uneven": "so few",
    "chance.enough.run": "{count} runs each",
    "chance.now.run": {"one": "one run each", "other": "{count} runs each"},
    "missing.unfinished": "it finished {yes} of {of} runs, and no mean is taken of those that did",
    "missing.unfinished.why": "it finished {yes} of {of} runs ({why}), and no mean is taken of those that did",
    "missing.unfinished.none": "none of its runs finished",
    "missing.unfinished.none.why": "none of its runs finished ({why})",
    "chance.finished": "finished {yes} of {of}",
    # first place
    "chance.winner": "{winner} comes {place}: {value}",
    "chance.winner.lead": "Against {next}, the nearest ({other}), chance alone would give such a lead in {p} of cases, "
    "and {allowed} is what we allow: a repeat should agree",
    "chance.winner.lead.count": "Against {next}, the nearest ({other}), chance alone would give such a lead in {p} of "
    "cases, and {allowed} is what we allow: if each comes by itself, a repeat should agree",
    "chance.alike": "{names} came out alike ({value} each), so nobody is ahead",
    "chance.tie.all": "{names} can't be told apart: {values}. The widest gap here would come up by chance alone, this "
    "way round, in {p} of cases, and {allowed} is what we allow",
    "chance.tie": "{names} share first place: {values}",
    "chance.tie.alone": "Nobody was shown to be better than {names}, but the lead over every other isn't shown either",
    "chance.never": "Not enough to say: {values}. With {now} no outcome could tell two of them apart; {enough} could",
    "chance.settle": "About {enough} would settle a gap like the widest of these",
    # one against another
    "chance.pair.better": "{first}: {one}, {second}: {other}. Chance alone would put {ahead} so far ahead in {p} of "
    "cases, and {allowed} is what we allow; a repeat should agree",
    "chance.pair.better.count": "{first}: {one}, {second}: {other}. Chance alone would put {ahead} so far ahead in {p} "
    "of cases, and {allowed} is what we allow; if each comes by itself, a repeat should agree",
    "chance.pair.open": "{first}: {one}, {second}: {other}. Such a gap would come up by chance alone, this way round, "
    "in {p} of cases, and {allowed} is what we allow",
    "chance.pair.alike": "{first} and {second} came out alike: {one}",
    "chance.pair.never": "{first}: {one}, {second}: {other}. With {now} no outcome could tell the two apart",
    "chance.pair.settle": "About {enough} would settle a gap like this one",
    "chance.pair.settle.least": "From {enough} on, the clearest outcome would tell them apart",
    # elsewhere
    "finding.chance.winner": "{winner} comes first",
    "finding.chance.never": "Too few of each to tell anybody apart",
    "result.share": "{line}; in the long run {low} to {high}, as far as these tell",
    "result.rate": "{line}; in the long run {range} a run, as far as these tell",
    "count.line.not-independent": "{values}. Nothing says that each comes by itself, so no order is shown",
    "covers.at-least.tries": "The percentages are how often it would be yes in the long run: of 100 such ranges at "
    "least 95 hold it",
    "covers.at-least.events": "Of 100 such ranges at least 95 hold the true number a run, if each comes by itself",
    "reason.chance-excluded": "chance alone would hardly ever put one so far ahead",
    "reason.chance-open": "chance alone puts two so far apart too often",
    "reason.never-enough": "with so few no outcome could have told them apart",
    "blocked.no-exposure": "how long it was counted over isn't known",
    "blocked.limit": "it is known from one side only",
}
