"""A result's number as a table prints it: decimals under decimals, its interval lighter beside."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from reportgen.campaign.declared import Quantity
from reportgen.evaluation.evaluated import Result
from reportgen.evaluation.found_between import found_between
from reportgen.pages.words import words
from reportgen.prose.amounts import also, decimals_read_once, read_once, short
from reportgen.wording import interval, number
from reportgen.wording.apart import plain as without_marks
from reportgen.wording.language import spoken
from reportgen.wording.reason import why_blocked, why_missing, why_no_u
from reportgen.wording.share import share_limit
from reportgen.wording.unit import spelled

FIGURE_SPACE, POINT_SPACE = "\u2007", "\u2008"  # as wide as a digit, as wide as a point


@dataclass(frozen=True)
class Printed:
    """`value` without its unit (the heading has it), `pad` what keeps its decimal point under the others'.

    `is_number` is False for words ("more than 999", "good", "not tested"). `interval` is what holds the true value 95
    times in 100; `why_none` says why there is none. `whole` is value and unit in one, for reading aloud.
    """

    value: str
    pad: str
    is_number: bool
    interval: str
    why_none: str
    whole: str
    also: str = ""  # the same in other units: "0.511 oz"


def printed(results: Sequence[Result]) -> tuple[Printed, ...]:
    """The results of one quantity, aligned with each other."""
    bare = [_one(r) for r in results]
    most = max((_decimals(p.value) for p in bare if p.is_number), default=0)
    return tuple(_padded(p, most) if p.is_number else p for p in bare)


def _one(r: Result) -> Printed:
    if r.missing:
        said = why_missing(r.missing)
        return Printed(said, "", False, "", "", said)
    e, whole = r.estimate, short(r)
    why = why_no_u(r.why_no_u) if r.why_no_u else ""
    if e is None or r.kind != "measured":
        return Printed(whole, "", r.kind in ("count", "yes/no"), _between(r), why, whole)
    value = short(replace(r, estimate=replace(e, unit="")))
    if found_between(r):
        return Printed(value, "", False, "", why, whole)
    return Printed(value, "", e.limit is None and e.value is not None, _between(r), why, whole, also(r))


def _between(r: Result) -> str:
    if r.low is None or r.high is None:
        return ""
    if r.kind == "yes/no":
        return words("interval", low=share_limit(r.low), high=share_limit(r.high))
    if read_once(r):
        return interval.between(r.low, r.high, "", decimals=decimals_read_once(r))
    return interval.between(r.low, r.high, "", r.u)


def _decimals(value: str) -> int:
    return len(without_marks(value).partition(spoken().decimal_sign)[2])


def _padded(p: Printed, most: int) -> Printed:
    has = _decimals(p.value)
    pad = ("" if has or not most else POINT_SPACE) + FIGURE_SPACE * (most - has)
    return replace(p, pad=pad)


def rank_shown(r: Result) -> str:
    """The places a result may hold, "" where it has none."""
    return interval.rank_range(r.rank) if r.rank else ""


def why_unranked(r: Result) -> str:
    """Why a result isn't ranked, "" where it is."""
    return why_blocked(r.blocked) if r.blocked else ""


def unit_of(results: Sequence[Result], quantity: Quantity) -> str:
    """The unit as the heading prints it."""
    return spelled(next((r.estimate.unit for r in results if r.estimate), quantity.unit))


def plain(value: float | None, unit: str) -> str:
    """A number of the workings, not rounded by an uncertainty."""
    if value is None:
        return words("interval.none")
    return f"{number.plain(value)}\u00a0{spelled(unit)}".rstrip("\u00a0")
