"""Reads a drawing back: its marks by layer, with their places in px."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from dataclasses import dataclass

SVG = "{http://www.w3.org/2000/svg}"


@dataclass(frozen=True)
class Drawn:
    """One mark: where its element is moved to, its attributes with those of its layer, its text."""

    x: float
    y: float
    said: dict[str, str]
    text: str

    @property
    def right(self) -> float:
        """The right end of a box or a line."""
        if "x2" in self.said:
            return self.x + float(self.said["x2"])
        begin, width = re.match(r"M([-\d.]+),[-\d.]+h([-\d.]+)", self.said["d"]).groups()  # type: ignore[union-attr]  # a slip fails the test
        return float(begin) + float(width)

    @property
    def left(self) -> float:
        """The left end of a box or a line."""
        return self.x if "x2" in self.said else float(re.match(r"M([-\d.]+)", self.said["d"])[1])  # type: ignore[index]  # a slip fails the test


def parsed(svg: str) -> ET.Element:
    return ET.fromstring(svg)


def layer(svg: str, name: str) -> list[Drawn]:
    """The marks of one layer, in order; none where the layer isn't drawn."""
    for group in parsed(svg).iter():
        if group.get("class") == f"d-{name}":
            marks = list(group) if group.tag == f"{SVG}g" else [group]
            return [_drawn(m, dict(group.attrib)) for m in marks]
    return []


def _drawn(element: ET.Element, given: dict[str, str]) -> Drawn:
    moved = re.match(r"translate\(([-\d.]+),([-\d.]+)\)", element.get("transform", "translate(0,0)"))
    assert moved
    return Drawn(float(moved[1]), float(moved[2]), {**given, **element.attrib}, element.text or "")


def ticks(svg: str) -> list[tuple[float, float]]:
    """(number printed, px) of the x axis."""
    return [(float(t.text.replace("−", "-")), t.x) for t in layer(svg, "ticks")]
