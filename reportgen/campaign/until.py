"""How far a run goes: `10 %` (of the highest), `10 % of the value at 30 s`, `under 5 °C`, `over 60 dB`."""

from __future__ import annotations

import re
from collections.abc import Iterable
from decimal import Decimal
from typing import Annotated

from reportgen.addresses import in_formula
from reportgen.campaign.declared import Amount, Constant, Quantity, Until
from reportgen.campaign.given import Given
from reportgen.campaign.scalar import AMOUNT, NO_AMOUNT, NUMBER, NUMERIC, amount
from reportgen.campaign.shape import NotThat, Scalar

SECONDS = {"s": 1, "min": 60, "h": 3600}
_TIME = rf"(?:{NUMBER.removeprefix('[-+−]?')})\s*(?:{'|'.join(SECONDS)})"
_SIDED = re.compile(rf"(over|under)\s+({AMOUNT})")
_PART = re.compile(rf"({NUMBER}\s*%)\s+of\s+the\s+value\s+at\s+({_TIME})")
PATTERN = rf"^\s*(?:(?:over|under)\s+{AMOUNT}|{AMOUNT}(?:\s+of\s+the\s+value\s+at\s+{_TIME})?)\s*$"


def until(text: str) -> Until:
    """What ends a run. Raises NotThat, with the words that were perhaps meant."""
    said = text.strip()
    if sided := _SIDED.fullmatch(said):
        return Until("over" if sided[1] == "over" else "under", amount(sided[2]))
    if part := _PART.fullmatch(said):
        return Until("", amount(part[1]), amount(part[2]))
    if other := re.match(r"(?:below|above|less than|more than|<|>)\s*", said):
        side = "under" if other[0].strip() in ("below", "less than", "<") else "over"
        raise NotThat(f"“{said}” is no limit of a run", f"Write `{side} {said[other.end() :]}`.")
    try:
        return Until("", amount(said))
    except NotThat:
        do = "Write `under 5 °C`, `over 60 dB`, `10 %` or `10 % of the value at 30 s`."
        raise NotThat(f"“{said}” is no limit of a run", do) from None


UntilOf = Annotated[
    Given[Until],
    Scalar("the limit of a run", until, PATTERN, Until("", NO_AMOUNT), ("10 %", "under 5 °C"), types=NUMERIC),
]


def formula_until(limit: Until, channel: str, label: str) -> str:
    """The formula of a trace that runs to `limit`; "" where that doesn't say which way the trace passes it.

    A limit with a unit stands in it by the name of a constant (`limits_of`); a plain number is in the channel's unit.
    """
    if limit.side:
        level = f"{in_formula(label)}_limit" if limit.limit.unit else f"{limit.limit.value}"
        return f"when({channel}, {limit.side}, {level})"
    if limit.limit.unit != "%" or not 0 < limit.limit.value < 100:
        return ""
    whole = f"at({channel}, {_seconds(limit.value_at)})" if limit.value_at else f"highest({channel})"
    return f"when({channel}, under, {limit.limit.value / 100} * {whole})"


def limits_of(quantities: Iterable[Quantity]) -> dict[str, Constant]:
    """By id: the limits with a unit that the program's own formulas name."""
    return {
        f"{q.id}-limit": Constant(f"{q.id}-limit", q.until.limit, None, None, "")
        for q in quantities
        if q.kind == "logged" and q.until and q.until.side and f"{in_formula(q.id)}_limit" in q.formula
    }


def _seconds(time: Amount) -> Decimal | int:
    seconds = time.value * SECONDS[time.unit]
    return int(seconds) if seconds == int(seconds) else seconds
