"""A piece of a trace: samples in order."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Sides = NDArray[np.int8]


@dataclass(frozen=True)
class Piece:
    """Samples in order: `times` in s, `values` in the trace's unit, `sides` 0 (read), 1 (over it) or −1 (under it)."""

    times: Floats
    values: Floats
    sides: Sides
