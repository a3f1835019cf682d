"""Values with their intervals, limits, differences, ranks, probabilities and durations as text."""

from __future__ import annotations

from collections.abc import Container, Iterable
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from typing import Literal

from reportgen.wording import number
from reportgen.wording.language import as_one, say
from reportgen.wording.number import Number
from reportgen.wording.unit import joined

Limit = Literal["above", "below"]
_THRESHOLDS = (Decimal("0.05"), Decimal("0.95"), Decimal("0.975"))  # decisions hang on these: never rounded onto


def printed(
    value: Number | None,
    u: Number | None,
    low: Number | None,
    high: Number | None,
    unit: str,
    limit: Limit | None = None,
    why_no_u: str = "",
    *,
    decimals: int | None = None,
) -> str:
    """A result in one line: "14.20 g (13.58 to 14.82)", "more than 999 g", "71.2 dB (uncertainty not known)".

    `value`, `u`, `low` and `high` are in `unit`; `why_no_u` is already in words; `decimals` are those the readings
    were written with and count where there is no `u`.
    """
    if limit is not None:
        return bound(value, unit, limit)
    if not number.known(value):
        return say("number.unknown")
    places = decimals_for(u, low, high)
    shown = joined(number.plain(value, decimals) if places is None else number.fixed(value, places), unit)
    if places is None:
        if why_no_u:
            return say("interval.no-u-because", value=shown, why=why_no_u)
        return say("interval.no-u", value=shown) if u is None else shown
    return _within(shown, low, high, places)


def in_units(
    converted: Iterable[tuple[Number | None, Number | None, Number | None, Number | None, str]],
    limit: Limit | None = None,
    why_no_u: str = "",
) -> str:
    """One result in several units, each already converted and rounded for itself: "14.20 g (…); 0.501 oz (…)"."""
    return say("interval.several").join(
        printed(value, u, low, high, unit, limit, why_no_u) for value, u, low, high, unit in converted
    )


def value_only(
    value: Number | None,
    u: Number | None,
    unit: str,
    limit: Limit | None = None,
    *,
    low: Number | None = None,
    high: Number | None = None,
    decimals: int | None = None,
) -> str:
    """The value alone, rounded as `printed` rounds it: "14.20 g"."""
    if limit is not None:
        return bound(value, unit, limit)
    if not number.known(value):
        return say("number.unknown")
    places = decimals_for(u, low, high)
    return joined(number.plain(value, decimals) if places is None else number.fixed(value, places), unit)


def uncertainty(u: Number | None, unit: str) -> str:
    """A standard uncertainty with two significant digits: "0.31 g"; "not known" where there is none."""
    if not number.known(u):
        return say("number.unknown")
    return joined(number.fixed(u, number.decimals_of(u)) if u else "0", unit)


def counted(value: Number | None, unit: str) -> str:
    """What was counted and is exact: "212 times, counted"."""
    return say("interval.counted", value=joined(number.plain(value) if number.known(value) else "", unit))


def so_far(value: Number | None, unit: str) -> str:
    """What was read of a run that still goes on: "more than 118 min so far", "still running, nothing read so far"."""
    if not number.known(value):
        return say("so-far.nothing")
    return say("so-far", bound=bound(value, unit, "above"))


def bound(value: Number | None, unit: str, limit: Limit) -> str:
    """A value off the meter's scale or below its limit: "more than 999 g", "more than the meter can show"."""
    if not number.known(value):
        return say(f"limit.{limit}.unknown")
    return say(f"limit.{limit}", value=joined(number.plain(value), unit))


def difference(value: Number | None, u: Number | None, low: Number | None, high: Number | None, unit: str, *,
               decimals: int | None = None) -> str:  # fmt: skip
    """A difference with its sign: "−1.1 g (−1.5 to −0.7)", "+2.0 s"."""
    if not number.known(value):
        return say("number.unknown")
    places = decimals_for(u, low, high)
    if places is None:
        places = decimals if decimals is not None else plain_decimals(value)
    return _within(joined(number.fixed(value, places, sign=True), unit), low, high, places, sign=True)


def between(low: float, high: float, unit: str, u: Number | None = None, *, decimals: int | None = None) -> str:
    """An interval by itself: "13.58 to 14.82 g"; with `decimals`, to that many."""
    places = decimals_for(u, low, high) if decimals is None else decimals
    if places is None:
        places = plain_decimals(low)
    return joined(say("interval.range", low=number.fixed(low, places), high=number.fixed(high, places)), unit)


def as_typed(low: Decimal, high: Decimal) -> str:
    """Two limits with the digits they were typed with: "0.5 to 2"."""
    return say("interval.range", low=number.as_written(low), high=number.as_written(high))


