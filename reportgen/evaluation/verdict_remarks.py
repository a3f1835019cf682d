"""What an author should know of the verdict's plan now that results are there: who is out, what was never measured."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from reportgen.campaign.declared import Declared
from reportgen.evaluation.evaluated import Verdict
from reportgen.evaluation.standing import Standing
from reportgen.evaluation.told import QuantityTold
from reportgen.evaluation.weighed import standing_in
from reportgen.finding import Finding


def verdict_remarks(declared: Declared, told: Sequence[QuantityTold], verdict: Verdict) -> Iterable[Finding]:
    """Warnings about conditions that nobody meets and criteria that can't be weighed."""
    yield from _met_by_nobody(declared, verdict)
    plan = declared.campaign.verdict
    if plan is None or not plan.groups or all(r.missing for t in told for r in t.results):
        return  # a campaign that is only planned lacks everything
    standing = standing_in(declared, told, verdict.conditions)
    yield from _left_out(declared, standing)
    if len(standing.contenders) < 2 and len(declared.campaign.contenders) > 1:
        says = "fewer than two contenders can be weighed: no index, no map of weights"
        do = "Measure what is missing, or look at the conditions under `must:`."
        yield Finding("warning", "nobody-to-weigh", declared.at("verdict"), says, _who(standing), do)
    elif verdict.overall is None and len(standing.contenders) > 1:
        says, do = (
            "the criteria that can be weighed have no weight",
            "Give one of their groups some, or measure the others.",
        )
        yield Finding("warning", "nothing-to-weigh", declared.at("verdict"), says, do=do)


def _met_by_nobody(declared: Declared, verdict: Verdict) -> Iterable[Finding]:
    for quantity in dict.fromkeys(m.quantity for m in verdict.conditions):
        if all(m.outcome == "contradicted" for m in verdict.conditions if m.quantity == quantity):
            place = declared.at(f"verdict/must/{quantity}")
            says = f"nobody meets the condition on {quantity}: all are out, and nothing is left to weigh"
            yield Finding("warning", "condition-nobody-meets", place, says, do="Is its bound the one you meant?")


def _left_out(declared: Declared, standing: Standing) -> Iterable[Finding]:
    for quantity, why in standing.left_out.items():
        place = declared.at(f"verdict/criterion/{quantity}")
        if why == "nobody-measured":
            says = f"no contender has a value on {quantity}, so it isn't weighed"
            do = "Measure it, or take it out of the criteria."
            yield Finding("warning", "criterion-not-measured", place, says, "What it weighs goes to the others.", do)
        else:
            says = f"{quantity} isn't weighed: with it, fewer than two contenders would have a value on everything"
            do = "Measure it on the others too, or take it out of the criteria."
            yield Finding("warning", "criterion-left-out", place, says, "What it weighs goes to the others.", do)


WHY_OUT = {
    "must": "misses a condition",
    "no-value": "has no value on some criterion",
    "bound": "has only a bound on some criterion",
    "blocked": "has a result that isn't to be ranked",
}


def _who(standing: Standing) -> str:
    return " ".join(f"{name} {WHY_OUT[why]}." for name, why in standing.out.items())
