"""One quantity as several campaigns measured it by one version of a method: a group of lines each, one axis for all.

Nothing here says who is ahead: what days and instruments differ by is not in these lines. All are in ink, since a
contender's colour is its own in its campaign alone.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from reportgen.charts import plate as ink
from reportgen.charts.convert import draw
from reportgen.charts.figure import Figure
from reportgen.charts.letters import characters
from reportgen.charts.plate import Layer, Plate, Row
from reportgen.charts.scale import Axis, axis, known
from reportgen.charts.side import NAMES, foot, lines_of, room_for, x_axis
from reportgen.charts.telling import alternative
from reportgen.charts.words import sentence, words
from reportgen.judgement.measured import Limit
from reportgen.wording.language import spoken
from reportgen.wording.listing import with_aside

_PITCH, _HEAD, _GAP = 34.0, 15.0, 12.0  # px from line to line, for a line of a group's heading, above and below it
_BAR, _VALUE = 10.0, 18.0  # heights of range and value line, px
_FITS = 44  # letters of a group's heading


@dataclass(frozen=True)
class AcrossLine:
    """One result, its numbers in the chart's unit. `limit`: `value` is a bound, and `whole` says so in words."""

    name: str
    value: float | None
    low: float | None
    high: float | None
    limit: Limit | None
    of_scatter: bool
    bare: str
    whole: str


@dataclass(frozen=True)
class AcrossGroup:
    """The results of one campaign, in the order of its places; `title` says which campaign, and when it was."""

    title: str
    lines: tuple[AcrossLine, ...]


@dataclass(frozen=True)
class Across:
    """What the chart is drawn from."""

    address: str
    title: str
    unit: str
    better: str
    groups: tuple[AcrossGroup, ...]


def figure(of: Across) -> Figure:
    """The chart; at least one line has a number."""
    told = [(with_aside(line.name, group.title), line.whole) for group in of.groups for line in group.lines]
    alt = alternative(of.title, "", told)
    return Figure(of.address, _svg(of, alt), alt, of.title, "", (), (), _key(of))


def _svg(of: Across, alt: str) -> str:
    placed = list(_placed(of))
    lines = [(line, y) for line, y in placed if isinstance(line, AcrossLine)]
    last = lines[-1][1]
    numbers = room_for([line.bare for line, _ in lines])
    sheet = Plate(NAMES, max(numbers + 5, 16), 8, foot(of.unit, of.better), last + 24, _axis([n for n, _ in lines]))
    heads: list[Row] = [{"y": y, "text": text} for text, y in placed if isinstance(text, str)]
    names: list[Row] = []
    for line, y in lines:
        told = lines_of(line.name, 15)
        names += [{"y": y + (n - (len(told) - 1) / 2) * 14, "text": text} for n, text in enumerate(told)]
    layers = [
        *x_axis(sheet, of.unit, of.better),
        ink.text(sheet, "groups", heads, -NAMES, size=ink.FIGURE, weight=700),
        ink.text(sheet, "names", names, -NAMES + 10, size=ink.NAME),
        *_ranges(sheet, lines),
        *_bounds(sheet, lines),
        *_figures(sheet, lines, sheet.width + numbers),
    ]
    return draw(sheet, layers, "across", alt).svg


def _placed(of: Across) -> Iterator[tuple[str | AcrossLine, float]]:
    """Headings and lines with the middle of each, from the top."""
    y = 0.0
    for group in of.groups:
        y += _GAP
        for text in lines_of(group.title, _FITS):
            yield text, y
            y += _HEAD
        for line in group.lines:
            yield line, y + _PITCH / 2
            y += _PITCH


def _axis(lines: Sequence[AcrossLine]) -> Axis:
    """Holds every value, range and bound, with room for an arrow beyond a bound; below a bound no more than to zero."""
    shown = [v for line in lines for v in (line.value, line.low, line.high) if known(v)]
    room = 0.2 * (max(shown) - min(shown)) if shown else 0.0
    bounds = [(line.limit, line.value) for line in lines if line.limit and known(line.value)]
    shown += [v + room if limit == "above" else max(v - room, min(v, 0.0)) for limit, v in bounds]
    return axis(shown)


Lines = Sequence[tuple[AcrossLine, float]]


def _ranges(sheet: Plate, lines: Lines) -> list[Layer]:
    bars: list[Row] = []
    thin: list[Row] = []
    values: list[Row] = []
    for line, y in lines:
        if line.limit or not known(line.value):
            continue
        if known(line.low) and known(line.high):
            if line.of_scatter:
                bars.append({"x": line.low, "x2": line.high, "y": y - _BAR / 2, "y2": y + _BAR / 2})
            else:
                thin.append({"x": line.low, "x2": line.high, "y": y})
        values.append({"x": line.value, "y": y - _VALUE / 2, "y2": y + _VALUE / 2})
    return [
        ink.boxes(sheet, "intervals", bars, ink=ink.INK, opacity=ink.GRID * 1.6),
        ink.rules(sheet, "intervals-instrument", thin, x2="x2", width=1.5, ink=ink.INK),
        ink.rules(sheet, "values", values, y2="y2", width=3, ink=ink.INK),
    ]


def _bounds(sheet: Plate, lines: Lines) -> list[Layer]:
    """An arrow from a bound to the edge it points at, and under it in words what is known."""
    arrows: list[Row] = []
    heads: dict[str, list[Row]] = {"above": [], "below": []}
    under: dict[str, list[Row]] = {"above": [], "below": []}
    for line, y in lines:
        if not line.limit or not known(line.value):
            continue
        arrows.append({"x": line.value, "x2": sheet.x.high if line.limit == "above" else sheet.x.low, "y": y})
        heads[line.limit].append({"y": y})
        under[line.limit].append({"y": y + 14, "text": line.whole})
    return [
        ink.rules(sheet, "limits", arrows, x2="x2", width=2, ink=ink.INK),
        ink.points(
            sheet, "limits-above", heads["above"], x=sheet.width - 1, shape="triangle-right", size=64, ink=ink.INK
        ),
        ink.points(sheet, "limits-below", heads["below"], x=1.0, shape="triangle-left", size=64, ink=ink.INK),
        ink.text(sheet, "limits-above-said", under["above"], sheet.width, align="right", size=ink.SMALL),
        ink.text(sheet, "limits-below-said", under["below"], 0.0, size=ink.SMALL),
    ]


def _figures(sheet: Plate, lines: Lines, right: float) -> list[Layer]:
    """The values beside the lines, decimal sign under decimal sign."""
    sign = spoken().decimal_sign
    told = [(line.bare.partition(sign), y) for line, y in lines if line.bare]
    after = max((characters(decimals) for (_, _, decimals), _ in told), default=0)
    at = right - (after * ink.DIGIT + 4 if after else 0)
    whole: list[Row] = [{"y": y, "text": before} for (before, _, _), y in told]
    part: list[Row] = [{"y": y, "text": sign + decimals} for (_, found, decimals), y in told if found]
    return [
        ink.text(sheet, "figures", whole, at, align="right"),
        ink.text(sheet, "figures-decimals", part, at),
    ]


def _key(of: Across) -> str:
    """How to read the marks that this chart really holds."""
    lines = [line for group in of.groups for line in group.lines]
    ranged = [line for line in lines if not line.limit and known(line.low)]
    return sentence([
        words("across.key.value"),
        words("across.key.bar") if any(line.of_scatter for line in ranged) else "",
        words("key.thin") if any(not line.of_scatter for line in ranged) else "",
        words("key.arrow") if any(line.limit for line in lines) else "",
    ])  # fmt: skip
