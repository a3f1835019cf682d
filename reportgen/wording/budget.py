"""Numbers of a budget: with two digits more than the result is printed with, so that it can be worked out again."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal

from reportgen.wording import interval, number
from reportgen.wording.language import say
from reportgen.wording.unit import joined, spelled

MORE = 2  # digits beyond those of u: rounding then moves no digit of what is worked out from them (JCGM 100, 7.2.6)
EXACT_DIGITS = 6
NICE = (Decimal(5), Decimal(2), Decimal(1))


def size(width: float, u: float, unit: str, more: int = MORE) -> str:
    """A line's size, to the same place as all lines of its budget; by its own digits where that would show nothing."""
    places = number.decimals_of(u) + more
    if not number.rounded(width, places):
        return interval.uncertainty(width, unit)
    return joined(number.fixed(width, max(0, places)), unit)


def digits_beyond(u: float) -> int:
    """Digits beyond those of u that its budget needs: one more where u, printed so and rounded once again by a reader,
    would come out as another than is printed (1.4497 as 1.450, and that as 1.5).
    """
    places = number.decimals_of(u)
    again = number.rounded(u, places + MORE).quantize(Decimal(1).scaleb(-places), rounding=ROUND_HALF_UP)
    return MORE if again == number.rounded(u, places) else MORE + 1


def worked(value: float, u: float | None, unit: str, *, keep: bool = False) -> str:
    """A value on the way to a result, two digits past its uncertainty's, trailing zeros left out unless `keep`.

    Without an uncertainty to go by: six digits.
    """
    exact = number.exact(value)
    places = number.decimals_of(u) + MORE if u else EXACT_DIGITS - 1 - (exact.adjusted() if exact else 0)
    found = number.rounded(value, max(0, places))
    if keep:
        return joined(number.fixed(value, max(0, places)), unit)
    short = found.normalize()
    return joined(number.fixed(short, max(0, -int(short.as_tuple().exponent))), unit)


def figure(x: float, unit: str = "") -> str:
    """A number with four digits: a sensitivity, the standard uncertainty of a constant."""
    exact = number.exact(x)
    if not exact:
        return joined("0", unit)
    found = number.rounded(x, max(0, 3 - exact.adjusted())).normalize()
    return joined(number.fixed(found, max(0, -int(found.as_tuple().exponent))), unit)


def sensitivity(c: float, result_unit: str, unit: str) -> str:
    """How far the result moves for one unit of the input: "0.63 % per K"; a plain number in the same unit."""
    if spelled(result_unit) == spelled(unit):
        return figure(c)
    return say("sensitivity.per", size=figure(c, result_unit), unit=spelled(unit) or "1")


def share(part: float) -> str:
    """A share of the variance: "46 %", "under 1 %"."""
    return (
        say("budget.share.under", value=joined("1", "%")) if 0 < part < 0.005 else interval.percent(part)  # of one
    )


def nice_below(x: float) -> Decimal:
    """The largest of 1, 2 and 5 times a power of ten that isn't above `x`: steps that instruments have."""
    exact = number.exact(x)
    power = Decimal(1).scaleb(exact.adjusted())
    return next(n * power for n in NICE if n * power <= exact)


def written(step: Decimal, unit: str) -> str:
    """Such a step in print."""
    short = step.normalize()
    return joined(number.fixed(short, max(0, -int(short.as_tuple().exponent))), unit)


def half_width(half: float, unit: str) -> str:
    """The half-width of a distribution, with three digits, trailing zeros left out: 0.5 K."""
    exact = number.exact(half)
    found = number.rounded(half, max(0, 2 - exact.adjusted())).normalize() if exact else Decimal(0)
    return joined(number.fixed(found, max(0, -int(found.as_tuple().exponent))), unit)


def percents(ends: tuple[float, float]) -> tuple[str, str]:
    """Where a bar begins and how long it is, as a drawing needs it: ("12.5%", "40%")."""
    begins, length = (f"{number.rounded(100 * x, 2).normalize():f}%" for x in ends)
    return begins, length
