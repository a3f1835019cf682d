"""The light colours of a theme, for drawings that stand outside its pages."""

from __future__ import annotations

import re
from collections.abc import Mapping

from reportgen.theme.load import Theme

_SET = re.compile(r"--([\w-]+)\s*:\s*(#[0-9a-fA-F]{3,8})\b")
_AWAY = re.compile(r"@media[^{]*\{(?:[^{}]*\{[^{}]*\})*[^{}]*\}")
_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
USUAL: Mapping[str, str] = {
    "paper": "#ffffff", "ink": "#000000", "quiet": "#555555", "hair": "#bbbbbb",
    **{f"c{n}": "#333333" for n in range(1, 9)},
}  # fmt: skip


def light_colours(theme: Theme) -> Mapping[str, str]:
    """Name → colour, as the theme's styles set them (`--ink: #1b1d1f`) outside any `@media`, the last one counting.

    What a theme doesn't set so is near black on white.
    """
    found = dict(USUAL)
    for name in sorted(theme.styles):
        found |= dict(_SET.findall(_AWAY.sub("", _COMMENT.sub("", theme.styles[name]))))
    return found
