"""Criteria read in the same passes scatter together: how far, by what their passes did.

A stove that took long in one pass also burned more gas in it. Taken for independent, two such criteria would seem to
say more together than they do: of two equals on two criteria that go together at .9, 11 to 13 % would get a winner
(of 2,000 at three and at eight passes) where 5 % may.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import fsum, log, sqrt

from reportgen.evaluation.evaluated import PassValue, Result
from reportgen.evaluation.told import QuantityTold
from reportgen.intake.reading import Reading, ReadingKey

Label = tuple[str, ...]  # contender, then specimen and pass, or the specimen alone where each is one value
Apart = tuple[str, str]  # quantity and part
NEGLIGIBLE = 1e-9


@dataclass(frozen=True)
class Family:
    """Quantities (and parts) whose passes are the same; `factor`: rows that make standard normal numbers, one of each,
    scatter together as theirs do (a Cholesky factor of their correlations)."""

    members: tuple[Apart, ...]
    factor: tuple[tuple[float, ...], ...]

    @property
    def name(self) -> str:
        """The same whatever order its members stand in."""
        return " ".join(sorted("/".join(m) for m in self.members))


@dataclass(frozen=True)
class _Passes:
    """How far each pass of a quantity lies from its contender's mean, and where it was read."""

    off: Mapping[Label, float]
    read_at: Mapping[Label, frozenset[object]]


def families(told: Sequence[QuantityTold], readings: Mapping[ReadingKey, Reading]) -> tuple[Family, ...]:
    """Quantities that are weighed, joined where some of their passes are the same."""
    passes = {(q.quantity, q.results[0].part): _passes(q, readings) for q in told}
    found: list[list[Apart]] = []
    correlations = {(a, b): _correlation(passes[a], passes[b]) for a, b in combinations(passes, 2)}
    together = {pair: correlation for pair, correlation in correlations.items() if correlation}
    for one in passes:
        joined = [f for f in found if any((m, one) in together or (one, m) in together for m in f)]
        found = [f for f in found if f not in joined] + [[*(m for f in joined for m in f), one]]
    return tuple(Family(tuple(f), _factor(f, together)) for f in found)


def _passes(told: QuantityTold, readings: Mapping[ReadingKey, Reading]) -> _Passes:
    relative = told.rules is not None and told.rules.scatter == "relative"
    off: dict[Label, float] = {}
    read_at: dict[Label, frozenset[object]] = {}
    for result in told.results:
        values = _values(result, relative)
        mean = fsum(values.values()) / len(values) if values else 0.0
        off |= {label: value - mean for label, value in values.items()}
        for p in result.by_pass:
            label = _label(result, p)
            at = frozenset((readings[k].at.file, readings[k].at.line) for k in p.keys if k in readings)
            read_at[label] = read_at.get(label, frozenset()) | at | {result.test}
    if told.rules is not None and told.rules.rounds:
        off = _freed_from_rounds(off)
    return _Passes(off, read_at)


def _label(result: Result, one: PassValue) -> Label:
    if result.by_specimens:
        return result.contender, one.specimen
    return result.contender, one.specimen, one.pass_


def _values(result: Result, relative: bool) -> dict[Label, float]:
    """One value a pass, or a specimen: of those used."""
    found: dict[Label, list[float]] = {}
    for p in result.by_pass:
        if p.value is not None and p.limit is None and not p.excluded and (p.value > 0.0 or not relative):
            found.setdefault(_label(result, p), []).append(log(p.value) if relative else p.value)
    return {label: fsum(values) / len(values) for label, values in found.items()}


def _freed_from_rounds(off: Mapping[Label, float]) -> dict[Label, float]:
    by_round: dict[Label, list[float]] = {}
    for label, value in off.items():
        by_round.setdefault(label[1:], []).append(value)
    return {label: value - fsum(by_round[label[1:]]) / len(by_round[label[1:]]) for label, value in off.items()}


def _correlation(one: _Passes, other: _Passes) -> float:
    """Of the passes that both have; 0 where they share none, or nothing scatters."""
    same = [m for m in one.off if m in other.off and (len(m) == 2 or one.read_at[m] & other.read_at[m])]
    both = fsum(one.off[m] * other.off[m] for m in same)
    spread = sqrt(fsum(one.off[m] ** 2 for m in same) * fsum(other.off[m] ** 2 for m in same))
    return both / spread if spread > 0.0 else 0.0


def _factor(members: Sequence[Apart], together: Mapping[tuple[Apart, Apart], float]) -> tuple[tuple[float, ...], ...]:
    """Lower triangle L with rows of length one and L·Lᵀ the correlations, as far as pairs of them go together."""
    rows: list[list[float]] = []
    for i, one in enumerate(members):
        row: list[float] = []
        for j, other in enumerate(members[:i]):
            wanted = together.get((other, one), together.get((one, other), 0.0))
            left = wanted - fsum(a * b for a, b in zip(row, rows[j], strict=False))
            row.append(left / rows[j][j] if rows[j][j] > NEGLIGIBLE else 0.0)
        length = sqrt(fsum(x * x for x in row))
        row = [x / length for x in row] if length > 1.0 else row
        row.append(sqrt(max(0.0, 1.0 - fsum(x * x for x in row))))
        rows.append(row)
    return tuple(tuple(row) + (0.0,) * (len(members) - len(row)) for row in rows)
