"""English, part of its table: what an uncertainty is made of, and how a result can be worked out again by hand."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

BUDGETS: Mapping[str, str | Forms] = {
    # causes, as they stand in a sentence; {of} is an instrument, a constant, a quantity
    "cause.of": "the {of}",
    "cause.step": "the step {of} reads in",
    "cause.step.nobody": "the last digit that was written",
    "cause.step.samples": "time between samples",
    "cause.step.other": "{of}",
    "cause.shared": "the step {of} reads in, on a reading that others stand on too",
    "cause.shared.nobody": "the last digit of a reading that others stand on too",
    "cause.rough": "how roughly it was read",
    "cause.repeatability": "how far {of} repeats itself",
    "cause.repeatability.nobody": "how its samples scatter from one to the next",
    "cause.calibration": "how well the correction of {of} is known",
    "cause.drift": "how far {of} may have drifted since its calibration",
    "cause.clock": "how well {of} keeps time",
    "cause.laboratory": "what {of} says of its own value",
    "cause.offset": "how far {of} may be off, by the same amount on every reading",
    "cause.gain": "how far {of} may be off, by the same part of every reading",
    "cause.accuracy": "how far {of} may be off, on each reading by itself",
    "cause.reaction": "the hand on {of}",
    "cause.constant": "how well the constant “{of}” is known",
    "cause.assumption": "what is assumed of “{of}”",
    "cause.along": "what the gap in {of} leaves open{of_pass}",
    "cause.along.highest": "what the noise in the highest of {of} leaves open{of_pass}",
    "cause.along.lowest": "what the noise in the lowest of {of} leaves open{of_pass}",
    "cause.along.moved": "how far {of} still moved on its plateau{of_pass}",
    "cause.along.pass": ", pass {number}",
    "cause.fit": "how well the line fits its points",
    "cause.bend": "how far “{of}” bends away from a straight line",
    "cause.scatter": "the scatter between passes",
    "cause.scatter.specimens": "the scatter between specimens",
    "cause.scatter.specimens.declared": "how far one unit of a product may differ from another",
    "cause.scatter.sessions": "the scatter between sessions",
    "cause.scatter.quantity": "the scatter between passes of {of}",
    # the sentence over a budget
    "made.whole": "the uncertainty",
    "made.known": "the uncertainty that is known",
    "made.only": "All of {whole} is {cause}{cure}",
    "made.all": "Nearly all of {whole} is {cause}{cure}",
    "made.most": "Most of {whole} is {cause}{cure}",
    "made.more-than-half": "More than half of {whole} ({share}) is {cause}{cure}",
    "made.several": "No single cause makes most of {whole}: the two largest are {first} ({one}) and {second} ({other})",
    "made.alike": "It moves everything that was read with it alike: that matters to the values and hardly to the gaps "
    "between them",
    "made.no-repeat": "How far a repeat would differ isn’t in it; only repeats can show that",
    "cure.step": "; an instrument that reads in steps of {step} would halve it",
    "cure.step.more": "; an instrument that reads in steps of {step} would more than halve it",
    "cure.passes": "; {n} in place of {now} would halve it",
    "cure.passes.rest": "; {n} in place of {now} would halve it, since more passes help against nothing else",
    "cure.known": "; it would be halved if that were known to {half} either way in place of {now}",
    "cure.hand": "; a start and stop without a hand would take that away",
    "cure.without": "; without it {rest} would be left",
    # how a line is known
    "known.uniform": "within {half} either way, any value as likely as another",
    "known.triangular": "within {half} either way, the middle likelier than the ends",
    "known.arcsine": "within {half} either way, the ends likelier than the middle",
    "known.normal": "spread as a bell curve",
    "known.student": "spread as Student’s t, {degrees}",
    # how it is weighed
    "weighed": "{u} ×\u00a0{sensitivity}",
    "weighed.several": "{u} ×\u00a0{sensitivity} ×\u00a0√{count}",
    "weighed.mean": "{u} ÷\u00a0√{count}",
    "weighed.once": "{u}",
    "weighed.differing": "{weighed}, on the whole",
    "sensitivity.per": "{size} per\u00a0{unit}",
    "budget.readings": {"one": "{count} reading", "other": "{count} readings"},
    "budget.share.under": "under {value}",
    "budget.shares": "{mark}, {cause}: {share}",
    "budget.drawn": "Shares of the uncertainty, squared: {shares}.",
    "budget.unknown": "The accuracy of {of} isn’t known, so nothing of it is in here: the true uncertainty is larger.",
    "budget.clock": "How well {of} keeps time isn’t known: its clock is taken as right, and nothing of it is in here.",
    "budget.drift-cancels": "How far {of} may have drifted has no line: it moves all that was read off it alike, and "
    "cancels here.",
    "budget.offset-cancels": "What {of} may be off by on every reading has no line: it cancels between those read off "
    "it here.",
    "budget.hand-held": "The hand on {of} has no line: the scatter between passes already holds it.",
    "budget.stated": "What is said of {of} here is {source}; when it was calibrated isn’t noted.",
    "budget.stated.calibrated": "What is said of {of} here is {source}.",
    "budget.step-held": "The display’s steps can move a pass by {half} at most for each reading; the scatter between "
    "passes already holds that.",
    "budget.effective": "Effective degrees of freedom: {degrees} (JCGM 100, G.4.1; shown, not used for the range).",
    "budget.effective.many": "Effective degrees of freedom: over {degrees}, as good as without limit (JCGM 100, G.4.1; "
    "shown, not used for the range).",
    "budget.effective.infinite": "Effective degrees of freedom: without limit, as every line is taken as known "
    "(JCGM 100, G.4.1).",
    # where the interval comes from
    "range.student": "The {level} range reaches {half} either way: {root} times t\u00a0=\u00a0{t}, for {degrees} "
    "(JCGM 100, table G.2). t is more than a bell curve’s 1.96 because the scatter itself is only known "
    "from these runs.",
    "range.mixed": "The {level} range reaches {half} either way. The scatter spreads as Student’s t with {degrees} "
    "(t\u00a0=\u00a0{t}), every other line as it says; their sum stays within that in 95 of 100 cases (JCGM 101, 5). "
    "That isn’t 2\u00a0×\u00a0u.",
    "range.mixed.step": "The {level} range reaches {half} either way. The scatter and the step, together {root}, "
    "spread as Student’s t with {degrees} (t\u00a0=\u00a0{t}), every other line as it says; their sum stays within "
    "that in 95 of 100 cases (JCGM 101, 5). That isn’t 2\u00a0×\u00a0u.",
    "range.known": "The {level} range reaches {half} either way: each line spreads as it says, and their sum stays "
    "within that in 95 of 100 cases (JCGM 101, 5). That isn’t 2\u00a0×\u00a0u. Whether a repeat would agree "
    "isn’t in it.",
    "range.ratio": "The {level} range goes from the value ÷\u00a0{factor} to the value ×\u00a0{factor}: passes scatter "
    "in proportion to their value, so the range is worked out on its logarithm.",
    "note.overlap": "Ranges may overlap and the order still be sure: what {instruments} may be off by is in those "
    "ranges alike. Go by the places",
    "level": "95 %",
    "level.at-least": "at least 95 %",
    # how passes were put together
    "together.mean": "Mean of {count}: ({values}) ÷ {n} = {value}.",
    "together.mean.many": "Mean of {count}: {value}.",
    "together.specimen": "Mean of the passes of specimen {id}: ({values}) ÷ {n} = {value}.",
    "together.specimens": "Mean of {count}, each the mean of its passes: ({values}) ÷ {n} = {value}.",
    "together.specimens.many": "Mean of each specimen’s passes, then of {count}: {value}.",
    "together.specimens.energy": "Mean energy of each specimen’s passes, then of {count}: {value}.",
    "together.energy": "Mean energy of {count}, 10 lg of the mean of 10^(L/10): {value}.",
    "together.least": "The least of {count}: {value}.",
    "together.most": "The most of {count}: {value}.",
    "together.middle": "The middle one of {count}: {value}.",
    "together.own": "These passes by themselves scatter by {s}.",
    "together.used": "The scatter used is {s} for one ({degrees}); ÷\u00a0√{n}, that is {mean} for the mean.",
    "together.used.one": "The scatter used is {s} for one ({degrees}).",
    "together.used.more": "The scatter used is {s} for the result, with what its passes share ({degrees}).",
    "together.own.each": "{name} {s} ({passes})",
    "together.pooled": "Each by itself: {each}. The square of the scatter is the mean of their squares, each counted "
    "one time less than it has passes.",
    "together.pooled.rounds": "For the range of one by itself: {sd} ({degrees} in place of {plain}, as rounds moved "
    "all together; JCGM 100, G.4.1). Its square is the mean of the squares of each one’s own, each counted one time "
    "less than it has passes: {each}.",
    "count.specimen": {"one": "{count} specimen", "other": "{count} specimens"},
}
