"""What the verdict's criteria must be before anything is weighed: numbers on a scale, with anchors that fit it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reportgen.campaign.declared import Amount, Criterion, Declared, Quantity
from reportgen.finding import Finding, Place
from reportgen.metrology.errors import UnitError
from reportgen.metrology.unit import Unit, check_alike, has_true_zero, named, parse_unit

WITHOUT_SCALE = ("grade", "order")
SHOWN_ONLY = ("least", "most", "middle")


def criterion_misfits(declared: Declared, units: Mapping[str, Unit]) -> Iterable[Finding]:
    """Each criterion that can't be weighed as written: the first thing that is wrong with it."""
    plan = declared.campaign.verdict
    quantities = {q.id: q for t in declared.campaign.tests for q in t.quantities}
    for criterion in (c for g in plan.groups for c in g.criteria) if plan else ():
        place = declared.at(f"verdict/criterion/{criterion.quantity}")
        quantity, unit = quantities[criterion.quantity], units.get(criterion.quantity)
        if finding := _on_no_scale(quantity, place):
            yield finding
        elif unit is not None:
            wrong = list(_in_another_unit(criterion, unit, place))
            yield from wrong or _ends(criterion, quantity, unit, place)


def _on_no_scale(quantity: Quantity, place: Place) -> Finding | None:
    if quantity.kind in WITHOUT_SCALE:
        says = f"{quantity.id} is of kind {quantity.kind}, and such a one can't be weighed"
        why = "How far one grade lies from the next, or one place from another, is not a number."
        do = "Take it out of the criteria. It is shown on the page all the same."
        return Finding("error", "criterion-without-scale", place, says, why, do)
    if quantity.over_passes in SHOWN_ONLY:
        says = f"{quantity.id} is the {quantity.over_passes} of its passes, which is shown and never ranked"
        why = "Its scatter isn't known: more passes alone move it."
        do = "Weigh the mean of the passes, or take it out of the criteria."
        return Finding("error", "criterion-not-ranked", place, says, why, do)
    if quantity.counted_over:
        says = f"{quantity.id} is counted over {quantity.counted_over}, and its anchors are so many events a run"
        why = "Runs over more and over less would count alike; what is compared is the rate, which has no anchors here."
        do = "Take it out of the criteria: it is judged by its rate all the same."
        return Finding("error", "criterion-counted-over", place, says, why, do)
    return None


def _in_another_unit(criterion: Criterion, unit: Unit, place: Place) -> Iterable[Finding]:
    for amount in (criterion.worst, criterion.best):
        try:
            check_alike(parse_unit(amount.unit), unit, True)
        except UnitError as wrong:
            yield Finding("error", "unit", place, f"The criterion {criterion.quantity}: {wrong.says}", do=wrong.do)


def _ends(criterion: Criterion, quantity: Quantity, unit: Unit, place: Place) -> Iterable[Finding]:
    worst, best = in_si(criterion.worst), in_si(criterion.best)
    if worst == best:
        says = f"worst and best of {criterion.quantity} are the same value"
        yield Finding(
            "error", "anchors-alike", place, says, "Nothing would be better than anything.", "Set them apart."
        )
    elif (quantity.better == "lower" and best > worst) or (quantity.better == "higher" and best < worst):
        says = f"{quantity.better} is better for {criterion.quantity}, and its anchors say the opposite"
        do = "Exchange `worst:` and `best:`, or correct `better:`."
        yield Finding("error", "anchors-upside-down", place, says, "The last would come first.", do)
    elif criterion.ratio and not has_true_zero(unit):
        says = f"ratios of {criterion.quantity} mean nothing: {named(unit)} has no true zero"
        yield Finding("error", "ratio-without-zero", place, says, do="Leave `ratio:` out: then differences count.")
    elif criterion.ratio and min(worst, best) <= 0.0:
        says = f"{criterion.quantity} counts ratios, and an anchor of it isn't above zero"
        do = "Set both anchors above zero, or leave `ratio:` out: then differences count."
        yield Finding("error", "ratio-not-above-zero", place, says, "Nothing is a ratio of nothing.", do)


def in_si(amount: Amount) -> float:
    """An amount in the base unit of its kind."""
    unit = parse_unit(amount.unit)
    return float(amount.value) * float(unit.factor) + float(unit.offset)
