"""A cell typed from a laboratory's report: `not found`, `found`, or what any number may be.

`not found` is a bound: from 0 to the detection limit, and never half of it. `found` without a number lies between the
detection limit and the limit from which the laboratory states values: all that is known is an interval, taken as
uniform (JCGM 100, 4.3.7), so its middle is the value and half its width the half-width.
"""

from __future__ import annotations

from decimal import Decimal

from reportgen.campaign.declared import Laboratory
from reportgen.intake.notations.cell import Expected, UnreadableError, Written

NOT_FOUND, FOUND = "not found", "found"


def read_found(text: str, expected: Expected) -> Written | None:
    """The bound or interval of `not found` or `found`; None for anything else. Raises `UnreadableError`."""
    said = " ".join(text.lower().split())
    laboratory = expected.laboratory
    if said not in (NOT_FOUND, FOUND):
        return None
    if laboratory is None or laboratory.detection_limit is None:
        raise _without(text, "`detection limit: 0.5 mg/kg`")
    low, high = laboratory.detection_limit, laboratory.report_limit
    if said == NOT_FOUND:
        return Written(low.value, low.unit, "below", decimals=_decimals(low.value))
    if high is None:
        raise _without(text, "`report limit: 2 mg/kg`")
    if low.unit != high.unit:
        raise UnreadableError(
            "limits-in-two-units",
            f"“{text}” lies between {low.text} and {high.text}, which are in two units.",
            "The interval between them has one unit.",
            "Write both limits in one unit.",
        )
    middle, half = (low.value + high.value) / 2, (high.value - low.value) / 2
    if not half:
        raise _without(text, "two limits that differ")
    return Written(middle, low.unit, decimals=_decimals(middle), width=half)


def refuse_below_limits(written: Written, text: str, unit: str, laboratory: Laboratory) -> None:
    """Raises `UnreadableError` for a plain number below the detection limit, or between the limits, in their unit."""
    if written.value is None or written.limit or written.width is not None or written.beside:
        return
    for limit, what, word in (
        (laboratory.detection_limit, "the laboratory finds nothing", NOT_FOUND),
        (laboratory.report_limit, "the laboratory states no numbers", FOUND),
    ):
        if limit and limit.unit == (written.unit or unit) and written.value < limit.value:
            raise UnreadableError(
                "below-the-limit",
                f"“{text}” is typed as a number, and below {limit.text} {what}.",
                "A number there would be read as if it were known.",
                f"Write `{word}` or `under {limit.text}`; if the report does state this number, correct the limit.",
            )


def page_of(written: str, laboratory: Laboratory | None) -> int | None:
    """The page a row gives, else the one that holds for all; None without a laboratory. Raises `UnreadableError`."""
    if laboratory is None:
        return None
    if written.isascii() and written.isdigit() and int(written) > 0:
        return int(written)
    if written:
        raise UnreadableError(
            "not-a-page",
            f"“{written}” is no page of a report.",
            "Pages are counted from 1, as a viewer counts them.",
            "Write the page's number alone.",
        )
    return laboratory.page


def _decimals(value: Decimal) -> int:
    return max(0, -int(value.as_tuple().exponent))


def _without(text: str, key: str) -> UnreadableError:
    return UnreadableError(
        "limit-not-declared",
        f"“{text}” says something only with the laboratory's limits, and one isn't declared.",
        "How little the laboratory would have found isn't known, so nothing can be said of the value.",
        f"Add {key} under `laboratory:`, or write `under …` with the limit.",
    )
