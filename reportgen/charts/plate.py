"""The sheet a chart is drawn on: its measures, and the few sorts of ink.

A chart is designed 360 px wide, the column of a small phone, and grows as a whole; nothing in it is narrower than that
allows. What lies along the x axis is in the quantity's own unit; rows run down in px.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from reportgen.charts.layer import Ends, Layer, Place, Row, layer
from reportgen.charts.scale import Axis
from reportgen.wording.apart import among_latin

WIDE = 360.0
NAME, FIGURE, SMALL = 13.0, 12.5, 11.0  # type sizes in px at that width
DIGIT = 7.9  # px that a digit of `FIGURE` size may need in the widest face a reader's system is likely to have
INK = "currentColor"
FAINT, GRID, PALE, LIGHT = 0.09, 0.15, 0.36, 0.72  # opacities: band, hair lines, intervals, second-rank text

__all__ = [
    "DIGIT", "FAINT", "FIGURE", "GRID", "INK", "LIGHT", "NAME", "PALE", "SMALL", "WIDE",
    "Layer", "Plate", "Row", "bands", "boxes", "lines", "points", "rules", "text",
]  # fmt: skip


@dataclass(frozen=True)
class Plate:
    """Margins round the field that is drawn on, in px, and the axes of the field.

    Without `y`, the field's upright measure is px from its top.
    """

    left: float
    right: float
    top: float
    bottom: float
    height: float
    x: Axis
    y: Axis | None = None

    @property
    def width(self) -> float:
        """Of the field, in px."""
        return WIDE - self.left - self.right

    @property
    def scales(self) -> Mapping[str, Mapping[str, Ends]]:
        """What the ends of the field stand for."""
        up = (0.0, self.height) if self.y is None else (self.y.high, self.y.low)
        return {"x": {"domain": (self.x.low, self.x.high)}, "y": {"domain": up, "range": (0.0, self.height)}}


def text(
    plate: Plate, name: str, rows: Sequence[Row], x: Place, y: Place = "y", *, align: str = "left",
    size: float = FIGURE, weight: int = 400, opacity: float = 1.0, dx: float = 0.0,
) -> Layer:  # fmt: skip
    """Words: each row has `text`, and `x` and `y` where those are fields. Upright middle of the line at `y`.

    A drawing runs from left to right in every language; words of another direction keep it among themselves.
    """
    mark = {
        "type": "text", "align": align, "baseline": "middle", "fontSize": size, "fontWeight": weight, "fill": INK,
        "fillOpacity": opacity, "dx": dx, "limit": 0,
    }  # fmt: skip
    said = [{**row, "text": among_latin(str(row["text"]))} for row in rows]
    return layer(name, said, mark, {"x": x, "y": y}, plate.scales, ["text"])


def rules(
    plate: Plate, name: str, rows: Sequence[Row], *, x: Place = "x", x2: Place | None = None, y: Place = "y",
    y2: Place | None = None, width: float = 1.0, opacity: float = 1.0, ink: str = "", cap: str = "butt",
    dash: tuple[float, ...] = (),
) -> Layer:  # fmt: skip
    """Straight lines from (x, y) to (x2, y2); coloured by each row's `stroke`, or all in `ink`."""
    mark: dict[str, object] = {"type": "rule", "strokeWidth": width, "strokeCap": cap, "strokeOpacity": opacity}
    if dash:
        mark["strokeDash"] = list(dash)
    if ink:
        mark["stroke"] = ink
    ends = {"x": x, "x2": x2, "y": y, "y2": y2}
    places = {channel: at for channel, at in ends.items() if at is not None}
    return layer(name, rows, mark, places, plate.scales, [] if ink else ["stroke"])


def lines(
    plate: Plate, name: str, rows: Sequence[Row], *, width: float = 1.3, ink: str = INK, dash: tuple[float, ...] = ()
) -> Layer:
    """One line through the rows' (x, y), from left to right, broken where a `y` is None."""
    mark: dict[str, object] = {"type": "line", "strokeWidth": width, "strokeJoin": "round", "stroke": ink}
    if dash:
        mark["strokeDash"] = list(dash)
    return layer(name, rows, mark, {"x": "x", "y": "y"}, plate.scales)


def bands(plate: Plate, name: str, rows: Sequence[Row], *, ink: str, opacity: float = FAINT) -> Layer:
    """A filled band from each row's (x, y) to (x, y2), from left to right."""
    mark: dict[str, object] = {"type": "area", "fill": ink, "fillOpacity": opacity}
    return layer(name, rows, mark, {"x": "x", "y": "y", "y2": "y2"}, plate.scales)


def boxes(
    plate: Plate, name: str, rows: Sequence[Row], *, y: Place = "y", y2: Place = "y2", opacity: float = 1.0,
    ink: str = "",
) -> Layer:  # fmt: skip
    """Filled rectangles from each row's `x` to `x2`, from y to y2; coloured by each row's `fill`, or all in `ink`."""
    mark: dict[str, object] = {"type": "rect", "fillOpacity": opacity, **({"fill": ink} if ink else {})}
    places: dict[str, Place] = {"x": "x", "x2": "x2", "y": y, "y2": y2}
    return layer(name, rows, mark, places, plate.scales, [] if ink else ["fill"])


def points(
    plate: Plate, name: str, rows: Sequence[Row], *, x: Place = "x", y: Place = "y", shape: str = "",
    size: float = 16.0, opacity: float = 1.0, ink: str = "", hollow: bool = False, stroke: float = 1.2,
) -> Layer:  # fmt: skip
    """Small marks of area `size`; shaped by each row's `shape` or all as `shape`; coloured by `fill` or in `ink`.

    `hollow` marks have an outline alone, coloured by each row's `stroke` or in `ink`.
    """
    inked, bare = ("stroke", "fill") if hollow else ("fill", "stroke")
    mark: dict[str, object] = {
        "type": "point", "size": size, "filled": not hollow, "opacity": 1, f"{inked}Opacity": opacity,
        bare: "transparent", "strokeWidth": stroke if hollow else 0,
    }  # fmt: skip
    if shape:
        mark["shape"] = shape
    if ink:
        mark[inked] = ink
    own = [channel for channel, all_alike in (("shape", shape), (inked, ink)) if not all_alike]
    return layer(name, rows, mark, {"x": x, "y": y}, plate.scales, own)
