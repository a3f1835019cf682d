"""Draws of results, joint over quantities and contenders: what two of them share is the same in both (JCGM 101, 7.3).

A draw is the value, what a repeat would scatter, and what the instrument may be off. Of a result whose scatter isn't
known it is the instrument alone.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from math import fsum, sqrt
from typing import TYPE_CHECKING

from reportgen.evaluation.passes_together import Apart, Family
from reportgen.evaluation.told import QuantityTold
from reportgen.judgement.half_width import hand_is_hidden, holds_steps
from reportgen.judgement.measured import Measured, Rules
from reportgen.judgement.scale import in_logarithms
from reportgen.metrology.draws import BLOCK, Draws, named_stream
from reportgen.metrology.uncertain import OF_ONE_READING, Source

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]


@dataclass(frozen=True)
class Scattering:
    """What passes say of one result, on the working scale: standard deviation of the result with its degrees of
    freedom, and of one pass."""

    sd: float
    degrees: float
    of_pass: float
    own: bool


class Joint:
    """Draws of every result, `BLOCK` of them. What is asked twice is the same twice."""

    def __init__(self, families: Sequence[Family]) -> None:
        self.draws = Draws(BLOCK)
        self._of: Mapping[Apart, Family] = {m: f for f in families for m in f.members}
        self._kept: dict[tuple[str, ...], Numbers] = {}

    def off(self, told: QuantityTold, one: Measured, scattering: Scattering | None) -> Numbers:
        """How far each draw lies from the value; from its logarithm where scatter is relative."""
        import numpy as np

        assert told.rules is not None
        working = in_logarithms(one) if told.rules.scatter == "relative" else one
        apart = (told.quantity, told.results[0].part)
        if scattering is None:
            return self._instrument(working, apart)
        found = self._type_b(working, _left_out(working, scattering.sd), repeat=True)
        found = found + scattering.sd * self._student(apart, one.name, scattering)
        if not holds_steps(scattering.of_pass, max(working.steps, default=0.0)):
            found = found + self._rounding(working, apart)
        for name, part in sorted(one.stands_on.items()):
            found = found + scattering.of_pass * sqrt(part) * self._normal("stood on", *apart, name)
        return np.asarray(found + self._between(working, apart, told.rules))

    def _instrument(self, working: Measured, apart: Apart) -> Numbers:
        found = self._type_b(working, frozenset({"step", "scatter"}), repeat=False)
        return found if _is_bent(working) else found + self._rounding(working, apart)

    def _type_b(self, working: Measured, left_out: frozenset[str], repeat: bool) -> Numbers:
        import numpy as np

        straight = np.zeros(BLOCK)
        for source in sorted(working.contributions):
            if source.sort not in left_out:
                straight += working.contributions[source] * self.draws.of(source, 0)
        if not _is_bent(working) or working.beyond is None:
            return straight
        _, full = working.beyond.block(0, repeat)
        return np.where(np.isfinite(full), full, straight)

    def _rounding(self, working: Measured, apart: Apart) -> Numbers:
        import numpy as np

        found = np.zeros(BLOCK)
        for n, step in enumerate(working.steps):
            found += step / sqrt(12.0) * self.draws.of(Source("step", "/".join(apart), f"{working.name}/{n}"), 0)
        return found

    def _student(self, apart: Apart, name: str, scattering: Scattering) -> Numbers:
        """Student's t, together with the other quantities of the same passes; a pooled variance is one for all."""
        import numpy as np

        family = self._of.get(apart) or Family((apart,), ((1.0,),))
        row = family.factor[family.members.index(apart)]
        normal = np.zeros(BLOCK)
        for weight, member in zip(row, family.members, strict=True):
            if weight:
                normal = normal + weight * self._normal("scatter", *member, name)
        return np.asarray(normal / self._spread(family, name if scattering.own else "", scattering.degrees))

    def _spread(self, family: Family, own: str, degrees: float) -> Numbers:
        """√(χ²/ν): how far off the standard deviation itself may be. One share of χ² serves a whole family."""
        import numpy as np
        from scipy.special import gammaincinv

        key = (family.name, own, repr(degrees))
        if key not in self._kept:
            share = self._share(family.name, own)
            self._kept[key] = np.sqrt(gammaincinv(degrees / 2.0, share) * 2.0 / degrees)
        return self._kept[key]

    def _share(self, family: str, own: str) -> Numbers:
        return self._remembered(("variance", family, own), lambda stream: stream.random(BLOCK))

    def _between(self, working: Measured, apart: Apart, rules: Rules) -> Numbers | float:
        if not rules.between_sessions:
            return 0.0
        share = rules.between_sessions / len(working.sessions)
        return sum((share * self._normal("session", *apart, s) for s in sorted(working.sessions)), start=0.0)

    def _normal(self, *names: str) -> Numbers:
        return self._remembered(names, lambda stream: stream.standard_normal(BLOCK))

    def _remembered(self, names: tuple[str, ...], draw: Callable[[np.random.Generator], Numbers]) -> Numbers:
        if names not in self._kept:
            self._kept[names] = draw(named_stream(*names))
        return self._kept[names]


def shares_of_yes(names: Sequence[str], yes: int, of: int) -> Numbers:
    """The chance of a yes, after `yes` of `of` tries: Beta(yes + ½, no + ½)."""
    return named_stream("yes", *names).beta(yes + 0.5, of - yes + 0.5, BLOCK)


def rates(names: Sequence[str], total: float, over: int) -> Numbers:
    """Events a pass, after `total` of them in `over` passes: Gamma(total + ½) over the passes."""
    return named_stream("count", *names).standard_gamma(total + 0.5, BLOCK) / over


def scattering_of(told: QuantityTold, one: Measured, weighed: Sequence[str]) -> Scattering | None:
    """What a repeat of one result would scatter, None where that isn't known.

    Where every pair of those weighed was compared in complete rounds, what rounds do to all alike is left out.
    """
    assert told.judged is not None
    assert told.rules is not None
    single, found = told.judged.singles[one.name], told.judged.scatter
    if single.sd_of_mean is None or single.degrees is None or single.scatter is None:
        return None
    unit = (one.value or 1.0) if told.rules.scatter == "relative" else 1.0
    own = told.rules.scatter == "own"
    alone = any(p.within in ("rounds", "sessions") for p in told.judged.pairs if {p.first, p.second} <= set(weighed))
    if own or alone or found.sd is None or found.degrees is None:
        hidden = fsum(one.stands_on.values())  # drawn by itself
        variance = max(0.0, single.sd_of_mean**2 - hidden * single.scatter**2)
        return Scattering(sqrt(variance) / unit, single.degrees, single.scatter / unit, own)
    return Scattering(found.sd / sqrt(max(1, len(one.values))), found.degrees, found.sd, own)


def _is_bent(working: Measured) -> bool:
    """Are there joint draws of it that straight lines miss?"""
    return working.beyond is not None and working.beyond.bend(False) > 0.0


def _left_out(working: Measured, sd: float) -> frozenset[str]:
    """Sorts that the scatter between passes holds already."""
    left_out = {"step", *OF_ONE_READING}
    if hand_is_hidden(working.contributions, sd):
        left_out.discard("reaction")
    return frozenset(left_out)
