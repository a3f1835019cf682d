"""The marks of one measured result: its interval, its value, its passes, its open end."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reportgen.charts import plate as ink
from reportgen.charts.plate import Layer, Plate, Row
from reportgen.charts.scale import known
from reportgen.charts.side import Named
from reportgen.charts.words import words
from reportgen.evaluation.evaluated import Result
from reportgen.wording import interval

_BAR, _VALUE = 10.0, 18.0  # heights of interval and value line, px
_PASSES = 13.0  # px from the value's line down to the passes
_DOT = 4.2  # px between two passes that would touch
BREAK = "M-1,1L0,-1M0,1L1,-1"
CROSS = "M-1,-1L1,1M-1,1L1,-1"


@dataclass(frozen=True)
class Line:
    """One contender's result in its line of the chart; `printed` is the number beside it, without its unit."""

    named: Named
    result: Result
    printed: str


def has_value(result: Result) -> bool:
    """Whether there is a number that stands for the result (not a bound, not nothing)."""
    e = result.estimate
    return e is not None and e.limit is None and known(e.value)


def intervals(sheet: Plate, lines: Sequence[Line]) -> list[Layer]:
    """A bar where scatter is in the interval, a thin line where only the instrument is; the value upright in it."""
    layers: list[Layer] = []
    for pale, mark in ((False, ""), (True, "-unranked")):
        bars: list[Row] = []
        thin: list[Row] = []
        ends: list[Row] = []
        values: list[Row] = []
        for line in lines:
            r, y, colour = line.result, line.named.y, line.named.mark.ink
            if line.named.pale != pale or not has_value(r) or r.estimate is None:
                continue
            if known(r.low) and known(r.high):
                if r.covers == "instrument and scatter":
                    bars.append({"x": r.low, "x2": r.high, "y": y - _BAR / 2, "y2": y + _BAR / 2, "fill": colour})
                else:
                    thin.append({"x": r.low, "x2": r.high, "y": y, "stroke": colour})
                    ends += [{"x": end, "y": y - 3.5, "y2": y + 3.5, "stroke": colour} for end in (r.low, r.high)]
            values.append({"x": r.estimate.value, "y": y - _VALUE / 2, "y2": y + _VALUE / 2, "stroke": colour})
        strong = 0.6 if pale else 1.0
        layers += [
            ink.boxes(sheet, f"intervals{mark}", bars, opacity=ink.PALE * strong),
            ink.rules(sheet, f"intervals-instrument{mark}", thin, x2="x2", width=1.5, opacity=strong),
            ink.rules(sheet, f"interval-ends{mark}", ends, y2="y2", width=1.5, opacity=strong),
            ink.rules(sheet, f"values{mark}", values, y2="y2", width=3, opacity=strong),
        ]
    return layers


def passes(sheet: Plate, lines: Sequence[Line]) -> list[Layer]:
    """Every pass that has a number, under its value; equal ones one below the other. One reading is its own line."""
    kept: list[Row] = []
    left_out: list[Row] = []
    beyond: dict[str, list[Row]] = {"above": [], "below": []}
    for line in lines:
        if len(line.result.by_pass) < 2:
            continue
        placed: list[tuple[float, int]] = []
        for p in line.result.by_pass:
            if not known(p.value):
                continue
            value = min(max(p.value, sheet.x.low), sheet.x.high)  # a far limit's mark stands at the edge
            at = sheet.x.at(value, sheet.width)
            taken = {level for x, level in placed if abs(x - at) < _DOT}
            level = next(n for n in range(len(placed) + 1) if n not in taken)
            placed.append((at, level))
            row: Row = {"x": value, "y": line.named.y + _PASSES + min(level, 2) * _DOT}
            (left_out if p.excluded else beyond[p.limit] if p.limit else kept).append(row)
    return [
        ink.points(sheet, "passes", kept, shape="circle", size=15, ink=ink.INK, opacity=0.8),
        ink.points(sheet, "passes-left-out", left_out, shape=CROSS, size=26, ink=ink.INK, hollow=True),
        ink.points(sheet, "passes-above", beyond["above"], shape="triangle-right", size=18, ink=ink.INK, opacity=0.8),
        ink.points(sheet, "passes-below", beyond["below"], shape="triangle-left", size=18, ink=ink.INK, opacity=0.8),
    ]


def limits(sheet: Plate, lines: Sequence[Line]) -> list[Layer]:
    """An open end from where the meter stopped to the edge of the field, and in words what is known."""
    arrows: list[Row] = []
    heads: dict[str, list[Row]] = {"above": [], "below": []}
    told: dict[str, list[Row]] = {"above": [], "below": []}
    nothing: list[Row] = []
    stops: list[Row] = []
    breaks: list[Row] = []
    least = 24 / sheet.width * (sheet.x.high - sheet.x.low)  # an arrow shorter than that is no arrow
    for line in lines:
        e, y, colour = line.result.estimate, line.named.y, line.named.mark.ink
        if e is None or (e.limit is None and not known(e.value)):
            nothing.append({"y": y, "text": line.result.missing or words("not read")})
        elif e.limit is not None:
            edge, inward = (sheet.x.high, -1) if e.limit == "above" else (sheet.x.low, 1)
            placed = known(e.value) and sheet.x.holds(e.value)
            start = e.value if known(e.value) and placed else edge + inward * least
            arrows.append({"x": start, "x2": edge, "y": y, "stroke": colour})
            if placed:
                stops.append({"x": start, "y": y - _VALUE / 2, "y2": y + _VALUE / 2, "stroke": colour})
            elif known(e.value):
                breaks.append({"x": start, "y": y, "stroke": colour})
            heads[e.limit].append({"y": y, "fill": colour})
            told[e.limit].append({"y": y + 15, "text": interval.bound(e.value, e.unit, e.limit)})
    return [
        ink.rules(sheet, "limits", arrows, x2="x2", width=2),
        ink.rules(sheet, "limit-stops", stops, y2="y2", width=2),
        ink.points(sheet, "limit-breaks", breaks, shape=BREAK, size=60, hollow=True, stroke=1.5),
        ink.points(sheet, "limits-above", heads["above"], x=sheet.width - 1.0, shape="triangle-right", size=64),
        ink.points(sheet, "limits-below", heads["below"], x=1.0, shape="triangle-left", size=64),
        ink.text(sheet, "limits-above-said", told["above"], sheet.width + 3, align="right", size=ink.SMALL),
        ink.text(sheet, "limits-below-said", told["below"], -3.0, size=ink.SMALL),
        ink.text(sheet, "not-read", nothing, sheet.width / 2, align="center", size=ink.SMALL, opacity=ink.LIGHT),
    ]
