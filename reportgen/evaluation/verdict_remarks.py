"""What an author should know of the verdict's plan now that results are there: who is out, what was never measured."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from reportgen.addresses import in_formula
from reportgen.campaign.declared import Declared
from reportgen.evaluation.evaluated import Verdict
from reportgen.evaluation.standing import Standing
from reportgen.evaluation.told import QuantityTold
from reportgen.evaluation.weighed import standing_in
from reportgen.finding import Finding
from reportgen.metrology.formulas.names import names_in
from reportgen.metrology.formulas.parse import parse


def verdict_remarks(declared: Declared, told: Sequence[QuantityTold], verdict: Verdict) -> Iterable[Finding]:
    """Warnings about conditions that nobody meets and criteria that can't be weighed."""
    yield from _met_by_nobody(declared, verdict)
    yield from _use_without_a_cost(declared, told, verdict)
    plan = declared.campaign.verdict
    if plan is None or not plan.groups or all(r.missing for t in told for r in t.results):
        return  # a campaign that is only planned lacks everything
    standing = standing_in(declared, told, verdict.conditions)
    yield from _left_out(declared, standing)
    if len(standing.contenders) < 2 and len(declared.campaign.contenders) > 1:
        says = "fewer than two contenders can be weighed: no index, no map of weights"
        do = "Measure what is missing, or look at the conditions under `must:`."
        yield Finding("warning", "nobody-to-weigh", declared.at("verdict"), says, _who(standing), do)
    elif verdict.overall is None and len(standing.contenders) > 1 and standing.quantities:
        says, do = (
            "the criteria that can be weighed have no weight",
            "Give one of their groups some, or measure the others.",
        )
        yield Finding("warning", "nothing-to-weigh", declared.at("verdict"), says, do=do)


def _use_without_a_cost(declared: Declared, told: Sequence[QuantityTold], verdict: Verdict) -> Iterable[Finding]:
    """A formula for what a use costs that gives nothing, though what it stands on was measured."""
    use = declared.campaign.verdict.use if declared.campaign.verdict else None
    if use is None or verdict.cost is not None:
        return
    names = names_in(parse(use.cost))
    if any(in_formula(t.quantity) in names and any(not r.missing for r in t.results) for t in told):
        says = f"`cost: {use.cost}` gives no value for any contender, so no page says what using it costs"
        why = "It divides by nothing, or takes a root or logarithm of what has none."
        do = "Correct the formula, or take `use:` out."
        yield Finding("warning", "use-without-a-cost", declared.at("verdict/use"), says, why, do)


def _met_by_nobody(declared: Declared, verdict: Verdict) -> Iterable[Finding]:
    for quantity in dict.fromkeys(m.quantity for m in verdict.conditions):
        if all(m.outcome == "contradicted" for m in verdict.conditions if m.quantity == quantity):
            place = declared.at(f"verdict/must/{quantity}")
            says = f"nobody meets the condition on {quantity}: all are out, and nothing is left to weigh"
            yield Finding("warning", "condition-nobody-meets", place, says, do="Is its bound the one you meant?")


def _left_out(declared: Declared, standing: Standing) -> Iterable[Finding]:
    follows = "What it weighs goes to the others." if standing.quantities else "It leaves nothing to weigh."
    for quantity, why in standing.left_out.items():
        place = declared.at(f"verdict/criterion/{quantity}")
        rule, reason, do = WHY_LEFT_OUT[why]
        yield Finding("warning", rule, place, f"{quantity} isn't weighed: {reason}", follows, do)


WHY_LEFT_OUT = {
    "nobody-measured": (
        "criterion-not-measured",
        "no contender has a value on it",
        "Measure it, or take it out of the criteria.",
    ),
    "bound": (
        "criterion-of-bounds",
        "every contender is known from one side only, and a bound is no number",
        "Measure it within the range of the instrument, or take it out of the criteria.",
    ),
    "not-above-zero": (
        "criterion-not-above-zero",
        "ratios decide on it, and not all values are above zero",
        "Judge it by differences (`scatter: common`, no `ratio:`), or take it out of the criteria.",
    ),
    "by-place": (
        "criterion-of-places",
        "some runs did not finish and hold the worst place, which is no number",
        "Take it out of the criteria; how many finish can be one by itself, as yes or no.",
    ),
    "blocked": (
        "criterion-blocked",
        "no result of it is to be ranked",
        "Look at the caveats that say `do not rank`, or take it out of the criteria.",
    ),
    "too-few": (
        "criterion-left-out",
        "with it, fewer than two contenders would have a value on everything",
        "Measure it on the others too, or take it out of the criteria.",
    ),
}
WHY_OUT = {
    "must": "misses a condition",
    "no-value": "has no value on some criterion",
    "bound": "has only a bound on some criterion",
    "not-above-zero": "has a value that isn't above zero where ratios count",
    "blocked": "has a result that isn't to be ranked",
}


def _who(standing: Standing) -> str:
    return " ".join(f"{name} {WHY_OUT[why]}." for name, why in standing.out.items())
