"""The drawing of one channel's traces: lines with their letters at the end, limits with their value, gaps as gaps."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from reportgen.campaign.declared import Campaign
from reportgen.charts import plate as ink
from reportgen.charts.convert import draw
from reportgen.charts.figure import Drawing
from reportgen.charts.plate import Layer, Plate, Row
from reportgen.charts.scale import Axis, axis
from reportgen.charts.side import fitting, lines_of
from reportgen.charts.spread import Box, Spot, freest, spread
from reportgen.charts.words import words
from reportgen.charts.zoomed import Closer, doublings
from reportgen.evaluation.evaluated import TraceShown
from reportgen.marks import ContenderMark, mark_of
from reportgen.wording import number
from reportgen.wording.count import whole
from reportgen.wording.traces import time_of, unit_of_times
from reportgen.wording.unit import joined, spelled

HEIGHT, _ROW = 200.0, 17.0
LABELS = 14  # at the ends of lines; more would only hide them
GAPS = 12  # of one trace that get strokes of their own
Happened = tuple[tuple[float, int], ...]  # seconds, number of the caveat


@dataclass(frozen=True)
class Line:
    """One trace of the contender at `index`. `name` stands at its end: A, or A2 where there are several passes; `who`
    is the same in words."""

    shown: TraceShown
    index: int
    name: str
    who: str
    happened: Happened = ()

    @property
    def mark(self) -> ContenderMark:
        return mark_of(self.index)

    @property
    def whose(self) -> Row:
        """Of a mark along this trace: whose it is."""
        return {"of": self.index}

    def met(self, seconds: float, value: float) -> str:
        """A sample in words."""
        said = joined(number.plain(value), self.shown.unit)
        return words("met.sample", name=self.who, at=time_of(seconds), said=said)


@dataclass(frozen=True)
class _Sheet:
    """The plate, and the size of its unit of time in s."""

    plate: Plate
    up: Axis
    second: float

    def spot(self, seconds: float, value: float) -> Spot:
        across, up = self.plate.x, self.up
        return across.at(seconds / self.second, self.plate.width), HEIGHT - up.at(value, HEIGHT)


def drawing(campaign: Campaign, lines: Sequence[Line], alt: str) -> Drawing:
    """The drawing, with `alt` for whoever doesn't see it."""
    longest = max(line.shown.ends for line in lines)
    unit, second = unit_of_times(longest)
    up = axis(_values(lines), at_most=5)
    across = axis([0.0, longest / second], from_zero=True, at_most=6, margin=0.0)
    widest = max((len(number.fixed(t, up.decimals)) for t in up.ticks), default=1)
    people = list({line.shown.key.contender: line.index for line in lines}.items())
    head = 32 + _ROW * ((len(people) + 1) // 2)
    plate = Plate(14 + 7 * widest, 16 + _room(lines), head, 42, HEIGHT, across, up)
    sheet = _Sheet(plate, up, second)
    layers = [*_axes(plate, up, unit, lines[0].shown.unit), *_legend(plate, campaign, people, head)]
    for n, line in enumerate(lines):
        layers += _line(sheet, n, line)
    layers += [*_limits(sheet, lines), *_marks(sheet, lines), *_ends(sheet, lines)]
    longest_line = [sum(len(stretch) for stretch in line.shown.stretches) for line in lines]
    return draw(plate, layers, "traces", alt, Closer(across, unit, doublings(longest_line)))


def _values(lines: Sequence[Line]) -> list[float]:
    drawn = [y for line in lines for stretch in line.shown.stretches for _, y in stretch]
    return [*drawn, *(c.level for line in lines for c in line.shown.crossings)]


def _room(lines: Sequence[Line]) -> float:
    """Px for marks and letters to the right of the field."""
    return 13 + 7.5 * max(len(line.name) for line in lines) if len(lines) <= LABELS else 0.0


def _axes(plate: Plate, up: Axis, unit: str, unit_up: str) -> list[Layer]:
    steps: list[Row] = [{"y": t, "text": number.fixed(t, up.decimals)} for t in up.ticks]
    ticks = fitting(plate.x, plate.width)
    times: list[Row] = [{"x": t, "text": number.fixed(t, plate.x.decimals)} for t in ticks]
    above: list[Row] = [{"text": spelled(unit_up)}] if unit_up else []
    return [
        ink.rules(plate, "grid", steps, x=0.0, x2=plate.width, y="y", opacity=ink.GRID, ink=ink.INK),
        ink.rules(plate, "base", [{}], x=0.0, x2=plate.width, y=HEIGHT, ink=ink.INK, opacity=0.5),
        ink.rules(plate, "notches", times, y=HEIGHT, y2=HEIGHT + 4, ink=ink.INK, opacity=0.5),
        ink.text(plate, "steps", steps, -7.0, align="right", size=ink.SMALL),
        ink.text(plate, "ticks", times, "x", HEIGHT + 13, align="center", size=ink.SMALL),
        ink.text(plate, "unit", [{"text": words("trace.time", unit=unit)}], plate.width, HEIGHT + 31,
                 align="right", size=ink.SMALL),
        ink.text(plate, "what", above, -7.0, -16.0, align="right", size=ink.SMALL),
    ]  # fmt: skip


def _legend(plate: Plate, campaign: Campaign, people: Sequence[tuple[str, int]], head: float) -> list[Layer]:
    """Every contender's mark, letter and name over the field, two in a row."""
    layers: list[Layer] = []
    wide = (ink.WIDE - 12) / 2
    for n, (who, index) in enumerate(people):
        mark = mark_of(index)
        x, y = n % 2 * wide - plate.left + 8, 9 - head + n // 2 * _ROW
        text = f"{mark.letter} {lines_of(campaign.contender(who).title, 20, 1)[0]}"
        layers += [
            ink.points(plate, f"marks-{n}", [{"shape": mark.shape, "fill": mark.ink, "of": index}], x=x, y=y, size=60),
            ink.text(plate, f"names-{n}", [{"text": text, "of": index}], x + 10, y, size=ink.SMALL + 1),
        ]
    return layers


def _line(sheet: _Sheet, n: int, line: Line) -> list[Layer]:
    """A trace, broken where nothing was logged: there a dotted line leads on between two upright strokes."""
    rows: list[Row] = []
    alone: list[Row] = []
    whose: Row = {**line.whose, "walk": n}
    before = 0.0
    for stretch in line.shown.stretches:
        if rows:
            rows.append({"x": (before + stretch[0][0]) / 2 / sheet.second, "y": None, **whose})
        before = stretch[-1][0]
        rows += [{"x": x / sheet.second, "y": y, "said": line.met(x, y), **whose} for x, y in stretch]
        alone += [{"x": x / sheet.second, "y": y, **whose} for x, y in stretch] if len(stretch) == 1 else []
    colour, bridges = line.mark.ink, _bridges(line.shown)
    half = 5 * (sheet.up.high - sheet.up.low) / HEIGHT
    strokes: list[Row] = [
        {"x": x / sheet.second, "y": y - half, "y2": y + half, **whose} for pair in bridges for x, y in pair
    ]  # fmt: skip
    return [
        ink.lines(sheet.plate, f"trace-{n}", rows, ink=colour, width=1.5),
        ink.points(sheet.plate, f"alone-{n}", alone, shape="circle", size=5, ink=colour),
        *(
            ink.lines(sheet.plate, f"gap-{n}-{m}", [{"x": x / sheet.second, "y": y, **whose} for x, y in pair],
                      ink=colour, width=1, dash=(1, 3))
            for m, pair in enumerate(bridges)
        ),
        ink.rules(sheet.plate, f"strokes-{n}", strokes, y2="y2", ink=colour, width=1.2),
    ]  # fmt: skip


def _bridges(shown: TraceShown) -> list[tuple[Spot, Spot]]:
    """From the last sample before each gap to the first behind it, in s and the trace's unit; none where there are too
    many to tell apart."""
    pairs = list(pairwise(shown.stretches))
    return [(before[-1], after[0]) for before, after in pairs] if len(pairs) <= GAPS else []


def _limits(sheet: _Sheet, lines: Sequence[Line]) -> list[Layer]:
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
        *_levels(sheet, lines, levels),
    ]


