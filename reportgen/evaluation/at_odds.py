"""Where a maker contradicts itself: figures of one claim that differ from source to source, claims that exclude each
other."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from itertools import combinations
from math import inf, isclose

from reportgen.campaign.declared import Amount, Claim
from reportgen.metrology.errors import UnitError
from reportgen.metrology.unit import Unit, convert, parse_unit

_FIGURE = re.compile(r"(?<![\w.,])([-−]?\d+(?:[.,]\d+)*)(?:\s*([^\s\d,;()]+))?")
_THOUSANDS = re.compile(r"[-−]?\d{1,3}(?:,\d{3})+(?:\.\d+)?")


def at_odds(claims: Sequence[Claim], rises: Collection[str] = ()) -> Mapping[str, tuple[str, ...]]:
    """By claim: those that can't be true beside it; itself, where its own sources give different figures.

    Claims made under different conditions don't exclude each other. `rises` are the quantities that are steps on a
    scale, so that 45 °C of one are 81 °F and not 113 °F.
    """
    found: dict[str, list[str]] = {
        c.id: [c.id] if _differ(tuple(c.says.values()), c.quantity in rises) else [] for c in claims
    }
    for one, other in combinations(claims, 2):
        if not one.quantity or (one.quantity, one.under) != (other.quantity, other.under):
            continue
        if _exclude(one, other, rise=one.quantity in rises):
            found[one.id].append(other.id)
            found[other.id].append(one.id)
    return {id: tuple(others) for id, others in found.items()}


def _differ(said: Sequence[str], rise: bool) -> bool:
    """Whether texts that give as many figures of the same sorts differ in one of them."""
    figures = [[(_number(n), unit) for n, unit in _FIGURE.findall(text)] for text in said]
    if len({len(f) for f in figures}) != 1:
        return False
    return any(_apart(a, b, rise) for f, g in combinations(figures, 2) for a, b in zip(f, g, strict=True))


def _number(text: str) -> float:
    """`1,200` is twelve hundred, `1,5` one and a half; of two points the number ends at the second."""
    text = text.replace("−", "-")
    plain = text.replace(",", "") if _THOUSANDS.fullmatch(text) else text.replace(",", ".")
    return float(".".join(plain.split(".")[:2]))


def _apart(one: tuple[float, str], other: tuple[float, str], rise: bool) -> bool:
    """Two figures of one sort that aren't the same. Words behind them that are no units have to agree."""
    (a, said_a), (b, said_b) = one, other
    if said_a.casefold() == said_b.casefold():
        return not isclose(a, b)
    unit_a, unit_b = _unit(said_a), _unit(said_b)
    if unit_a is None or unit_b is None:
        return False
    try:
        return not isclose(convert(a, unit_a, unit_b, difference=rise), b)
    except UnitError:
        return False


def _unit(text: str) -> Unit | None:
    try:
        return parse_unit(text.rstrip(".:!?")) if text else None
    except UnitError:
        return None


def _exclude(one: Claim, other: Claim, rise: bool) -> bool:
    """Whether no value meets both claims."""
    try:
        (low, high), (least, most) = _range(one, _unit_of(one), rise), _range(other, _unit_of(one), rise)
    except UnitError:
        return False  # told where the claim is held against its quantity
    return low > most or least > high


def _unit_of(claim: Claim) -> Unit:
    amount = next((a for a in (claim.at_least, claim.at_most, claim.nominal) if a is not None), None)
    return parse_unit(amount.unit if amount else "")


def _range(claim: Claim, unit: Unit, rise: bool) -> tuple[float, float]:
    """From where to where the claim holds; unbounded where it sets no bound."""

    def size(amount: Amount, width: bool = False) -> float:
        return convert(float(amount.value), parse_unit(amount.unit), unit, difference=width or rise)

    if claim.nominal is not None:
        within = size(claim.within, width=True) if claim.within else 0.0
        return size(claim.nominal) - within, size(claim.nominal) + within
    low = size(claim.at_least) if claim.at_least else -inf
    return low, size(claim.at_most) if claim.at_most else inf
