"""What stands on the lines of traces: limits and when they were passed, ends of scales, lone samples, what happened."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from reportgen.charts import plate as ink
from reportgen.charts.letters import px_of
from reportgen.charts.plate import Layer, Row
from reportgen.charts.spread import Box, Spot, freest
from reportgen.charts.traces_sheet import HEIGHT, Line, Sheet
from reportgen.charts.words import words
from reportgen.evaluation.evaluated import Crossing
from reportgen.wording import number
from reportgen.wording.count import whole
from reportgen.wording.unit import joined


def marked(sheet: Sheet, lines: Sequence[Line]) -> list[Layer]:
    """All of it, in the order in which it is drawn."""
    return [*_limits(sheet, lines), *_levels(sheet, lines), *_marks(sheet, lines)]


def _limits(sheet: Sheet, lines: Sequence[Line]) -> list[Layer]:
    """Limits as dashed lines with their value: one that all share across the field, a trace's own up to its passing."""
    passed = [(line, c) for line in lines for c in line.shown.crossings]
    levels = sorted({c.level for _, c in passed})
    if not levels:
        return []
    plate = sheet.plate
    shared: list[Row] = [{"y": level} for level in levels if _is_shared(level, passed, lines)]
    own: list[Row] = [
        {"x": 0.0, "x2": c.at / sheet.second, "y": c.level, "stroke": line.mark.ink, **line.whose}
        for line, c in passed if not _is_shared(c.level, passed, lines)
    ]  # fmt: skip
    return [
        ink.rules(plate, "limits", shared, x=0.0, x2=plate.width, ink=ink.INK, width=0.9, dash=(4, 3), opacity=0.75),
        ink.rules(plate, "limits-own", own, x2="x2", width=0.9, dash=(4, 3)),
    ]


def _is_shared(level: float, passed: Sequence[tuple[Line, Crossing]], lines: Sequence[Line]) -> bool:
    having = {line.name for line, c in passed if c.level == level}
    return len(having) > 1 or len(lines) == 1


def _levels(sheet: Sheet, lines: Sequence[Line]) -> list[Layer]:
    """The limits' values, where they cover least: one by one where there is room between them, else as a range."""
    levels = sorted({c.level for line in lines for c in line.shown.crossings})
    if not levels:
        return []
    spots = [sheet.spot(c.at, c.level) for line in lines for c in line.shown.crossings if not c.past]
    drawn = [*_drawn(sheet, lines), *([spot] for spot in spots)]
    heights = [sheet.spot(0.0, level)[1] for level in levels]
    unit = lines[0].shown.unit
    if any(a - b < 14 for a, b in pairwise(heights)):
        span = words("trace.to", low=number.plain(levels[0]), high=number.plain(levels[-1]))
        texts = [(joined(span, unit), heights[0], heights[-1])]
    else:
        texts = [(joined(number.plain(v), unit), y, y) for v, y in zip(levels, heights, strict=True)]
    layers: list[Layer] = []
    for n, (text, low, high) in enumerate(texts):
        said = words("trace.limit", level=text)
        wide = px_of(said, ink.SMALL)
        ways = [x for part in (1.0, 0.0, 0.5, 0.75, 0.25) if (x := part * (sheet.plate.width - wide)) >= 0] or [0.0]
        box = freest([Box(x, y, wide) for x in ways for y in (high - 8, low + 9)], drawn)
        layers.append(ink.text(sheet.plate, f"level-{n}", [{"text": said}], box.x, box.y, size=ink.SMALL))
    return layers


def _marks(sheet: Sheet, lines: Sequence[Line]) -> list[Layer]:
    """Where limits were passed, with a hair line down to the time; ends of a scale; what happened, with its number."""
    passed: list[Row] = []
    tops: list[Row] = []
    floors: list[Row] = []
    incidents: list[Row] = []
    alone: list[Row] = []
    for line in lines:
        passed += [
            {"x": c.at / sheet.second, "y": c.level, "shape": line.mark.shape, "stroke": line.mark.ink, **line.whose}
            for c in line.shown.crossings if not c.past
        ]  # fmt: skip
        alone += [{"x": at / sheet.second, "y": y, **line.whose} for at, y, _ in line.shown.apart]
        top = max((p for s in line.shown.stretches for p in s), key=lambda p: p[1], default=None)
        tops += [{"x": top[0] / sheet.second, "y": top[1], **line.whose}] if line.shown.over and top else []
        low = min((p for s in line.shown.stretches for p in s), key=lambda p: p[1], default=None)
        floors += [{"x": low[0] / sheet.second, "y": low[1], **line.whose}] if line.shown.under and low else []
        incidents += [
            {"x": at / sheet.second, "text": words("trace.incident", name=line.name, n=whole(n)), **line.whose}
            for at, n in line.happened
        ]
    plate = sheet.plate
    return [
        ink.rules(plate, "drops", passed, y2=HEIGHT, width=0.8, opacity=0.6),
        ink.points(plate, "passed", passed, shape="", size=80, hollow=True, stroke=1.8),
        ink.points(plate, "apart", alone, shape="circle", size=190, hollow=True, stroke=0.9, ink=ink.INK),
        ink.points(plate, "scale-ends", tops, shape="triangle-up", size=60, ink=ink.INK),
        ink.points(plate, "scale-floors", floors, shape="triangle-down", size=60, ink=ink.INK),
        ink.rules(plate, "incidents", incidents, y=0.0, y2=HEIGHT, width=0.8, opacity=0.5, dash=(2, 2), ink=ink.INK),
        ink.text(plate, "incident-names", incidents, "x", -5.0, align="center", size=ink.SMALL),
    ]  # fmt: skip


def _drawn(sheet: Sheet, lines: Sequence[Line]) -> list[list[Spot]]:
    """The lines, in px."""
    return [[sheet.spot(x, y) for x, y in s] for line in lines for s in line.shown.stretches]
