"""The drawing of one channel's traces: lines with their letters at the end, limits with their value, gaps as gaps."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

from reportgen.campaign.declared import Campaign
from reportgen.charts import plate as ink
from reportgen.charts.convert import draw
from reportgen.charts.figure import Drawing
from reportgen.charts.letters import characters
from reportgen.charts.plate import Layer, Plate, Row
from reportgen.charts.scale import Axis, axis
from reportgen.charts.side import fitting, lines_of
from reportgen.charts.spread import Spot, spread
from reportgen.charts.traces_marked import marked
from reportgen.charts.traces_sheet import HEIGHT, Line, Sheet
from reportgen.charts.words import words
from reportgen.charts.zoomed import Closer, doublings
from reportgen.evaluation.evaluated import TraceShown
from reportgen.marks import mark_of
from reportgen.wording import number
from reportgen.wording.traces import unit_of_times
from reportgen.wording.unit import spelled

_ROW = 17.0
LABELS = 14  # at the ends of lines; more would only hide them
TIMES = 8  # of passing a limit that are written beside names
GAPS = 12  # of one trace that get strokes of their own


def drawing(campaign: Campaign, lines: Sequence[Line], alt: str) -> Drawing:
    """The drawing, with `alt` for whoever doesn't see it."""
    longest = max(line.shown.ends for line in lines)
    unit, second = unit_of_times(longest)
    up = axis(_values(lines), at_most=5)
    across = axis([0.0, longest / second], from_zero=True, at_most=6, margin=0.0)
    widest = max((characters(number.fixed(t, up.decimals)) for t in up.ticks), default=1)
    people = list({line.shown.key.contender: line.index for line in lines}.items())
    when = times_of(lines)
    head = 32 + _ROW * (len(people) if when else (len(people) + 1) // 2)
    plate = Plate(14 + 7 * widest, 16 + _room(lines), head, 42, HEIGHT, across, up)
    sheet = Sheet(plate, up, second)
    layers = [*_axes(plate, up, unit, lines[0].shown.unit), *_legend(plate, campaign, people, when, head)]
    for n, line in enumerate(lines):
        layers += _line(sheet, n, line)
    layers += [*marked(sheet, lines), *_ends(sheet, lines)]
    longest_line = [sum(len(stretch) for stretch in line.shown.stretches) for line in lines]
    return draw(plate, layers, "traces", alt, Closer(across, unit, doublings(longest_line)))


def _values(lines: Sequence[Line]) -> list[float]:
    drawn = [y for line in lines for stretch in line.shown.stretches for _, y in stretch]
    return [*drawn, *(c.level for line in lines for c in line.shown.crossings)]


def _room(lines: Sequence[Line]) -> float:
    """Px for marks and letters to the right of the field."""
    return 13 + 7.5 * max(characters(line.name) for line in lines) if len(lines) <= LABELS else 0.0


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


def times_of(lines: Sequence[Line]) -> Mapping[int, str]:
    """When each contender passed its limit, by its place in the campaign's order; nothing where there are many
    of them, or where one passed several, so that a time beside its name would not say which."""
    passed = [(line.index, at) for line in lines for at in line.passed]
    one_each = len({index for index, _ in passed}) == len(passed) and len({line.index for line in lines}) == len(lines)
    return dict(passed) if one_each and len(lines) <= TIMES else {}


def _legend(
    plate: Plate, campaign: Campaign, people: Sequence[tuple[str, int]], when: Mapping[int, str], head: float
) -> list[Layer]:
    """Every contender's mark, letter and name over the field, two in a row; one, where the time follows of a limit."""
    layers: list[Layer] = []
    columns = 1 if when else 2
    wide = (ink.WIDE - 12) / columns
    for n, (who, index) in enumerate(people):
        mark = mark_of(index)
        x, y = n % columns * wide - plate.left + 8, 9 - head + n // columns * _ROW
        text = f"{mark.letter} {lines_of(campaign.contender(who).title, 20, 1)[0]}"
        text = words("trace.passed-at", name=text, at=when[index]) if index in when else text
        layers += [
            ink.points(plate, f"marks-{n}", [{"shape": mark.shape, "fill": mark.ink, "of": index}], x=x, y=y, size=60),
            ink.text(plate, f"names-{n}", [{"text": text, "of": index}], x + 10, y, size=ink.SMALL + 1),
        ]
    return layers


def _line(sheet: Sheet, n: int, line: Line) -> list[Layer]:
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


def _ends(sheet: Sheet, lines: Sequence[Line]) -> list[Layer]:
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
