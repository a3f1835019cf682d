"""English, second part of its table: sentences about results, and what stands in their place."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

SENTENCES: Mapping[str, str | Forms] = {
    # first place
    "place.lower": "lowest",
    "place.higher": "highest",
    "beside.lower": "below",
    "beside.higher": "above",
    "than.lower": "lower",
    "than.higher": "higher",
    "than.alike": "alike",
    "of-part": "{part}: {says}",
    "yardstick.passes": {"one": "one pass each", "other": "{count} passes each"},
    "yardstick.uneven": "these passes",
    "yardstick.declared": "the scatter stated for the method",
    "yardstick.both": "these passes and the scatter stated for the method",
    "yardstick.step": "the instrument's step",
    "first.winner": "{winner} is {place}: {value}",
    "first.winner.off": "{winner} is {place}: it read {bound}",
    "first.lead": "Its lead of {gap} over {next}, the nearest, is more than the {half} that chance could make with "
    "{yardstick}: a repeat should agree",
    "first.lead.alike": "Its lead of {gap} over {next}, the nearest, is more than the {half} that chance could make "
    "with {yardstick}: if all scatter alike, a repeat should agree",
    "first.lead.unseen": "Each was run once: how far a repeat would differ was stated before testing, not seen here",
    "first.with-excluded": "Counting what was left out would change some places",
    "first.with-excluded.more": "If what was left out counted, {names} might be first too",
    "first.with-excluded.fewer": "If what was left out counted, {names} would not be first",
    "first.with-excluded.other": {
        "one": "If what was left out counted, {more} might be first, and {fewer} would not be",
        "other": "If what was left out counted, {more} might be first, and {fewer} would not",
    },
    "first.with-excluded.lower": "If what was left out counted, first place would stay as it is; lower places would "
    "change",
    "first.lead.plain": "A repeat should agree",
    "first.lead.plain.alike": "If all scatter alike, a repeat should agree",
    "first.matters.yes": "That is more than the {matters} that we say would matter",
    "first.matters.no": "That is less than the {matters} that would matter",
    "first.matters.open": "Whether it is more than the {matters} that we say would matter is open",
    "first.tie": "{names} share first place: the gap of {gap} is smaller than {yardstick} can tell ({half})",
    "first.tie.no-gap": "{names} share first place: they came out alike, and {yardstick} can't tell gaps under {half}",
    "first.tie.by-steps": "{names} share first place: on the instrument's steps a gap counts from {half} on, "
    "and theirs is {gap}",
    "first.tie.no-gap-by-steps": "{names} share first place: they came out alike, "
    "and on the instrument's steps a gap counts from {half} on",
    "first.tie.plain": "{names} can't be told apart for first place",
    "first.tie.alone": "Nobody was shown to be better than {names}, but the lead over every other isn't shown either",
    "first.tie.nothing-matters": "{names} share first place: "
    "whatever separates them is less than the {matters} that would matter",
    "first.beat.both": "Both beat {others}",
    "first.beat.all": "All {count} beat {others}",
    "first.beat.some": {
        "one": "{others} is behind at least one of them",
        "other": "{others} are each behind at least one of them",
    },
    "first.others": "the other {count}",
    "first.settle": "About {passes} passes each would settle a gap of {gap}",
    "first.settle.specimens": "About {count} specimens of each would settle a gap of {gap}",
    "first.settle.finer": "A finer instrument would settle it sooner than more passes",
    "first.ran-once.reading": "One reading each",
    "first.ran-once.sample": "One sample each",
    "first.ran-once": "Each ran once",
    "first.too-few": "Too few passes to know the scatter",
    "first.once.values": "{ran}: {values}",
    "first.once.leads": "{leader} read {gap} {than} than {next} in this run; that it would again isn't shown",
    "first.once.leads-all": "{leader} read {place} in this run, {gap} {beside} {next}; that it would again isn't shown",
    "first.once.unknown": "{leader} read {place} in this run; how far the instrument may be off isn't known, "
    "nor whether a repeat would agree",
    "first.once.alike": "{names} can't be told apart even in this run",
    "first.once.gaps": "Gaps up to {half} can't be told on this instrument",
    "first.once.repeat": "Whether that would repeat isn't known",
    "first.sessions-apart": "Not ranked: they were measured in different sessions, "
    "and nothing says how far sessions differ",
    "first.off-scale-both": "Not ranked: each is known from one side only",
    "first.not-above-zero": "Not ranked: the scatter is taken in proportion to the value, "
    "which needs readings above zero",
    "first.one": "Only {name} has a result, so there is nothing to compare: {value}",
    "first.none": "Nothing to compare: no contender has a ranked result",
    "first.not-tested": "Not yet tested",
    "first.no-direction": "Shown without rank, since neither lower nor higher is better: {values}",
    "first.shown-only": "Shown without rank: {values}",
    "off.last": "{name} read {bound}: last, but by how much is unknown",
    "off.first": "{name} read {bound}: first, but by how much is unknown",
    "off.last.this-run": "{name} read {bound}, the {place} in this run; by how much is unknown",
    "off.running": "{name} is still running ({bound}), so how far it stands from the others is open",
    "off.open": "{name} read {bound}, so how far it stands from the others is unknown",
    "unranked": {"one": "{names} isn't ranked: {why}", "other": "{names} aren't ranked: {why}"},
    "missing": {"one": "{names} has no result: {why}", "other": "{names} have no result: {why}"},
    "value-of": "{name} {value}",
    # short findings, for a chart's subtitle and alternative text
    "finding.winner": "{winner} is {place}, by {gap}",
    "finding.winner.plain": "{winner} is {place}",
    "finding.winner.small": "{winner} is {place}, but by less than would matter",
    "finding.tie": "{names} share first place",
    "finding.tie.all": "The {count} can't be told apart",
    "finding.tie.two": "{names} can't be told apart",
    "finding.once": "{leader} read {place} in this run; whether a repeat would agree isn't known",
    "finding.once.open": {
        "one": "Who read {place} is open: {names} is known from one side only",
        "other": "Who read {place} is open: {names} are known from one side only",
    },
    "finding.once.alike": "{names} can't be told apart in this run",
    "finding.one": "Only {name} has a result",
    "finding.shown": "Shown without rank",
    "finding.not-tested": "Not yet tested",
    "finding.no-result": "No result",
    "finding.not-ranked": "Not ranked",
    # results
    "result.line": "{name}: {value}",
    "result.passes": {"one": "{line}, one pass", "other": "{line}, mean of {count} passes"},
    "result.specimens": "{line}, mean of {count} specimens",
    "result.excluded": {
        "one": "{line} (one more left out)",
        "other": "{line} ({count} more left out)",
    },
    "result.none": "{name}: no result ({why})",
    "result.this-run": "{line}; in this run, a repeat may differ",
    "result.why-no-u": "{name}: no uncertainty is given, because {why}",
    "single.line": {
        "one": "{name} was run once: how far a repeat would differ isn't known",
        "other": "{name} were run once each: how far a repeat would differ isn't known",
    },
    # comparisons
    "comparison.ahead": "{name} is ahead",
    "comparison.line": "{first} against {second}: {difference}. {decision}. {means}",
    "comparison.line.no-difference": "{first} against {second}: no difference can be given. {decision}. {means}",
    "within.rounds": "{names} isn't counted in every round, so the gap makes up for the rounds it missed, going by "
    "how the others fared in them; the means as shown differ by {plain} (for specialists: least squares on contender "
    "and round)",
    "within.rounds.some": "Not all are counted in every round, so the gap makes up for whether rounds were good or bad "
    "for those in them; the means as shown differ by {plain} (for specialists: least squares on contender and round)",
    "within.sessions": "The gap is taken within sessions, since {names} didn't run in all of them; "
    "the means as shown differ by {plain}",
    "within.sessions.some": "The gap is taken within sessions, since not all ran in all of them; "
    "the means as shown differ by {plain}",
    "within.ratios": "The gap is taken from the ratio of the two, pass by pass; the means as shown differ by {plain}",
    "pair.better": "better",
    "pair.worse": "worse",
    "pair.no-difference-that-matters": "not told apart; nothing that matters",
    "pair.too-close-to-call": "not told apart",
    "pair.not-enough-to-say": "not enough to say",
    "pair.none": "not compared",
    "pair.none.means": "They weren't compared",
    "pair.better.means": "{first} is {gap} {than} than {second}; a repeat should agree",
    "pair.better.means.yes": "{first} is {gap} {than} than {second}, by an amount that matters; a repeat should agree",
    "pair.better.means.open": "{first} is {gap} {than} than {second}; a repeat should agree, "
    "but the gap may be under the {matters} that would matter",
    "pair.better.means.bound": "{off} read {bound}; by how much they differ is unknown",
    "pair.same.means": "Whatever separates them is less than the {matters} that would matter",
    "pair.same.means.resolved": "{first} is {gap} {than} than {second}, "
    "but by less than the {matters} that would matter",
    "pair.close.means": "The gap of {gap} is smaller than {yardstick} can tell ({half})",
    "pair.close.means.no-gap": "They came out alike; {yardstick} can't tell gaps under {half}",
    "pair.close.means.by-steps": "The gap is {gap}; on the instrument's steps one counts from {half} on",
    "pair.close.means.plain": "Neither is shown to be ahead: {why}",
    "pair.once.means": "{first} read {gap} {than} than {second} in this run, more than the instrument leaves open; "
    "that it would again isn't shown",
    "pair.once.means.alike": "They can't be told apart even in this run",
    "pair.once.means.unknown": "{first} read {gap} {than} than {second} in this run; "
    "how far the instrument may be off isn't known, nor whether a repeat would agree",
    "pair.once.means.equal": "They read the same in this run; whether a repeat would agree isn't known",
    "pair.once.means.bound": "{off} read {bound}, beyond what {other} read in this run; "
    "that it would again isn't shown",
    "pair.once.means.other": "{first} read {gap} {than} than {second} in these runs: {why}",
    "pair.once.means.other-open": "{first} read {gap} {than} than {second}: {why}",
    # claims and conditions
    "claim.bound.at-most": "at most {amount}",
    "claim.bound.at-least": "at least {amount}",
    "claim.bound.also": "{amount} ({other})",
    "claim.bound.within": "{amount}, give or take {within}",
    "claim.bound.both": "{low} to {high}",
    "claim.line.supported": "{says}: supported for the one we bought",
    "claim.line.contradicted": "{says}: contradicted by the one we bought",
    "claim.line.undecided": "{says}: undecided for the one we bought",
    "claim.line.not-tested": "{says}: not tested",
    "claim.says": "“{says}” ({source})",
    "claim.quoted": "“{says}”",
    "claim.blocked": "The result isn't used for it: {why}",
    "claim.evidence": "We measured {value} where the claim has {bound}",
    "claim.evidence.p": "We measured {value} where the claim has {bound}; the chance that it holds is {probability}",
    "claim.evidence.p.this-run": "We measured {value} where the claim has {bound}; "
    "the chance that it held then is {probability}, and whether a repeat would agree isn't known",
    "claim.looked": "We looked: {looked}",
    "claim.untestable": "No number could test it. {why}",
    "claim.untestable.plain": "No number could test it",
    "claim.no-result": "There is no result to hold it against",
    "claim.no-quantity": "It names nothing that we measured",
    "claim.under": "It is claimed under another condition: {under}",
    "must.supported": "{name} meets the condition: {quantity} {bound}",
    "must.contradicted": "{name} is out: {quantity} has to be {bound}, and it read {value}",
    "must.undecided": "Whether {name} meets the condition ({quantity} {bound}) is undecided: {value}",
    "must.not-tested": "Whether {name} meets the condition ({quantity} {bound}) wasn't tested",
    # passes of which the formula makes nothing
    "no-value.pass": "Pass {n} of {name} was read and gives no value, so it isn’t counted: {why}",
    "no-value.nothing-read": "{why}, by a reading of {text}",
    # exclusions
    "exclusion.pass": {"one": "One pass of {name} is left out", "other": "{count} passes of {name} are left out"},
    "exclusion.because": "{left_out} ({because}; {decided})",
    "exclusion.with": "{left_out}: {value} without it, {put_back} with it",
    "exclusion.with-them": "{left_out}: {value} without them, {put_back} with them",
    "exclusion.not-repeated": "{left_out} and wasn't repeated",
    "exclusion.alone": "{left_out}, and nothing else was read",
    "exclusion.no-value": "{left_out}, and what else was read gives no result",
    "exclusion.order-same": "The order doesn't change",
    "exclusion.order-changes": "With all that is left out, some places change",
    "exclusion.moves": {"one": "With it, {moves}", "other": "With them, {moves}"},
    "exclusion.moves.all": "With all that is left out, {moves}",
    "exclusion.move": "{name} would be in place {then} instead of {now}",
    # yes/no, counts, grades
    "yes.of": "{yes} of {of}",
    "yes.line": "{name}: {yes} of {of}",
    "yes.all-once": "{title}: yes for all at the first try. Each can; how often is unknown "
    "(one try leaves the chance of a no anywhere up to {failure})",
    "yes.all-each": "{title}: yes for all, each in {tries}. "
    "That leaves the chance of a no anywhere up to {failure} for each",
    "yes.none-once": "{title}: no for all at the first try. How often it might be yes is unknown "
    "(one try leaves that chance anywhere up to {failure})",
    "yes.mixed": "{lines}. So few tries leave wide limits, and no order is shown",
    "count.line": "{values}. Counts are shown as they are; no order is shown",
    "grade.line": "{values}. Grades are one look each, in words; no order is shown",
    # the campaign as a whole
    "claim.evidence.unknown-accuracy": "{found}. How far the instrument itself may be off isn't known, and isn't in "
    "that chance",
    "note.unknown-accuracy": {
        "one": "How far the {instruments} may be off isn't known, and the ranges leave that out: off by the same "
        "amount everywhere, it shifts values and leaves the gaps between them; off by a percentage, it changes values "
        "and gaps by that percentage",
        "other": "How far the {instruments} may be off isn't known, and the ranges leave that out: off by the same "
        "amount everywhere, they shift values and leave the gaps between them; off by a percentage, they change values "
        "and gaps by that percentage",
    },
    "note.also": "In other units: {values}",
    "interval.counted": "{value}, counted",
    "note.assumed-step": "No instrument is named: the finest digit written counts as its step, and how far it may be "
    "off isn't known",
    "money.dominated": "{name} {costs}, and is shown to be worse on {quantity} and better on none of the {things}",
    "money.dominated.one": "{name} {costs}, and is shown to be worse on {things}",
    "money.dominated.some": "{name} {costs}, and is shown to be worse on at least one of the "
    "{things} and better on none",
    "money.elsewhere": "Outside these, {name} is shown to be better than {better} on {quantity}",
    "money.elsewhere.some": "Outside these, {name} is shown to be better than one or more of {better} on {quantity}",
    "money.things": "{count} things compared",
    "money.things.weighed": "{count} things the verdict weighs ({quantities})",
    "money.things.weighed.many": "{count} things the verdict weighs",
    "money.thing": "{quantity}, the one thing compared",
    "money.thing.weighed": "{quantity}, the one thing the verdict weighs",
    "money.frontier": {
        "one": "Nothing that costs no more is shown to be better than {name} on {things}",
        "other": "Nothing that costs no more is better all round than {name}",
    },
    "money.no-better": "Nor is {name} shown to be better on anything than one that costs less",
    "money.cheapest": "{name} costs least",
    "money.alone": "No other price is noted to hold it against",
    "order.rounds": "Every round ran each contender once",
    "order.random": "Every round ran each contender once, in random order",
    "order.as-written": "The readings stand in the order they were taken",
    "order.unknown": "In what order they ran wasn't recorded",
    # references in prose
    "reference.no-result": "no result",
}
