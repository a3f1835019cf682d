"""The sheet a chart is drawn on: its measures, and the few sorts of ink, as layers of a Vega-Lite specification.

A chart is designed 360 px wide, the column of a small phone, and grows as a whole; nothing in it is narrower than that
allows. Rows run down in pixels; what lies along the x axis is in the quantity's own unit.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from reportgen.charts.scale import Axis

Row = dict[str, object]  # what one mark is drawn from: numbers and printed text
Layer = Any  # altair.Chart: the library gives its layers no narrower common type

WIDE = 360.0
NAME, FIGURE, SMALL = 13.0, 12.5, 11.0  # type sizes in px at that width
INK = "currentColor"
FAINT, GRID, PALE, LIGHT = 0.09, 0.15, 0.3, 0.72  # opacities: band, hair lines, intervals, second-rank text


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
        return WIDE - self.left - self.right


def _altair() -> Any:
    """The library, imported where a chart is drawn and not before; its own types stop at its classes' names."""
    import altair

    return altair


def _x(plate: Plate, at: str | float) -> Any:
    alt = _altair()
    if not isinstance(at, str):
        return alt.XValue(at)
    scale = alt.Scale(domain=[plate.x.low, plate.x.high], nice=False, zero=False, padding=0)
    return alt.X(field=at, type="quantitative", scale=scale, axis=None)


def _y(plate: Plate, at: str | float) -> Any:
    alt = _altair()
    if not isinstance(at, str):
        return alt.YValue(at)
    ends = [0, plate.height] if plate.y is None else [plate.y.high, plate.y.low]
    scale = alt.Scale(domain=ends, range=[0, plate.height], nice=False, zero=False, padding=0)
    return alt.Y(field=at, type="quantitative", scale=scale, axis=None)


def _layer(name: str, rows: Sequence[Row]) -> Layer:
    alt = _altair()
    return alt.Chart(alt.Data(values=list(rows)), name=name)


def _own(field: str, **given: Any) -> Any:
    """An encoding that takes the value in the row as it stands, with no scale between."""
    alt = _altair()
    sort = {"fill": alt.Fill, "stroke": alt.Stroke, "shape": alt.Shape}[field]
    return sort(field=field, type="nominal", scale=None, legend=None, **given)


def text(
    plate: Plate, name: str, rows: Sequence[Row], x: str | float, y: str | float = "y", *, align: str = "left",
    size: float = FIGURE, weight: int = 400, opacity: float = 1.0, dx: float = 0.0, dy: float = 0.0,
) -> Layer:  # fmt: skip
    """Words: each row has `text`, and `x` and `y` where those are fields. Upright middle of the line at `y`."""
    alt = _altair()
    mark: dict[str, Any] = {"align": align, "baseline": "middle", "fontSize": size, "fill": INK, "dx": dx, "dy": dy}
    if weight != 400:
        mark["fontWeight"] = weight
    if opacity < 1:
        mark["fillOpacity"] = opacity
    return (
        _layer(name, rows)
        .mark_text(limit=0, **mark)
        .encode(x=_x(plate, x), y=_y(plate, y), text=alt.Text(field="text", type="nominal"))
    )


def rules(
    plate: Plate, name: str, rows: Sequence[Row], *, x: str | float = "x", x2: str | float | None = None,
    y: str | float = "y", y2: str | float | None = None, width: float = 1.0, opacity: float = 1.0, ink: str = "",
    dash: Sequence[float] = (), cap: str = "butt",
) -> Layer:  # fmt: skip
    """Straight lines from (x, y) to (x2, y2); coloured by each row's `stroke`, or all in `ink`."""
    alt = _altair()
    mark: dict[str, Any] = {"strokeWidth": width, "strokeCap": cap}
    if opacity < 1:
        mark["strokeOpacity"] = opacity
    if dash:
        mark["strokeDash"] = list(dash)
    if ink:
        mark["stroke"] = ink
    encoding: dict[str, Any] = {"x": _x(plate, x), "y": _y(plate, y)}
    if not ink:
        encoding["stroke"] = _own("stroke")
    if x2 is not None:
        encoding["x2"] = alt.X2(field=x2) if isinstance(x2, str) else alt.X2Value(value=x2)
    if y2 is not None:
        encoding["y2"] = alt.Y2(field=y2) if isinstance(y2, str) else alt.Y2Value(y2)
    return _layer(name, rows).mark_rule(**mark).encode(**encoding)


def boxes(
    plate: Plate, name: str, rows: Sequence[Row], *, x: str | float = "x", x2: str | float = "x2", y: str | float = "y",
    y2: str | float = "y2", opacity: float = 1.0, ink: str = "",
) -> Layer:  # fmt: skip
    """Filled rectangles between (x, y) and (x2, y2); coloured by each row's `fill`, or all in `ink`."""
    alt = _altair()
    mark: dict[str, Any] = {"fill": ink} if ink else {}
    if opacity < 1:
        mark["fillOpacity"] = opacity
    encoding: dict[str, Any] = {
        "x": _x(plate, x),
        "x2": alt.X2(field=x2) if isinstance(x2, str) else alt.X2Value(value=x2),
        "y": _y(plate, y),
        "y2": alt.Y2(field=y2) if isinstance(y2, str) else alt.Y2Value(y2),
    }
    if not ink:
        encoding["fill"] = _own("fill")
    return _layer(name, rows).mark_rect(**mark).encode(**encoding)


def points(
    plate: Plate, name: str, rows: Sequence[Row], *, x: str | float = "x", y: str | float = "y", shape: str = "",
    size: float = 16.0, opacity: float = 1.0, ink: str = "", hollow: bool = False, stroke: float = 1.2,
) -> Layer:  # fmt: skip
    """Small marks of area `size`; shaped by each row's `shape` or all as `shape`; coloured by `fill` or in `ink`.

    `hollow` marks have an outline alone, coloured by each row's `stroke` or in `ink`.
    """
    field = "stroke" if hollow else "fill"
    mark: dict[str, Any] = {"size": size, "filled": not hollow, "opacity": 1, f"{field}Opacity": opacity}
    mark["fill" if hollow else "stroke"] = "transparent"
    mark["strokeWidth"] = stroke if hollow else 0
    if shape:
        mark["shape"] = shape
    if ink:
        mark[field] = ink
    encoding: dict[str, Any] = {"x": _x(plate, x), "y": _y(plate, y)}
    if not shape:
        encoding["shape"] = _own("shape")
    if not ink:
        encoding[field] = _own(field)
    return _layer(name, rows).mark_point(**mark).encode(**encoding)


def specification(plate: Plate, layers: Sequence[Layer]) -> dict[str, Any]:
    """The layers as one checked Vega-Lite specification; raises altair.SchemaValidationError for a mistake of ours."""
    alt = _altair()
    chart = alt.layer(*layers).properties(
        width=plate.width,
        height=plate.height,
        padding={"left": plate.left, "right": plate.right, "top": plate.top, "bottom": plate.bottom},
        autosize=alt.AutoSizeParams(type="none", contains="content"),
    )
    made: dict[str, Any] = chart.configure_view(stroke=None).to_dict(validate=True)
    return made
