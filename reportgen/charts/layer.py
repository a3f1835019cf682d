"""One layer of a Vega-Lite specification: written and checked by Altair once for each sort of layer, then filled.

Altair takes some hundred times as long to check a layer as to fill one, and what differs from chart to chart are
numbers alone: rows, places in px, ends of axes.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from functools import cache
from typing import Any

Row = dict[str, object]  # what one mark is drawn from: numbers and printed text
Layer = dict[str, Any]
Place = str | float  # the name of a row's field, or one place in px for all rows
Ends = tuple[float, float]  # what the two ends of a scale stand for


def layer(
    name: str,
    rows: Sequence[Row],
    mark: Mapping[str, object],
    places: Mapping[str, Place],
    scales: Mapping[str, Mapping[str, Ends]],
    own: Sequence[str] = (),
) -> Layer:
    """A layer called `name` that draws `mark` (its `type` and looks) once a row.

    `places` say where, by channel (x, x2, y, y2); `scales` hold `domain` (and `range` in px) of x and y; `own` are the
    channels (fill, stroke, shape, text) that each row gives for itself. Raises altair's SchemaValidationError where the
    looks are none that the grammar knows: a mistake of ours.
    """
    sort = tuple((channel, at if isinstance(at, str) else "") for channel, at in places.items())
    made: Layer = json.loads(_checked(json.dumps(mark, sort_keys=True), sort, tuple(own)))
    made["name"] = name
    made["data"] = {"values": list(rows)}
    for channel, at in places.items():
        encoding = made["encoding"][channel]
        if not isinstance(at, str):
            encoding["value"] = at
        elif "scale" in encoding:
            encoding["scale"].update({end: list(pair) for end, pair in scales[channel].items()})
    return made


def specification(layers: Sequence[Layer], width: float, height: float, padding: Mapping[str, float]) -> dict[str, Any]:
    """The layers as one specification, `width` by `height` px inside `padding`; nothing outside is made room for."""
    made: dict[str, Any] = json.loads(_sheet())
    return {**made, "layer": list(layers), "width": width, "height": height, "padding": dict(padding)}


@cache
def _checked(mark: str, places: tuple[tuple[str, str], ...], own: tuple[str, ...]) -> str:
    alt = _altair()
    encodings: dict[str, Any] = {}
    for channel, field in places:
        if not field:
            encodings[channel] = alt.value(0)
        elif channel in ("x", "y"):
            scale = alt.Scale(domain=[0, 1], nice=False, zero=False, padding=0)
            sort = alt.X if channel == "x" else alt.Y
            encodings[channel] = sort(field=field, type="quantitative", scale=scale, axis=None)
        else:
            encodings[channel] = (alt.X2 if channel == "x2" else alt.Y2)(field=field)
    for channel in own:
        if channel == "text":
            encodings[channel] = alt.Text(field="text", type="nominal")
        else:
            sort = {"fill": alt.Fill, "stroke": alt.Stroke, "shape": alt.Shape}[channel]
            encodings[channel] = sort(field=channel, type="nominal", scale=None, legend=None)
    looks = json.loads(mark)
    chart = alt.Chart(alt.Data(values=[]), mark=alt.MarkDef(**looks)).encode(**encodings)
    told = chart.to_dict(validate=True)
    return json.dumps({"mark": told["mark"], "encoding": told["encoding"]})


@cache
def _sheet() -> str:
    alt = _altair()
    empty = alt.Chart(alt.Data(values=[])).mark_point()
    sheet = alt.layer(empty).properties(autosize=alt.AutoSizeParams(type="none", contains="content"))
    told = sheet.configure_view(stroke=None).to_dict(validate=True)
    return json.dumps({key: told[key] for key in ("$schema", "config", "autosize")})


def _altair() -> Any:
    """The library, imported where the first chart is drawn and not before; its own types stop at its classes' names."""
    import altair

    return altair
