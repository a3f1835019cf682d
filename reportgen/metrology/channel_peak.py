"""The highest and lowest of a trace. One sample decides, so its instrument's step counts once (JCGM 100, F.2.2.1).

What happened between two samples isn't known; a peak shorter than the interval can be missed, and no uncertainty here
covers that.
"""

from __future__ import annotations

import math

from reportgen.metrology.errors import NoValue
from reportgen.metrology.trace import Trace
from reportgen.metrology.uncertain import Limit, Uncertain


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
        return trace.observe(sign * read, None, which)
    if math.isfinite(other):
        return trace.observe(sign * other, below, which)
    raise NoValue(f"{trace.name} has no sample there", "look at the times: nothing was logged between them")