def middle_grade(text: str, given: Container[str]) -> str:
    """The grade in the middle of those given, "good", or the two beside it, "fair to good"."""
    low, _, high = text.partition(" to ")
    return say("interval.range", low=low, high=high) if high and text not in given else text


def rank_range(rank: tuple[int, int]) -> str:
    """`(1, 2)` is "1–2", `(1, 1)` is "1"."""
    first, last = rank
    return str(first) if first == last else as_one(say("rank.range", first=str(first), last=str(last)))


def probability(p: float) -> str:
    """A probability as a percentage: "98 %", "over 99 %", "under 1 %"; never rounded onto a limit it misses."""
    share = number.exact(p)
    if share > Decimal("0.99"):
        return say("probability.over", value=joined("99", "%"))
    if share < Decimal("0.01"):
        return say("probability.under", value=joined("1", "%"))
    percent = number.rounded(share * 100, 0)
    for threshold in _THRESHOLDS:
        if abs(share - threshold) < Decimal("0.005") and share != threshold:
            away = ROUND_FLOOR if share < threshold else ROUND_CEILING
            return joined(number.as_written((share * 100).quantize(Decimal("0.1"), rounding=away)), "%")
    return joined(number.fixed(percent, 0), "%")


def percent(share: Number, decimals: int = 0) -> str:
    """A share of one as a percentage: 0.4 is "40 %"."""
    return joined(number.fixed(number.exact(share) * 100, decimals), "%")


def clock(seconds: float, decimals: int = 0) -> str:
    """A duration as min:s or h:min:s: 212.4 is "3:32", 3725 is "1:02:05"."""
    total = number.rounded(abs(seconds), decimals)
    hours, minutes = divmod(int(total // 60), 60)
    rest = total % 60
    tail = number.fixed(rest, decimals)
    tail = tail if rest >= 10 else f"0{tail}"
    head = f"{hours}:{minutes:02d}" if hours else f"{minutes}"
    return f"{number.MINUS if seconds < 0 and total else ''}{head}:{tail}"


def decimals_for(u: Number | None, low: Number | None, high: Number | None) -> int | None:
    """The decimals a result is printed with: two significant digits of `u`, else of half its interval.

    None where neither says anything: then the readings' own decimals count.
    """
    if number.known(u) and u > 0:
        return number.decimals_of(u)
    if number.known(low) and number.known(high) and high > low:
        return number.decimals_of((number.exact(high) - number.exact(low)) / 2)
    return None


def plain_decimals(value: Number) -> int:
    """The decimals of a number that has neither uncertainty nor written decimals: four significant digits."""
    size = number.exact(value)
    return max(0, 3 - size.adjusted()) if size and size != size.to_integral_value() else 0


def side_by_side(first: Number, second: Number, unit: str, at_most: int | None = None) -> tuple[str, str]:
    """Two amounts to be compared by eye, with two digits of the second: ("3.1 s", "8.2 s").

    `at_most` are the decimals the readings have. More digits are shown where the two would read alike and aren't, or
    where one would read zero and isn't.
    """
    places = number.decimals_of(second) if second else plain_decimals(first)
    places = min(places, at_most) if at_most is not None else places
    differ = number.exact(first) != number.exact(second)
    while (differ and number.rounded(first, places) == number.rounded(second, places)) or any(
        x and not number.rounded(x, places) for x in (first, second)
    ):
        places += 1
    return joined(number.fixed(first, places), unit), joined(number.fixed(second, places), unit)


def decimals_of_steps(steps: tuple[float, ...], passes: int = 1) -> int | None:
    """The decimals of a result without uncertainty: its readings' step, and one more for a mean over passes."""
    finest = min((abs(s) for s in steps if s), default=None)
    if finest is None:
        return None
    step = number.exact(finest).normalize()
    written = max(0, min(-int(step.as_tuple().exponent), 2 - step.adjusted()))  # 0.25 has two; 0.1 g in oz not twelve
    return written + (1 if passes > 1 else 0)


def decimals_of_mean(value: Number | None) -> int | None:
    """The decimals of a mean of whole numbers: none where it is one, else two, or more where two show nothing."""
    if not number.known(value):
        return None
    exact = number.exact(value)
    return 0 if exact == exact.to_integral_value() else max(2, 1 - exact.adjusted())


def _within(shown: str, low: Number | None, high: Number | None, places: int, *, sign: bool = False) -> str:
    lowest = number.fixed(low, places, sign=sign) if number.known(low) else ""
    highest = number.fixed(high, places, sign=sign) if number.known(high) else ""
    if lowest and highest and low == high:
        return shown  # of counts, which leave nothing open
    if lowest and highest:
        return say("interval.both", value=shown, low=lowest, high=highest)
    if lowest:
        return say("interval.from", value=shown, low=lowest)
    return say("interval.up-to", value=shown, high=highest) if highest else shown
