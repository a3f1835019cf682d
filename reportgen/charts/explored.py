"""What exploring a chart needs, read from the very specification it was drawn from: JSON for the theme's script.

A row of a specification may say more than how its mark looks: `of`, the place in the campaign's order of the contender
it belongs to; `said`, its value in words; `walk` and `turn`, the line of the chart it is met on, and when. So come:

- `owners`: layer → for each of its marks, in order, whose it is (−1: nobody's); layers of nobody are left out;
- `walks`: line after line of the chart, each `{"of": n, "stops": [[x, y, said], …]}`, in px of the field;
- `wide`, `high`: the field in px;
- `moving`, `ticks` and their `unit`, where one can look closer (`charts/zoomed.py`).

Everything a reader is told was put in words here; the script formats nothing.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from reportgen.charts.layer import Layer, Row
from reportgen.charts.zoomed import Closer, moving

NOBODY = -1
_ONE_MARK = frozenset({"line", "area"})  # sorts of marks of which one is drawn for all rows


def explored(specification: Mapping[str, Any], closer: Closer | None = None) -> str:
    """The JSON; "" where no row of the specification says its value."""
    layers: Sequence[Layer] = specification["layer"]
    walks = list(_walks(layers, specification["width"], specification["height"]))
    if not walks:
        return ""
    told: dict[str, object] = {
        "wide": _px(specification["width"]),
        "high": _px(specification["height"]),
        "owners": {one["name"]: owners for one in layers if (owners := _owners(one))},
        "walks": walks,
    }
    if closer:
        told |= {"moving": moving(layers), "ticks": closer.ticks(specification["width"])}
        told["unit"] = closer.unit
    return json.dumps(told, ensure_ascii=False, separators=(",", ":"))


def _owners(layer: Layer) -> list[int]:
    rows: Sequence[Row] = layer["data"]["values"]
    owners = [_whole(row.get("of", NOBODY)) for row in rows]
    if layer["mark"]["type"] in _ONE_MARK:
        owners = owners[:1]
    return [] if all(owner == NOBODY for owner in owners) else owners


def _walks(layers: Sequence[Layer], wide: float, high: float) -> Iterator[dict[str, object]]:
    """The stops of each line of the chart, layer after layer."""
    met: dict[tuple[int, int], list[tuple[int, list[object]]]] = {}
    for layer in layers:
        across = _place(layer, "x", wide)
        down = [_place(layer, channel, high) for channel in ("y", "y2") if channel in layer["encoding"]]
        for row in layer["data"]["values"]:
            spot = [_at(across, row), _middle([_at(one, row) for one in down])]
            if row.get("said") and None not in spot:
                whose = _whole(row.get("of", NOBODY))
                stops = met.setdefault((_whole(row.get("walk", whose)), whose), [])
                stops.append((_whole(row.get("turn", 0)), [*spot, row["said"]]))
    for (_, whose), stops in sorted(met.items()):
        yield {"of": whose, "stops": [stop for _, stop in sorted(stops, key=lambda one: one[0])]}


_Along = tuple[str, float, float, float, float]  # field, its values at both ends, px at both ends


def _place(layer: Layer, channel: str, length: float) -> _Along | float:
    """Where rows lie along x or y: one place in px for all, or by a field; a bar is met at its far end."""
    encoding = layer["encoding"][channel]
    if "value" in encoding:
        return float(encoding["value"])
    scale = layer["encoding"][channel[0]]["scale"]
    low, high = scale["domain"]
    begin, end = scale.get("range", (0.0, length))
    bar = channel == "x" and layer["mark"]["type"] == "rect"
    field = layer["encoding"]["x2"]["field"] if bar else encoding["field"]
    return str(field), float(low), float(high), float(begin), float(end)


def _at(place: _Along | float, row: Row) -> float | None:
    if isinstance(place, float):
        return _px(place)
    field, low, high, begin, end = place
    value = row.get(field)
    if not isinstance(value, int | float):
        return None
    return _px(begin + (value - low) / (high - low) * (end - begin))


def _middle(ends: Sequence[float | None]) -> float | None:
    """Of a mark that stands upright; of any other its one place."""
    known = [end for end in ends if end is not None]
    return _px(sum(known) / len(known)) if known else None


def _px(value: float) -> float:
    return round(value, 1) + 0.0


def _whole(value: object) -> int:
    return value if isinstance(value, int) else NOBODY
