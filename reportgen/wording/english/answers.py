"""English: a campaign's answer, how firm it is, and what is known where nobody is told apart."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

ANSWERS: Mapping[str, str | Forms] = {
    "part-of": "{title} ({part})",
    # of whom an answer speaks
    "whom.bought": "the {count} we bought",
    "whom.tested": "the {count} we tested",
    "whom.products": "the {count} products",
    "whom.ranked": "the {count} ranked there",
    "of-whom": "of {whom}, ",
    # what was asked first
    "answer.comes-first": "{of}{winner} did best on {quantities}",
    "answer.comes-first.by": "{of}{winner} did best on {quantities}, {gap} {than} {next}, the nearest",
    "answer.but-small": "{said}; that is less than the {matters} that would matter",
    "answer.all-things": "all {count} things compared",
    "answer.share": "{of}{names} share first place on {quantities}",
    "answer.share.ahead": "{of}{names} share first place on {quantities}, ahead of {others}",
    "answer.tied": "{whom} can't be told apart on {quantities}",
    "answer.tied.hidden": "{whom} can't be told apart on {quantities}: any gap of more than {gap} would have counted, "
    "and there was none",
    "answer.tied.nothing-matters": "{whom} can't be told apart on {quantities}, and whatever separates them is less "
    "than the {matters} that would matter",
    "answer.asked-once": "on {quantities} these runs don't say who is ahead",
    "answer.asked-once.leads": "in this run {leader} read {place} on {quantities}; that it would again isn't shown",
    "answer.asked-once.leads-by": "in this run {leader} read {place} on {quantities}, {gap} {beside} {next}; "
    "that it would again isn't shown",
    "answer.only-one": "on {quantities} only {name} could be ranked, so there is nothing to hold it against",
    "answer.nobody-ranked": "on {quantities} nobody could be ranked",
    # everything else
    "answer.best-on": "{winner} did best on {quantities}",
    "answer.best-on.also": "it also did best on {quantities}",
    "answer.best-on.too": "{winner} on {quantities}",
    "answer.shared": "{names} share first place on {quantities}",
    "answer.things": "{count} things",
    "answer.nobody": {
        "one": "nor is anybody shown to be best on the one other thing compared, {quantities}",
        "other": "nor is anybody shown to be best on the {count} other things compared",
    },
    "answer.rest": {
        "one": "on {quantities} nobody is shown to be best",
        "other": "on the other {count} things compared nobody is shown to be best",
    },
    "answer.once": "{leader} read best on {quantities}",
    "answer.once.too": "{leader} on {quantities}",
    "answer.once.all": "{said}: in these runs, and whether repeats would agree isn't known",
    "answer.once.nobody": {
        "one": "nor do these runs say who is ahead on {quantities}",
        "other": "nor do these runs say who is ahead on the {count} other things compared",
    },
    "answer.join": "; ",
    "answer.not-tested": "Nothing has been tested yet",
    "answer.unranked-only": "The results are shown without rank",
    # all criteria weighed together
    "answer.overall.given": "weighed as we chose to, {winner} comes out first over all",
    "answer.overall.all": "{winner} comes out first over all, for nearly every way of weighing what was compared",
    # what the grid leaves to other pages
    "grid.elsewhere": {
        "one": "one of the {all} things compared has no row here and stands with its test: {titles}",
        "other": "{count} of the {all} things compared have no row here and stand with their tests: {titles}",
    },
    "grid.elsewhere.many": {
        "one": "one of the {all} things compared has no row here and stands with its test",
        "other": "{count} of the {all} things compared have no row here and stand with their tests",
    },
    "grid.notes-elsewhere": {
        "one": "note {numbers} is on another page: it limits nothing in this table",
        "other": "notes {numbers} are on other pages: they limit nothing in this table",
    },
    "grid.notes-elsewhere.many": "Numbers that are passed over here belong to notes on other pages, which limit "
    "nothing in this table",
    # how firm
    "firm.all": "Every comparison rests on repeats",
    "firm.some": {
        "one": "{known} of the {all} things compared has repeats",
        "other": "{known} of the {all} things compared have repeats",
    },
    "firm.some.of-every": {
        "one": "{known} of the {all} things compared has repeats of every contender ranked",
        "other": "{known} of the {all} things compared have repeats of every contender ranked",
    },
    "firm.partly": {
        "one": "one more of some contenders only",
        "other": "{partly} more of some contenders only",
    },
    "firm.some-partly": {
        "one": "on one of the {all} things compared some contenders were repeated, others not",
        "other": "on {partly} of the {all} things compared some contenders were repeated, others not",
    },
    "firm.stated": {
        "one": "one was run once, but how much it varies was known before the test",
        "other": "{stated} were run once, but how much they vary was known before the test",
    },
    "firm.all-partly": "Some contenders were repeated here, others not",
    "firm.all-stated": "nothing was repeated here, but how much a run varies was known before the test",
    "firm.some-stated": {
        "one": "nothing was repeated here, but how much one of the {all} things compared varies was known before the "
        "test",
        "other": "nothing was repeated here, but how much {stated} of the {all} things compared vary was known before "
        "the test",
    },
    "firm.others": {
        "one": "{said}; on the other one a repeat might come out differently",
        "other": "{said}; on the others a repeat might come out differently",
    },
    "firm.none": "Nothing was repeated, so what is said holds for these runs alone",
    "firm.guarantee": "On any one thing where nobody is truly ahead, we would wrongly name a winner at most 1 time in "
    "20",
    "firm.guarantee.alike": "On any one thing where nobody is truly ahead, we would wrongly name a winner at most 1 "
    "time in 20, if all of them vary about equally from run to run",
    "firm.missed": {
        "one": "{names} misses our condition on {quantity} ({bound}), so it is out of the verdict",
        "other": "{names} miss our condition on {quantity} ({bound}), so they are out of the verdict",
    },
    "firm.left-out": "Passes were left out of {quantities}: {then}",
    "firm.running": {
        "one": "{names} is still running ({quantities}), so what is said of it there is only so far",
        "other": "{names} are still running ({quantities}), so what is said of them there is only so far",
    },
    "firm.untested": {
        "one": "{names} hasn't been tested yet",
        "other": "{names} haven't been tested yet",
    },
    "firm.bought": "All of it is about the ones we bought, one of each",
    "firm.tested": "All of it is about the ones we tested, one of each",
    "firm.bought-apart": "We bought one of each; how far another of its kind may differ is declared, and counted",
    "firm.bought-several": "All of it is about the ones we bought",
    # where nobody is told apart
    "tie.all.two": "{names} can't be told apart: the gap of {gap} is smaller than {yardstick} can tell ({half})",
    "tie.all": "{names} can't be told apart: even the widest gap, {gap}, is smaller than {yardstick} can tell ({half})",
    "tie.all.no-gap": "{names} can't be told apart: they came out alike, and {yardstick} can't tell gaps under {half}",
    "tie.all.nothing-matters": "{names} can't be told apart, and whatever separates them is less than the {matters} "
    "that would matter",
    "tie.all.plain": "{names} can't be told apart",
    "tie.ruled-out.two": "Their true difference is less than about {most}, as far as these readings go (95 % sure)",
    "tie.ruled-out": "No two of them truly differ by more than about {most}, as far as these readings go (95 % sure)",
    # one against another
    "comparison.ahead.small": "{name} is ahead, by less than would matter",
    "decision.told-apart.nothing-matters": "can't be told apart; no difference that matters",
    "pair.ahead": "ahead",
    "pair.ahead.small": "ahead, by little",
}
