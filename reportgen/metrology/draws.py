"""Joint draws of what is not known: one stream of random numbers a source, the same from run to run.

JCGM 101:2008, 6.4 says what is drawn for each shape, 7.3 that inputs are drawn together. A stream is seeded from what
its source is called, never from the time, so that two results which share an error share its draws, and a second
compile prints the same figures.
"""

from __future__ import annotations

import math
from collections import OrderedDict
from hashlib import sha256
from typing import TYPE_CHECKING

from reportgen.metrology.uncertain import Source, estimate_of

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

BLOCK = 10_000  # draws a block: the least that JCGM 101, 7.9.4 b allows for 95 %
_KEPT = 400  # streams of one block remembered at a time, some 32 MB


class Draws:
    """The draws of every source, block after block; each is drawn once and kept while it is likely to be asked again.

    `size`: draws in a block.
    """

    def __init__(self, size: int = BLOCK) -> None:
        self.size = size
        self._kept: OrderedDict[tuple[Source, int], Numbers] = OrderedDict()

    def of(self, source: Source, block: int) -> Numbers:
        """z of the source: its error is z times its standard uncertainty. Mean 0; standard deviation 1, or for finite
        degrees of freedom that of Student's t (JCGM 101, 6.4.9)."""
        key = (source, block)
        if key in self._kept:
            self._kept.move_to_end(key)
            return self._kept[key]
        found = self._kept[key] = self._drawn(source, block)
        if len(self._kept) > _KEPT:
            self._kept.popitem(last=False)
        return found

    def _drawn(self, source: Source, block: int) -> Numbers:
        import numpy as np

        stream = _stream("error", source, source.where, block)
        if source.shape == "uniform":
            return stream.uniform(-math.sqrt(3.0), math.sqrt(3.0), self.size)
        if source.shape == "triangular":
            return stream.triangular(-math.sqrt(6.0), 0.0, math.sqrt(6.0), self.size)
        if source.shape == "arcsine":
            return math.sqrt(2.0) * np.sin(stream.uniform(-math.pi / 2, math.pi / 2, self.size))
        normal = stream.standard_normal(self.size)
        if math.isinf(source.degrees):
            return normal
        of_one = estimate_of(source)  # one for all parameters of a fit
        estimate = _stream("variance", of_one, of_one.where, block)
        return normal / np.sqrt(estimate.chisquare(source.degrees, self.size) / source.degrees)


def _stream(what: str, source: Source, where: str, block: int) -> np.random.Generator:
    return named_stream(what, source.sort, source.of, where, source.shape, repr(source.degrees), str(block))


def named_stream(*names: str) -> np.random.Generator:
    """Random numbers that are the same wherever the same names are asked for, and independent of all other names'.

    >>> float(named_stream("one", "name").random()) == float(named_stream("one", "name").random())
    True
    """
    import numpy as np

    named = "\x1f".join(names)
    return np.random.Generator(np.random.PCG64(int.from_bytes(sha256(named.encode()).digest()[:16], "big")))
