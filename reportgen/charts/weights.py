"""Who leads at which weights: every weighting that was tried is one mark, the contender's own.

Filled where the lead is firm, open where it isn't, a dot where nobody is ahead: told by shape as well as by colour.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reportgen.campaign.declared import Campaign
from reportgen.charts import plate as ink
from reportgen.charts.convert import draw
from reportgen.charts.figure import Drawing
from reportgen.charts.layer import Layer, layer
from reportgen.charts.plate import Plate, Row
from reportgen.charts.scale import Axis
from reportgen.charts.side import lines_of
from reportgen.charts.weight_space import ACROSS, HIGH, LINE, MOST, SIDE, TOP, corners, drawn, place
from reportgen.charts.words import words
from reportgen.judgement.verdict.overall import Cell, Overall, WeightMap
from reportgen.marks import ContenderMark, mark_of
from reportgen.prose.leads import strength
from reportgen.prose.weights import group_titles

PAPER = "var(--paper, #fdfdfb)"
_LINE_OF_NAMES = 17.0  # px
_DISC = 330.0  # area of a reader's disc


@dataclass(frozen=True)
class Wish:
    """A weighting that has a name: `sign` is what stands in its disc."""

    sign: str
    weights: tuple[float, ...]


def drawing(campaign: Campaign, overall: Overall, of: WeightMap, wishes: Sequence[Wish], alt: str) -> Drawing:
    """The drawing, for two or three groups."""
    three = len(of.groups) == 3
    leaders = [c.id for c in campaign.contenders if any(_seen(cell, c.id) for cell in of.cells)]
    marks = {c.id: mark_of(n) for n, c in enumerate(campaign.contenders)}
    high = TOP + HIGH + 34 if three else LINE + 78
    width = 2 * SIDE + ACROSS
    sheet = Plate(0, 0, 0, 0, high, Axis(0.0, width, (), 0), Axis(-high, 0.0, (), 0))
    size = (0.62 * ACROSS / min(of.steps, MOST)) ** 2
    shown = [cell for cell in of.cells if drawn(cell.weights, of.steps)]
    names = _names(campaign, marks, leaders, 30.0 if three else 8.0)
    layers = [
        *_frame(sheet, of),
        ink.points(sheet, "firm", _rows(shown, marks, ("firm",)), size=size),
        ink.points(sheet, "open", _rows(shown, marks, _OPEN), size=0.8 * size, hollow=True, stroke=1.4),
        ink.points(sheet, "level", _rows(shown, marks, ("level",)), shape="circle", size=6, ink=ink.INK, opacity=0.6),
        *_wishes(sheet, wishes, three),
        ink.points(sheet, "name-marks", [{**row, "x": 6.0} for row in names], size=70),
        ink.text(sheet, "names", [{**row, "x": 17.0} for row in names], "x", size=ink.SMALL),
        *_corner_names(sheet, campaign, of),
    ]
    return draw(sheet, layers, "weights", alt)


_OPEN = ("nearly", "mostly", "often", "slightly")


def _seen(cell: Cell, contender: str) -> bool:
    return cell.lead.leader == contender and strength(cell.lead) != "level"


def _rows(cells: Sequence[Cell], marks: dict[str, ContenderMark], how: Sequence[str]) -> list[Row]:
    rows: list[Row] = []
    for cell in cells:
        if strength(cell.lead) in how:
            x, y = place(cell.weights)
            mark = marks.get(cell.lead.leader or "")
            looks = {"shape": mark.shape, "fill": mark.ink, "stroke": mark.ink} if mark else {}
            rows.append({"x": x, "y": -y, **looks})
    return rows


def _names(campaign: Campaign, marks: dict[str, ContenderMark], leaders: Sequence[str], begin: float) -> list[Row]:
    """Who leads anywhere, in the corner that the picture leaves free, from `begin` px down."""
    return [
        {
            "y": -(begin + n * _LINE_OF_NAMES),
            "text": f"{marks[c].letter} {lines_of(campaign.contender(c).title, 15, 1)[0]}",
            "shape": marks[c].shape,
            "fill": marks[c].ink,
        }
        for n, c in enumerate(leaders)
    ]


def _frame(sheet: Plate, of: WeightMap) -> list[Layer]:
    """Hair lines from corner to corner."""
    ends = corners(len(of.groups))
    pairs = [(a, b) for n, a in enumerate(ends) for b in ends[n + 1 :]]
    rows: list[Row] = [{"x": a[0], "y": -a[1], "x2": b[0], "y2": -b[1]} for a, b in pairs]
    return [ink.rules(sheet, "sides", rows, x2="x2", y2="y2", opacity=ink.GRID, ink=ink.INK)]


def _wishes(sheet: Plate, wishes: Sequence[Wish], three: bool) -> list[Layer]:
    """The weightings that have names: a dark disc with a sign, beside the line where there are but two groups."""
    down = 0.0 if three else 24.0
    at: dict[tuple[float, float], list[str]] = {}
    for wish in wishes:
        at.setdefault(place(wish.weights), []).append(wish.sign)
    rows: list[Row] = [{"x": x, "y": -(y + down), "y2": -y, "text": "·".join(s)} for (x, y), s in at.items()]
    mark = {
        "type": "text", "align": "center", "baseline": "middle", "fontSize": 9.5, "fontWeight": 600, "fill": PAPER,
        "limit": 0,
    }  # fmt: skip
    return [
        *([] if three else [ink.rules(sheet, "wish-stems", rows, y2="y2", ink=ink.INK, opacity=0.5)]),
        ink.points(sheet, "wish-edges", rows, shape="circle", size=1.4 * _DISC, ink=PAPER),
        ink.points(sheet, "wishes", rows, shape="circle", size=_DISC, ink=ink.INK),
        layer("wish-signs", rows, mark, {"x": "x", "y": "y"}, sheet.scales, ["text"]),
    ]


def _corner_names(sheet: Plate, campaign: Campaign, of: WeightMap) -> list[Layer]:
    titles = [words("weights.corner", group=lines_of(t, 20, 1)[0]) for t in group_titles(campaign, of.groups)]
    width = 2 * SIDE + ACROSS
    if len(titles) == 2:
        down = LINE + 54
        ends = [("left", 0.0, down, titles[0]), ("right", width, down, titles[1])]
    else:
        down = TOP + HIGH + 22
        ends = [
            ("center", width / 2, TOP - 20, titles[0]),
            ("left", 0.0, down, titles[1]),
            ("right", width, down, titles[2]),
        ]
    return [
        ink.text(sheet, f"corner-{align}", [{"text": text}], x, y, align=align, size=ink.FIGURE)
        for align, x, y, text in ends
    ]
