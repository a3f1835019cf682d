"""What a value was worked out from, as one digest: the engine that does no sums but writes down which are done.

Two values with equal marks come of the same operations on the same readings (value, unit, bound and every
contribution by its source), so that whatever else works them out finds the same.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256

from reportgen.metrology.formulas.engine import FIRST_ORDER, Engine
from reportgen.metrology.uncertain import Source, Uncertain
from reportgen.metrology.unit import Unit


@dataclass(frozen=True)
class Marked:
    """A value to first order and its mark."""

    first: Uncertain
    mark: str


def mark_of(*parts: object) -> str:
    """One digest (sha256, hexadecimal) of parts by how Python writes them; floats to the last bit."""
    return sha256("\x1f".join(map(repr, parts)).encode()).hexdigest()


def marks_of(contributions: Mapping[Source, float]) -> tuple[object, ...]:
    """All there is to contributions, whatever their order."""
    return tuple((s.sort, s.of, s.where, s.shape, s.degrees, contributions[s]) for s in sorted(contributions))


def _leaf(x: Uncertain) -> Marked:
    return Marked(x, mark_of("leaf", x.value, x.unit, x.limit, marks_of(x.contributions)))


def _named(name: str, work: Callable[..., Uncertain]) -> Callable[..., Marked]:
    return lambda *xs: Marked(work(*(x.first for x in xs)), mark_of(name, *(x.mark for x in xs)))


def _joined(how: str) -> Callable[[Sequence[Marked]], Marked]:
    join = FIRST_ORDER.joins[how]
    return lambda xs: Marked(join([x.first for x in xs]), mark_of("join", how, *(x.mark for x in xs)))


def _in_unit(x: Marked, unit: Unit) -> Marked:
    return Marked(FIRST_ORDER.in_unit(x.first, unit), mark_of("in", x.mark, unit))


def _power(x: Marked, exponent: float) -> Marked:
    return Marked(FIRST_ORDER.power(x.first, exponent), mark_of("power", x.mark, exponent))


FINGERPRINT: Engine[Marked] = Engine(
    leaf=_leaf,
    plain=lambda x: FIRST_ORDER.plain(x.first),
    unit_of=lambda x: x.first.unit,
    in_unit=_in_unit,
    negate=_named("negate", FIRST_ORDER.negate),
    power=_power,
    signs={sign: _named(sign, work) for sign, work in FIRST_ORDER.signs.items()},
    functions={name: _named(name, work) for name, work in FIRST_ORDER.functions.items()},
    joins={how: _joined(how) for how in FIRST_ORDER.joins},
)
