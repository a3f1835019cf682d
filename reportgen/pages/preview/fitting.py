"""Breaking text into lines for a drawing, where no browser does it.

Widths are those of the face the drawing is set in (Liberation Sans has the widths of Helvetica: its Adobe Font Metrics,
from memory), in thousandths of the type's size; for letters it lacks, widths that hold for most faces.
"""

from __future__ import annotations

from unicodedata import category, combining, east_asian_width

_BY_WIDTH = {
    222: "ijl‘’",
    278: " !,./:;I[\\]ft·",
    333: "()-`r“”",
    389: "*",
    500: "Jcksvxyz",
    556: "#$?0123456789L_abdeghnopqu–",
    584: "+<=>~−×±",
    611: "FTZ",
    667: "&ABEKPSVXY",
    722: "CDHNRUw",
    778: "GOQ",
    833: "Mm",
    889: "%",
    944: "W",
    1000: "—…@",
}
_WIDTHS = {letter: width for width, letters in _BY_WIDTH.items() for letter in letters}
_USUAL, _WIDE = 667, 1050


def width_of(text: str, size: float) -> float:
    """How wide the text is, in px, set in `size` px: rather too wide than too narrow."""
    return sum(map(_width, text)) * size / 1000


def _width(letter: str) -> int:
    if combining(letter) or category(letter) == "Cf":
        return 0
    if east_asian_width(letter) in ("W", "F"):
        return _WIDE
    return _WIDTHS.get(letter, _USUAL)


def broken(text: str, size: float, width: float, most: int) -> tuple[str, ...]:
    """The text in at most `most` lines no wider than `width` px; what doesn't fit ends in an ellipsis.

    It breaks between words; a word wider than a line is cut.
    """
    lines: list[str] = []
    rest = text.split(" ")
    while rest and len(lines) < most:
        line = rest.pop(0)
        while rest and width_of(f"{line} {rest[0]}", size) <= width:
            line = f"{line} {rest.pop(0)}"
        if width_of(line, size) > width or (rest and len(lines) == most - 1):
            line = cut(f"{line}…", size, width)
        lines.append(line)
    return tuple(lines)


def cut(text: str, size: float, width: float) -> str:
    """The text as it is where it fits, else as much of it as fits, with an ellipsis."""
    if width_of(text, size) <= width:
        return text
    kept = text.rstrip("…")
    while kept and width_of(f"{kept}…", size) > width:
        kept = kept[:-1].rstrip(" ,.;:")
    return f"{kept}…"