def _is_shared(level: float, passed: Sequence[tuple[Line, object]], lines: Sequence[Line]) -> bool:
    having = {line.name for line, c in passed if getattr(c, "level", None) == level}
    return len(having) > 1 or len(lines) == 1


def _levels(sheet: _Sheet, lines: Sequence[Line], levels: Sequence[float]) -> list[Layer]:
    """The limits' values, where they cover least: one by one where there is room between them, else as a range."""
    drawn = [[sheet.spot(x, y) for x, y in s] for line in lines for s in line.shown.stretches]
    marks = [[sheet.spot(c.at, c.level)] for line in lines for c in line.shown.crossings if not c.past]
    heights = [sheet.spot(0.0, level)[1] for level in levels]
    unit = lines[0].shown.unit
    if any(a - b < 14 for a, b in pairwise(heights)):
        span = words("trace.to", low=number.plain(levels[0]), high=number.plain(levels[-1]))
        texts = [(joined(span, unit), heights[0], heights[-1])]
    else:
        texts = [(joined(number.plain(v), unit), y, y) for v, y in zip(levels, heights, strict=True)]
    layers = []
    for n, (text, low, high) in enumerate(texts):
        said = words("trace.limit", level=text)
        wide = 6.2 * len(said)
        ways = [x for part in (1.0, 0.0, 0.5, 0.75, 0.25) if (x := part * (sheet.plate.width - wide)) >= 0] or [0.0]
        box = freest([Box(x, y, wide) for x in ways for y in (high - 8, low + 9)], [*drawn, *marks])
        layers.append(ink.text(sheet.plate, f"level-{n}", [{"text": said}], box.x, box.y, size=ink.SMALL))
    return layers


def _marks(sheet: _Sheet, lines: Sequence[Line]) -> list[Layer]:
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


def _ends(sheet: _Sheet, lines: Sequence[Line]) -> list[Layer]:
    """Mark and letter where each line ends, moved apart."""
    ended = [line for line in lines if line.shown.stretches]
    if len(ended) > LABELS:
        return []
    spots = [sheet.spot(*line.shown.stretches[-1][-1]) for line in ended]
    heights = spread(spots, HEIGHT - 7)
    layers: list[Layer] = []
    for n, (line, (x, _), y) in enumerate(zip(ended, spots, heights, strict=True)):
        mark: Row = {"shape": line.mark.shape, "fill": line.mark.ink, **line.whose}
        name: Row = {"text": line.name, **line.whose}
        layers += [
            ink.points(sheet.plate, f"end-marks-{n}", [mark], x=x + 7, y=y, size=34),
            ink.text(sheet.plate, f"end-names-{n}", [name], x + 13, y, size=ink.SMALL, weight=700),
        ]
    return layers
