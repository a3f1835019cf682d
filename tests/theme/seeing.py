"""Colours as eyes see them: how far apart two are, and what is left of them to eyes that lack one of three cones.

sRGB to linear light, and to XYZ of D65: IEC 61966-2-1. XYZ to CIELAB: ISO/CIE 11664-4. Distance: CIEDE2000, ISO/CIE 11664-6, by
G. Sharma, W. Wu and E. N. Dalal, "The CIEDE2000 color-difference formula: implementation notes, supplementary test data, and
mathematical observations", Color Res. Appl. 30 (2005) 21, whose equation numbers stand beside the lines. Colour blindness:
G. M. Machado, M. M. Oliveira and L. A. F. Fernandes, "A physiologically-based model for simulation of color vision
deficiency", IEEE Trans. Vis. Comput. Graph. 15 (2009) 1291, supplementary table, severity 1.0; for linear light.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import atan2, cos, degrees, exp, hypot, radians, sin, sqrt

Lab = tuple[float, float, float]
Matrix = tuple[tuple[float, float, float], ...]

TO_XYZ: Matrix = ((0.4124, 0.3576, 0.1805), (0.2126, 0.7152, 0.0722), (0.0193, 0.1192, 0.9505))
WHITE = (0.9505, 1.0, 1.089)
EYES: Mapping[str, Matrix] = {
    "all three cones": ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)),
    "protanopia": ((0.152286, 1.052583, -0.204868), (0.114503, 0.786281, 0.099216), (-0.003882, -0.048116, 1.051998)),
    "deuteranopia": ((0.367322, 0.860646, -0.227968), (0.280085, 0.672501, 0.047413), (-0.01182, 0.04294, 0.968881)),
    "tritanopia": ((1.255528, -0.076749, -0.178779), (-0.078411, 0.930809, 0.147602), (0.004733, 0.691367, 0.3039)),
}


def seen(colour: str, eyes: str = "all three cones") -> Lab:
    """`#rrggbb` in CIELAB as these eyes see it."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    light = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    left = [min(1.0, max(0.0, v)) for v in _times(EYES[eyes], light)]
    x, y, z = (_root(v / w) for v, w in zip(_times(TO_XYZ, left), WHITE, strict=True))
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def apart(one: Lab, other: Lab) -> float:
    """The CIEDE2000 distance of two colours, with all weights 1."""
    (l1, a1, b1), (l2, a2, b2) = one, other
    mean = (hypot(a1, b1) + hypot(a2, b2)) / 2  # (2), (3)
    g = 0.5 * (1 - sqrt(mean**7 / (mean**7 + 25**7)))  # (4)
    a1, a2 = (1 + g) * a1, (1 + g) * a2  # (5)
    c1, c2 = hypot(a1, b1), hypot(a2, b2)  # (6)
    h1, h2 = (degrees(atan2(b, a)) % 360 for a, b in ((a1, b1), (a2, b2)))  # (7)
    turn = h2 - h1  # (10)
    turn += -360 if turn > 180 else 360 if turn < -180 else 0
    dl, dc = l2 - l1, c2 - c1  # (8), (9)
    dh = 2 * sqrt(c1 * c2) * sin(radians(turn if c1 * c2 else 0.0) / 2)  # (11)
    mid, c = (l1 + l2) / 2, (c1 + c2) / 2  # (12), (13)
    h = _mean_hue(h1, h2) if c1 * c2 else h1 + h2  # (14)
    t = 1 - 0.17 * _cos(h - 30) + 0.24 * _cos(2 * h) + 0.32 * _cos(3 * h + 6) - 0.2 * _cos(4 * h - 63)  # (15)
    twist = 30 * exp(-(((h - 275) / 25) ** 2))  # (16)
    sl = 1 + 0.015 * (mid - 50) ** 2 / sqrt(20 + (mid - 50) ** 2)  # (18)
    sc, sh = 1 + 0.045 * c, 1 + 0.015 * c * t  # (19), (20)
    rt = -sin(radians(2 * twist)) * 2 * sqrt(c**7 / (c**7 + 25**7))  # (17), (21)
    return sqrt((dl / sl) ** 2 + (dc / sc) ** 2 + (dh / sh) ** 2 + rt * (dc / sc) * (dh / sh))  # (22)


def _mean_hue(h1: float, h2: float) -> float:
    if abs(h1 - h2) <= 180:
        return (h1 + h2) / 2
    return (h1 + h2 + (360 if h1 + h2 < 360 else -360)) / 2


def _cos(angle: float) -> float:
    return cos(radians(angle))


def _root(t: float) -> float:
    return float(t ** (1 / 3)) if t > (6 / 29) ** 3 else t / (3 * (6 / 29) ** 2) + 4 / 29


def _times(matrix: Matrix, vector: Sequence[float]) -> list[float]:
    return [sum(m * v for m, v in zip(row, vector, strict=True)) for row in matrix]
