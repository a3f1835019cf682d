"""What first order leaves out of the results of a quantity, offered to judgement as joint draws.

Draws are only made where judgement asks for them, and all contenders are drawn together, so that what two results share
is the same in both.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache, lru_cache
from math import inf
from typing import TYPE_CHECKING

from reportgen.campaign.declared import Quantity
from reportgen.evaluation.gathered import TWELVE, Gathered, steps_of_one_pass
from reportgen.evaluation.replayed import Replayed, V
from reportgen.evaluation.specimens_apart import apart_in
from reportgen.evaluation.working import Working, doubt_of
from reportgen.evaluation.workings import Workings
from reportgen.judgement.drawn.beyond import Beyond
from reportgen.judgement.drawn.found import Found
from reportgen.judgement.measured import Measured
from reportgen.metrology.draws import Draws
from reportgen.metrology.errors import NoValue
from reportgen.metrology.formulas import drawn
from reportgen.metrology.formulas.bending import BENDING, bending
from reportgen.metrology.formulas.engine import FIRST_ORDER, Engine
from reportgen.metrology.formulas.fingerprint import FINGERPRINT, mark_of, marks_of
from reportgen.metrology.uncertain import OF_ONE_READING, Source, Uncertain

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

HELD_BY_SCATTER = OF_ONE_READING | {"step"}  # what the scatter between passes shows already
KEPT = 32  # blocks of a result remembered: as many as most comparisons ask for


def with_draws(
    workings: Workings, quantity: Quantity, gathered: Mapping[str, Gathered], by_specimen: bool
) -> dict[str, Gathered]:
    """The same results, each with what first order leaves out of it; untouched where all of them are straight."""
    drawing = _Drawing(workings, quantity, by_specimen)
    bends = {c: drawing.bend(_used(g)) for c, g in gathered.items() if _has_interval(g)}
    if not any(bends.values()):
        return dict(gathered)
    return {c: g if bends.get(c) is None else drawing.offered(g) for c, g in gathered.items()}


def _has_interval(gathered: Gathered) -> bool:
    """Not a bound, nor what has no uncertainty that can be stated."""
    mean = gathered.mean
    return mean is not None and mean.value is not None and not mean.limit and not doubt_of(gathered.passes)


def _used(gathered: Gathered) -> list[Working]:
    return [w for w in gathered.passes if w.used]


class _Drawing:
    """One quantity of all contenders, worked out anew from what its formula was told."""

    def __init__(self, workings: Workings, quantity: Quantity, by_specimen: bool) -> None:
        self.workings, self.quantity, self.by_specimen = workings, quantity, by_specimen

    def bend(self, passes: Sequence[Working]) -> float | None:
        """What second order adds to their result, one standard uncertainty away, at most; in its unit. None where it
        rests on a bound somewhere: that is never drawn."""
        try:
            return self._by(BENDING, passes).bend
        except NoValue:
            return None

    def offered(self, gathered: Gathered) -> Gathered:
        """The result with its draws, and the one with every excluded pass put back with its own."""
        assert gathered.mean is not None
        measured, with_all = self._told(gathered.measured, gathered.mean, _used(gathered)), gathered.with_all
        every = [w for w in gathered.passes if w.value is not None]
        if with_all is not None and self.bend(every) is not None:
            with_all = self._told(with_all, self._by(FIRST_ORDER, every), every)
        return replace(gathered, measured=measured, with_all=with_all)

    def _told(self, measured: Measured, mean: Uncertain, passes: Sequence[Working]) -> Measured:
        """A result that is straight itself is drawn too, for comparisons with those that aren't."""
        draws = self.workings.draws
        rounding = {s: size / TWELVE for s, size in steps_of_one_pass(passes).items()}
        several, apart = len(passes) > 1, apart_in(measured.contributions)
        mean = replace(mean, contributions={**mean.contributions, **apart})

        @cache
        def bend(repeat: bool) -> float:
            return self._by(bending(HELD_BY_SCATTER) if repeat else BENDING, passes).bend

        @lru_cache(maxsize=KEPT)
        def block(number: int, repeat: bool) -> tuple[Numbers, Numbers]:
            left_out = HELD_BY_SCATTER if repeat else frozenset({"scatter"})
            if several and not repeat:
                left_out |= {"step"}
            straight = full = _straight(mean, left_out, draws, number)
            if bend(repeat):
                found = self._by(drawn.engine(draws, number, left_out), passes)
                if found.off is not None:
                    beside = apart if repeat else {}
                    full = found.off + _filled(drawn.spread(beside, draws, number), draws)
            if several and not repeat:  # passes don't make rounding smaller: that of one is added
                added = _filled(drawn.spread(rounding, draws, number), draws)
                straight, full = straight + added, full + added
            return straight, full

        @cache
        def made_of() -> str:
            known = (marks_of(c) for c in (mean.contributions, apart, rounding))
            return mark_of(self._by(FINGERPRINT, passes).mark, *known, several, draws.size)

        degrees = min((s.degrees for s in mean.contributions), default=inf)
        return replace(measured, beyond=Beyond(bend, block, degrees, Found(made_of, self.workings.keep)))

    def _by(self, engine: Engine[V], passes: Sequence[Working]) -> V:
        w = self.workings
        replayed = Replayed(engine, w.expressions, w.units, w.quantities)
        joined = replayed.over_specimens if self.by_specimen else replayed.over_passes
        return joined(self.quantity.id, passes)


def _straight(mean: Uncertain, left_out: frozenset[str], draws: Draws, number: int) -> Numbers:
    kept: Mapping[Source, float] = {s: size for s, size in mean.contributions.items() if s.sort not in left_out}
    return _filled(drawn.spread(kept, draws, number), draws)


def _filled(off: Numbers | None, draws: Draws) -> Numbers:
    import numpy as np

    return np.zeros(draws.size) if off is None else off
