"""The highest and lowest of a trace. One sample decides, so its instrument's step counts once (JCGM 100, F.2.2.1).

So does the noise from sample to sample, beyond what the instrument was said to do. It also lifts the highest of several
samples of one level (`noise.lift_of_highest`): of those that lie within so many standard deviations of the
highest that intervals hold the truth, moving means too, whose neighbours share their noise (both simulated in the
tests). How many of them are there by nature and how many by noise nobody can tell, so nothing is taken off. The lift
counts as uniform, so far either way, one for all passes, for it doesn't even out (a known effect that isn't corrected
widens the uncertainty: JCGM 100, F.2.4.5). Smoothing takes it away.

What happened between two samples isn't known; a peak shorter than the interval can be missed, and no uncertainty here
covers that.
"""

from __future__ import annotations

import math
from dataclasses import replace

from reportgen.metrology.errors import NoValue
from reportgen.metrology.traces.noise import beyond_stated, lift_of_highest
from reportgen.metrology.traces.trace import Trace, added
from reportgen.metrology.uncertain import Limit, Source, Uncertain

NEAR = 4.5  # standard deviations of the noise: samples so near the highest may be of its level
IN_A_MEAN = 8  # samples that a moving mean is worth in the time it is taken over, for its highest


def highest(trace: Trace) -> Uncertain:
    """The highest sample. With samples over the scale, more than the highest of limits and samples; where the highest
    is the limit of samples under a scale, less than that."""
    return _outermost(trace, 1)


def lowest(trace: Trace) -> Uncertain:
    """The lowest sample. With samples under the scale, less than the lowest of limits and samples; where the lowest is
    the limit of samples over a scale, more than that."""
    return _outermost(trace, -1)


def _outermost(trace: Trace, sign: int) -> Uncertain:
    read = beyond = other = -math.inf
    off = False
    for piece in trace.pieces():
        for side, values in ((0, piece.values), (sign, piece.values), (-sign, piece.values)):
            found = values[piece.sides == side]
            if not len(found):
                continue
            off = off or side == sign
            known = found[found == found]  # a limit that isn't known is NaN
            top = float((sign * known).max()) if len(known) else -math.inf
            if side == 0:
                read = max(read, top)
            elif side == sign:
                beyond = max(beyond, top)
            else:
                other = max(other, top)
    above: Limit = "above" if sign > 0 else "below"
    which = "highest" if sign > 0 else "lowest"
    below: Limit = "below" if sign > 0 else "above"
    if off:
        bound = max(read, beyond)
        return trace.observe(sign * bound if math.isfinite(bound) else None, above, which)
    if math.isfinite(read) and read >= other:
        return _amid_noise(trace, trace.observe(sign * read, None, which), sign * read, sign, which)
    if math.isfinite(other):
        return trace.observe(sign * other, below, which)
    raise NoValue(f"{trace.name} has no sample there", "look at the times: nothing was logged between them")


def _amid_noise(trace: Trace, found: Uncertain, read: float, sign: int, which: str) -> Uncertain:
    noise = beyond_stated(trace.noise, found)
    if not noise:
        return found
    near = sum(
        int(((piece.sides == 0) & (sign * (read - piece.values) <= NEAR * noise)).sum()) for piece in trace.pieces()
    )
    apart = max(1.0, trace.alike / trace.interval / IN_A_MEAN if trace.interval else 1.0)
    lift = noise * lift_of_highest(near / apart)
    own = Source("repeatability", "", f"{trace.reading}/{which}", "normal")
    lifted = Source("assumption", f"noise in the {which} of {trace.name}", trace.whose or trace.reading)
    more = {own: noise, lifted: lift / math.sqrt(3)}
    return replace(found, contributions=added(found.contributions, more))
