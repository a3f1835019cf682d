"""Which names in a formula are channels of a logger: the first in a function that looks along one."""

from __future__ import annotations

import re

# as the formulas' own grammar has them
ALONG = (
    "highest", "lowest", "mean_level", "area", "slope", "at", "when", "during", "smoothed", "plateau", "how_long",
)  # fmt: skip
_CHANNEL = re.compile(rf"\b(?:{'|'.join(ALONG)})\s*\(\s*([a-z_][a-z0-9_]*)\b(?!\s*\()")


def channels_of(formula: str) -> tuple[str, ...]:
    """The channels it names, each once."""
    return tuple(dict.fromkeys(_CHANNEL.findall(formula)))
