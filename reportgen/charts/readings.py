"""The marks of one measured result: its interval, its value, its passes."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from reportgen.charts import plate as ink
from reportgen.charts import said
from reportgen.charts.plate import Layer, Plate, Row
from reportgen.charts.scale import known
from reportgen.charts.side import Named
from reportgen.evaluation.evaluated import Result

_BAR, VALUE = 10.0, 18.0  # heights of interval and value line, px
_PASSES = 13.0  # px from the value's line down to the passes
_DOT = 4.2  # px between two passes that would touch
_EDGE = 5.0  # px from the edge of the field
CROSS = "M-1,-1L1,1M-1,1L1,-1"


@dataclass(frozen=True)
class Line:
    """One contender's result in line `place` of the chart; `printed` is the number beside it, without its unit."""

    named: Named
    result: Result
    printed: str
    place: int = 0

    @property
    def whose(self) -> Row:
        """Of a mark in this line: whose it is, and that it is met here."""
        return {"of": self.named.index, "walk": self.place}

    @property
    def told(self) -> Row:
        """The same for the mark that stands for the result, which says its value."""
        return {**self.whose, "said": said.of_result(self.named.contender, self.result)}


def in_lines(named: Sequence[Named], results: Sequence[Result], printed: Callable[[Result], str]) -> list[Line]:
    """The lines of a chart, `results` in their order."""
    return [Line(n, r, printed(r), at) for at, (n, r) in enumerate(zip(named, results, strict=True))]


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
                    tall = {"y": y - _BAR / 2, "y2": y + _BAR / 2, "fill": colour, **line.whose}
                    bars.append({"x": r.low, "x2": r.high, **tall})
                else:
                    thin.append({"x": r.low, "x2": r.high, "y": y, "stroke": colour, **line.whose})
                    cut = {"y": y - 3.5, "y2": y + 3.5, "stroke": colour, **line.whose}
                    ends += [{"x": end, **cut} for end in (r.low, r.high)]
            upright = {"y": y - VALUE / 2, "y2": y + VALUE / 2, "stroke": colour}
            values.append({"x": r.estimate.value, **upright, **line.told})
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
        for turn, p in enumerate(line.result.by_pass, start=1):
            if not known(p.value):
                continue
            edge = _EDGE / sheet.width * (sheet.x.high - sheet.x.low)
            inside = min(max(p.value, sheet.x.low + edge), sheet.x.high - edge)
            value = p.value if sheet.x.holds(p.value) else inside  # a far limit's mark stands whole at the edge
            at = sheet.x.at(value, sheet.width)
            taken = {level for x, level in placed if abs(x - at) < _DOT}
            level = next(n for n in range(len(placed) + 1) if n not in taken)
            placed.append((at, level))
            row: Row = {"x": value, "y": line.named.y + _PASSES + min(level, 2) * _DOT, **line.whose}
            row |= {"said": said.of_pass(line.named.contender, line.result, p), "turn": turn}
            (left_out if p.excluded else beyond[p.limit] if p.limit else kept).append(row)
    return [
        ink.points(sheet, "passes", kept, shape="circle", size=15, ink=ink.INK, opacity=0.8),
        ink.points(sheet, "passes-left-out", left_out, shape=CROSS, size=26, ink=ink.INK, hollow=True),
        ink.points(sheet, "passes-above", beyond["above"], shape="triangle-right", size=18, ink=ink.INK, opacity=0.8),
        ink.points(sheet, "passes-below", beyond["below"], shape="triangle-left", size=18, ink=ink.INK, opacity=0.8),
    ]
