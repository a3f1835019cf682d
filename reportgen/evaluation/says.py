"""What a caveat says, in whoever's words."""

from __future__ import annotations

from reportgen.evaluation.evaluated import Caveat
from reportgen.wording.met import met_says


def says_of(caveat: Caveat) -> str:
    """The author's words, or the sentence of what the program met among the readings."""
    return caveat.says or (met_says(caveat.met) if caveat.met else "")
