"""References to computed values: a result, a comparison, a first place. What is printed is what was computed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation, Result
from reportgen.finding import Finding
from reportgen.prose import amounts
from reportgen.prose.reference import ASKS, Reference
from reportgen.prose.standing import name, names
from reportgen.prose.typed_number import TypedNumber, agrees, typed_in
from reportgen.wording import interval
from reportgen.wording.language import say
from reportgen.wording.number import exact, rounded
from reportgen.wording.unit import spelled


@dataclass(frozen=True)
class Printed:
    """What a value reference prints, and what the author has to be told."""

    words: str
    finding: Finding | None = None


def result_words(result: Result, reference: Reference) -> Printed:
    """A result's value in the author's unit, its interval too where the author types one in parentheses.

    The author's words stay where they type no number.
    """
    if result.missing:
        says = f"“{reference.scheme}:{reference.target}” has no result: {amounts.full(result)}."
        return Printed(say("reference.no-result"), warning("value-without-result", reference, says))
    if reference.asks:
        return Printed(amounts.short(result))
    number = next(typed_in(reference.text), None)
    if result.estimate is None or result.kind == "yes/no":
        return _in_words(amounts.short(result), reference)
    if number is None:
        return Printed(reference.text)
    if result.estimate.limit is not None or result.estimate.value is None:
        return _in_words(amounts.short(result), reference)
    unit = result.estimate.unit
    change = _into(unit, number.unit, difference=result.estimate.step)
    if change is None:
        says = f"“{reference.text}” is in {number.unit}; the readings give {amounts.short(result)}."
        return Printed(amounts.short(result), _drifted(reference, says))
    if change is not _same:
        shown = in_unit(result, number.unit, change)
    else:
        shown = amounts.full(result) if "(" in reference.text else amounts.short(result)
    return _held(number, change(result.estimate.value), shown, reference)


def in_unit(result: Result, unit: str, change: Callable[[float], float]) -> str:
    """A result's value in another unit, rounded for itself."""
    assert result.estimate is not None
    value = result.estimate.value
    assert value is not None
    u = None if result.u is None else abs(change(value + result.u) - change(value))
    low, high = (None if x is None else change(x) for x in (result.low, result.high))
    return interval.value_only(change(value), u, unit, low=low, high=high)


def gap_words(gap: str, difference: float, unit: str, reference: Reference) -> Printed:
    """The size of a difference, held against the number typed for it."""
    asks = reference.asks or reference.text.replace(" ", "") == ASKS + unit
    number = None if asks else next(typed_in(reference.text), None)
    if asks:
        return Printed(gap)
    if number is None:
        return Printed(reference.text)
    change = _into(unit, number.unit, difference=True)
    if change is None or change is not _same:
        same_unit = change is not None and agrees(number, abs(change(difference)))
        says = f"“{reference.text}” is typed; the readings give {gap}."
        return Printed(gap, None if same_unit else _drifted(reference, says))
    return _held(replace(number, value=abs(number.value)), abs(difference), gap, reference)


def asks_for_percent(reference: Reference, unit: str) -> bool:
    """Whether a percentage of the other one is typed, or asked for (`[? %]`), of a quantity in another unit."""
    number = next(typed_in(reference.text), None)
    typed = number.unit if number else "%" if reference.text.replace(" ", "") == ASKS + "%" else ""
    return typed == "%" and spelled(unit) != "%"


def first_words(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str, reference: Reference) -> Printed:
    """Who comes first on a quantity; a warning where the author names others."""
    first = next((f for f in evaluation.firsts if (f.quantity, f.part) == (quantity, part)), None)
    if first is None:
        says = f"“{quantity}” has no first place: it isn't ranked."
        return Printed(say("reference.no-result"), warning("value-without-result", reference, says))
    leading = (first.winner,) if first.winner else first.may_be_first
    words = names(campaign, leading)
    if reference.asks:
        return Printed(words)
    named = {c.id for c in campaign.contenders if any(w.lower() in reference.text.lower() for w in (c.title, c.id))}
    if not named or named == set(leading):
        return Printed(reference.text)
    says = f"“{reference.text}” is named first; by the readings it is {words}."
    return Printed(words, _drifted(reference, says))


def comparison_gap(
    campaign: Campaign, evaluation: Evaluation, names_: tuple[str, str, str, str]
) -> tuple[str, float, str]:
    """The printed size of a difference, the difference and its unit. Raises LookupError where there is none."""
    quantity, one, other, part = names_
    for pair in evaluation.comparisons:
        if (pair.quantity, pair.part) == (quantity, part) and {pair.first, pair.second} == {one, other}:
            if pair.difference is None:
                break
            results = [r for c in (one, other) if (r := evaluation.of(quantity, c, part))]
            return amounts.gap(pair, results).size, pair.difference, pair.unit
    raise LookupError(f"{name(campaign, one)} and {name(campaign, other)} have no difference there")


def warning(rule: str, reference: Reference, says: str, do: str = "") -> Finding:
    """A warning about a reference, at its place."""
    return Finding("warning", rule, reference.place, says, do=do)


def _held(number: TypedNumber, computed: float, shown: str, reference: Reference) -> Printed:
    printed = next(typed_in(shown), None)
    as_printed = printed is not None and rounded(exact(number.value), printed.decimals) == printed.value
    if agrees(number, computed) or (as_printed and number.decimals >= (printed.decimals if printed else 0)):
        return Printed(shown)
    return Printed(shown, _drifted(reference, f"The text says {reference.text}; the readings give {shown}."))


def _in_words(shown: str, reference: Reference) -> Printed:
    if next(typed_in(reference.text), None) is None or reference.text.strip() == shown:
        return Printed(reference.text)
    typed_numbers = [n.value for n in typed_in(reference.text)]
    if typed_numbers == [n.value for n in typed_in(shown)]:
        return Printed(shown)
    return Printed(shown, _drifted(reference, f"The text says {reference.text}; the readings give {shown}."))


def _drifted(reference: Reference, says: str) -> Finding:
    return Finding(
        "warning",
        "drifted-number",
        reference.place,
        says,
        "A number typed into prose doesn't follow the readings; the page prints what was computed.",
        f"Type what the readings give, or write [?]({reference.scheme}:{reference.target}).",
    )


def _same(value: float) -> float:
    return value


def _into(unit: str, typed: str, *, difference: bool = False) -> Callable[[float], float] | None:
    """From the result's unit to the typed one; None where they don't go together or the word is no unit."""
    if not typed or spelled(typed) == spelled(unit):
        return _same
    from reportgen.metrology.errors import UnitError
    from reportgen.metrology.unit import convert, parse_unit

    try:
        ours, theirs = parse_unit(unit), parse_unit(typed)
        convert(1.0, ours, theirs, difference)
    except UnitError:
        return _same if not _is_unit(typed) else None
    return lambda value: convert(value, ours, theirs, difference)


def _is_unit(word: str) -> bool:
    from reportgen.metrology.errors import UnitError
    from reportgen.metrology.unit import parse_unit

    try:
        parse_unit(word)
    except UnitError:
        return False
    return True
