"""What first order leaves out of the results of a quantity, offered to judgement as joint draws.

Draws are only made where judgement asks for them, and all contenders are drawn together, so that what two results share
is the same in both.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from math import inf
from typing import TYPE_CHECKING

from reportgen.campaign.declared import Quantity
from reportgen.evaluation.gathered import TWELVE, Gathered, steps_of_one_pass
from reportgen.evaluation.replayed import Replayed, V
from reportgen.evaluation.working import Working, doubt_of
from reportgen.evaluation.workings import Workings
from reportgen.judgement.draws import Beyond
from reportgen.judgement.measured import Measured
from reportgen.metrology import drawn
from reportgen.metrology.bending import BENDING, bending
from reportgen.metrology.draws import Draws
from reportgen.metrology.engine import Engine
from reportgen.metrology.errors import NoValue
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
    return {c: drawing.offered(g) if c in bends else g for c, g in gathered.items()}


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

    def bend(self, passes: Sequence[Working]) -> float:
        """What second order adds to their result, one standard uncertainty away, at most; in its unit."""
        return self._by(BENDING, passes).bend

    def bend_beside_scatter(self, passes: Sequence[Working]) -> float:
        """The same of what the scatter between passes doesn't hold."""
        return self._by(bending(HELD_BY_SCATTER), passes).bend

    def offered(self, gathered: Gathered) -> Gathered:
        """The result with its draws, and the one with every excluded pass put back with its own."""
        with_all = gathered.with_all
        if with_all is not None:
            with_all = self._told(with_all, [w for w in gathered.passes if w.value is not None])
        return replace(gathered, measured=self._told(gathered.measured, _used(gathered)), with_all=with_all)

    def _told(self, measured: Measured, passes: Sequence[Working]) -> Measured:
        """What rests on a bound somewhere is never drawn. A straight one is, for comparisons with those that aren't."""
        try:
            mean = self._by(drawn.engine(Draws(2), 0), passes).first
        except NoValue:
            return measured
        draws = self.workings.draws
        bends = {True: self.bend_beside_scatter(passes), False: self.bend(passes)}
        rounding = {s: size / TWELVE for s, size in steps_of_one_pass(passes).items()}
        several = len(passes) > 1

        @lru_cache(maxsize=KEPT)
        def block(number: int, repeat: bool) -> tuple[Numbers, Numbers]:
            left_out = HELD_BY_SCATTER if repeat else frozenset({"scatter"})
            if several and not repeat:
                left_out |= {"step"}
            straight = full = _straight(mean, left_out, draws, number)
            if bends[repeat]:
                found = self._by(drawn.engine(draws, number, left_out), passes)
                full = straight if found.off is None else found.off
            if several and not repeat:  # passes don't make rounding smaller: that of one is added
                added = _filled(drawn.spread(rounding, draws, number), draws)
                straight, full = straight + added, full + added
            return straight, full

        degrees = min((s.degrees for s in mean.contributions), default=inf)
        return replace(measured, beyond=Beyond(bends.__getitem__, block, degrees))

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
