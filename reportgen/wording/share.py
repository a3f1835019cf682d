"""Limits of a share as percentages: fine near none and all, where a percent is much."""

from __future__ import annotations

from reportgen.wording.interval import percent

NEAR_AN_END = 0.1


def share_limit(share: float) -> str:
    """0.2924 is "29 %", 0.025 is "2.5 %", 1 is "100 %"."""
    near = 0.0 < share < NEAR_AN_END or 1.0 - NEAR_AN_END < share < 1.0
    return percent(share, 1 if near else 0)
