"""Levels in decibels, as plain numbers: averaged and added through the energies they stand for.

L = 10·lg(E/E₀), so equal sources together are 3.01 dB above one of them, and 80 dB beside 90 dB adds 0.41 dB (ISO
1683, ISO 3745). The largest level is taken out first, so no level overflows.
"""

from __future__ import annotations

import math
from collections.abc import Sequence


def energy_sum(levels: Sequence[float]) -> float:
    """The level in dB of all sources together; of none, minus infinity (no sound at all)."""
    if not levels:
        return -math.inf
    highest = max(levels)
    return highest + 10 * math.log10(math.fsum(10 ** ((level - highest) / 10) for level in levels))


def energy_mean(levels: Sequence[float]) -> float:
    """The level in dB of the mean energy of at least one level (microphone positions, parts of a run)."""
    return energy_sum(levels) - 10 * math.log10(len(levels))


def energy_shares(levels: Sequence[float]) -> list[float]:
    """What part of the whole energy each level brings, adding up to 1."""
    highest = max(levels)
    energies = [10 ** ((level - highest) / 10) for level in levels]
    whole = math.fsum(energies)
    return [energy / whole for energy in energies]
