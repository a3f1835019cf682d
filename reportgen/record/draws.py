"""What joint draws said of a result or a difference, as a row of the record."""

from __future__ import annotations

from typing import Any

from reportgen.judgement.drawn.draws import ByDraws
from reportgen.record.plain import number


def draws_row(draws: ByDraws | None, value: float | None) -> dict[str, Any] | None:
    """None where there was nothing to ask draws for.

    `used`: the interval printed is that of the draws, because the one to first order, also told, wouldn't do; and
    `u_used`, that so is the standard uncertainty, as `u`, the draws' own, lies more than a tenth from `first_order_u`.
    `mean` is the average of the draws; `within`, how far the ends may still be off; `settled`, whether that is no more
    than the tolerance.
    """
    if draws is None or value is None:
        return None
    return {
        "number": draws.draws,
        "used": draws.needed,
        "u": number(draws.u),
        "u_used": draws.u_counts,
        "first_order_u": number(draws.first_u),
        "first_order_low": number(value + draws.first_low),
        "first_order_high": number(value + draws.first_high),
        "mean": number(value + draws.mean),
        "tolerance": number(draws.tolerance),
        "within": number(draws.within),
        "settled": draws.settled,
        "u_of": "middle 68 %" if draws.middle else "all draws",
    }
