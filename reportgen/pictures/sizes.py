"""The sizes a picture is made in: small ones for telephones, none larger than what the camera gave."""

from __future__ import annotations

from dataclasses import dataclass

WIDTHS = (480, 960, 1600)  # pixels: a phone, a column of text on a fine screen, a display read from close by
TALLEST = 16_383  # pixels: a WebP picture is no taller (RFC 9649, 2.7.1.1: 14 bits for each side)
NEAR = 0.8  # a size this near below the largest saves nothing worth another file


@dataclass(frozen=True)
class Size:
    """Width and height in pixels."""

    width: int
    height: int


def sizes_of(width: int, height: int) -> tuple[Size, ...]:
    """The sizes made of a picture of this width and height, smallest first; the last is the largest there is."""
    largest = min(width, WIDTHS[-1], max(1, width * TALLEST // height))
    widths = [w for w in WIDTHS if w < NEAR * largest]
    return tuple(Size(w, min(TALLEST, max(1, (height * w + width // 2) // width))) for w in (*widths, largest))
