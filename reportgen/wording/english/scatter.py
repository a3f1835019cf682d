"""English: how far passes scatter, where that is known from, and where passes speak against what was assumed."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

SCATTER: Mapping[str, str | Forms] = {
    # where it is known from
    "past.declared": "How far a repeat would differ is known from passes of {campaigns}, tested before by the same "
    "version of the method ({degrees})",
    "past.both": "How far a repeat would differ is known from these passes and from those of {campaigns}, tested "
    "before by the same version of the method (together {degrees})",
    "past.unused": "The passes of {campaigns}, tested before by the same version of the method, are too few to join "
    "these ({degrees}, and twenty are asked)",
    "past.none": "The method asks past campaigns how far passes scatter, and there is none that could tell",
    "past.left-out.undated": "“{title}” is left out: it isn't dated, so nobody can tell whether it came before",
    "past.left-out.another-procedure": "“{title}” is left out: the same version of the method has other steps there",
    "past.left-out.another-unit": "“{title}” is left out: its unit measures something else",
    "past.left-out.another-rule": "“{title}” is left out: its scatter was taken by another rule",
    "past.undated": "This campaign doesn't say when it was tested, so no other is known to have come before it",
    "yardstick.declared.past": "the scatter of past campaigns",
    "yardstick.both.past": "these passes and the scatter of past campaigns",
    "first.lead.unseen.past": "Each was run once: how far a repeat would differ was seen in past campaigns, not here",
    "covers.what.scatter-past": "the scatter between passes of past campaigns",
    # what passes show
    "seen.trend.up": "From pass to pass the values of all rise, by about {slope} each time, and by more than scatter "
    "explains. It counts as scatter all the same, so the ranges are the wider for it",
    "seen.trend.down": "From pass to pass the values of all fall, by about {slope} each time, and by more than scatter "
    "explains. It counts as scatter all the same, so the ranges are the wider for it",
    "seen.trend.up.rounds": "From round to round the values of all rise, by about {slope} each time, and by more than "
    "scatter explains. Gaps are taken within rounds, so it leaves them alone; each value by itself holds it",
    "seen.trend.down.rounds": "From round to round the values of all fall, by about {slope} each time, and by more "
    "than scatter explains. Gaps are taken within rounds, so it leaves them alone; each value by itself holds it",
    "seen.uneven": "{name} scatters by {sd} from pass to pass, the others together by {others}. First place is judged "
    "as if all scatter alike, and these passes speak against that",
    "seen.uneven.stays": "With each taken by its own scatter {winner} would be first all the same",
    "seen.uneven.nobody": "With each taken by its own scatter nobody would be alone in first place",
    "seen.uneven.nobody-either": "With each taken by its own scatter nobody would be alone in first place either",
    "seen.uneven.turns": "With each taken by its own scatter {winner} would be first",
    "seen.apart": "Pass {n} of {name} ({value}) stands apart from the others, by more than chance explains. It counts",
    "seen.apart.specimen": "Specimen {n} of {name} ({value}) stands apart from the others, by more than chance "
    "explains. It counts",
    "seen.at-odds.wider": "These passes scatter by {sd}, further than the {declared} known beforehand, and by more "
    "than chance explains",
    "seen.at-odds.narrower": "These passes scatter by {sd}, less far than the {declared} known beforehand, and by more "
    "than chance explains",
    "seen.at-odds.passes": "The passes are what counts here",
    "seen.at-odds.both": "Both count, by their degrees of freedom",
    "seen.two-passes": "Two passes each say next to nothing of how far each scatters by itself",
    # what would settle it, where passes would not
    "first.settle.apart": "More passes would not settle it, but about {count} specimens of each might: how far one "
    "differs from another of its kind stands in the way",
    "first.settle.calibration": "More passes would not settle it: the instruments may be off by different amounts. "
    "Calibrating them, or reading all on one, would",
    # exclusions
    "exclusion.move.new": "{name} would be in place {then}",
    "exclusion.pairs": {"one": "With it, {pairs}", "other": "With them, {pairs}"},
    "exclusion.pairs.all": "With all that is left out, {pairs}",
    "exclusion.pairs.many": "{count} comparisons would be decided otherwise",
    "exclusion.pair.ahead": "{name} would be ahead of {other}",
    "exclusion.pair.close": "{first} and {second} couldn't be told apart",
    "exclusion.pair.unknown": "whether {first} or {second} is ahead couldn't be told at all",
    "exclusion.pair.same": "between {first} and {second} there would be no difference that matters",
}
