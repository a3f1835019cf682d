"""The whole campaign at a glance: for every ranked quantity, the places each contender may hold.

A league table hides how little most of its places mean; rank ranges show it (Goldstein and Spiegelhalter, "League
tables and their limitations", J. R. Stat. Soc. A 159 (1996) 385). Contenders with the same range share a block.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from reportgen.campaign.declared import Campaign
from reportgen.charts import plate as ink
from reportgen.charts.convert import draw
from reportgen.charts.figure import Drawing
from reportgen.charts.plate import Layer, Plate, Row
from reportgen.charts.scale import Axis
from reportgen.charts.side import NAMES, lines_of
from reportgen.charts.telling import title_of
from reportgen.charts.words import sentence, words
from reportgen.evaluation.evaluated import Evaluation
from reportgen.marks import mark_of
from reportgen.wording.interval import rank_range
from reportgen.wording.listing import and_list
from reportgen.wording.sentence import in_a_row, inside

MOST = 10  # contenders; with more the blocks have no room for their letters
_BLOCK, _LANE, _GAP = 17.0, 20.0, 12.0  # px: height of a block, from lane to lane, between quantities
_LEGEND = 19.0  # px a line
_MEMBER = 25.0  # px for a mark and its letter


@dataclass(frozen=True)
class Block:
    """The places `first` to `last`, and the contenders that may hold any of them; `lane` counts down from 0."""

    first: int
    last: int
    members: tuple[str, ...]
    lane: int


@dataclass(frozen=True)
class Ranked:
    """One quantity (and part) with its blocks; `unranked` contenders have no place in it."""

    title: str
    blocks: tuple[Block, ...]
    unranked: tuple[str, ...]

    @property
    def lanes(self) -> int:
        return max((b.lane for b in self.blocks), default=0) + 1


def ranked(campaign: Campaign, evaluation: Evaluation) -> tuple[Ranked, ...]:
    """Every quantity in which at least two contenders are ranked, in the campaign's order."""
    made: list[Ranked] = []
    for test in campaign.tests:
        for quantity in test.quantities:
            results = [r for r in evaluation.results if r.quantity == quantity.id]
            for part in dict.fromkeys(r.part for r in results):
                ranks = {r.contender: r.rank for r in results if r.part == part}
                placed = {c: rank for c, rank in ranks.items() if rank is not None}
                if len(placed) > 1 and quantity.better != "neither":
                    made.append(
                        Ranked(title_of(quantity, part), blocks_of(placed), tuple(c for c in ranks if c not in placed))
                    )
    return tuple(made)


def blocks_of(ranks: Mapping[str, tuple[int, int]]) -> tuple[Block, ...]:
    """Contenders of one rank range together; blocks that overlap stand in lanes one below the other."""
    together: dict[tuple[int, int], list[str]] = {}
    for contender, rank in ranks.items():
        together.setdefault(rank, []).append(contender)
    ends: list[int] = []
    made: list[Block] = []
    for (first, last), members in sorted(together.items()):
        lane = next((n for n, end in enumerate(ends) if end < first), len(ends))
        ends[lane : lane + 1] = [last]
        made.append(Block(first, last, tuple(members), lane))
    return tuple(made)


def drawing(campaign: Campaign, rows: Sequence[Ranked], alt: str) -> Drawing:
    """The drawing; at least one row."""
    most = max(b.last for row in rows for b in row.blocks)
    head = _LEGEND * -(-len(campaign.contenders) // 2)
    height = 0.0
    tops: list[float] = []
    for row in rows:
        tops.append(height + _GAP / 2)
        height += max(row.lanes * _lane(row, most), 14.0 * len(lines_of(row.title, 16, 4)), 20) + _GAP
    sheet = Plate(NAMES, 4, head + 30, 4, height, Axis(0.5, most + 0.5, (), 0))
    numbers: list[Row] = [{"x": n, "text": str(n)} for n in range(1, most + 1)]
    edges: list[Row] = [{"x": n + 0.5} for n in range(most + 1)]
    hairs: list[Row] = [{"y": top - _GAP / 2} for top in tops]
    titles: list[Row] = []
    boxes: list[Row] = []
    marks: list[Row] = []
    letters: list[Row] = []
    place = sheet.width / most
    for turn, (row, top) in enumerate(zip(rows, tops, strict=True)):
        lane, inset = _lane(row, most), 2 / place
        titles += [{"y": top + 9 + 14 * n, "text": t} for n, t in enumerate(lines_of(row.title, 16, 4))]
        for b in row.blocks:
            y = top + b.lane * lane
            x, x2 = b.first - 0.5 + inset, b.last + 0.5 - inset
            boxes.append({"x": x, "x2": x2, "y": y, "y2": y + lane - _LANE + _BLOCK})
            for mark, letter in _members(campaign, row.title, b, y + _BLOCK / 2, most, place):
                marks.append({**mark, "turn": turn})
                letters.append(letter)
    layers = [
        *_legend(sheet, campaign),
        ink.text(
            sheet,
            "place",
            [{"text": words("place.head")}],
            -8.0,
            -12.0,
            align="right",
            size=ink.SMALL,
            opacity=ink.LIGHT,
        ),
        ink.text(sheet, "places", numbers, "x", -12.0, align="center", size=ink.FIGURE),
        ink.rules(sheet, "hairs", hairs, x=-NAMES, x2=sheet.width, opacity=ink.GRID * 2, ink=ink.INK),
        ink.rules(sheet, "grid", edges, y=0.0, y2=sheet.height, opacity=ink.GRID, ink=ink.INK),
        ink.boxes(sheet, "blocks", boxes, ink=ink.INK, opacity=ink.GRID * 0.8),
        ink.points(sheet, "marks", marks, shape="", size=62),
        ink.text(sheet, "letters", letters, "x", size=ink.SMALL, weight=700),
        ink.text(sheet, "titles", titles, -NAMES, size=ink.FIGURE),
    ]
    return draw(sheet, layers, "overview", alt)


def _members(
    campaign: Campaign, what: str, block: Block, middle: float, most: int, place: float
) -> Iterator[tuple[Row, Row]]:
    """The mark and the letter of each member, side by side from `middle` px down; a place is `place` px wide."""
    index = {c.id: n for n, c in enumerate(campaign.contenders)}
    held = rank_range((block.first, block.last))
    across = _across(block, most)
    for n, member in enumerate(block.members):
        at = block.first - 0.5 + (8.5 + n % across * _MEMBER) / place
        mark = mark_of(index[member])
        whose: Row = {"y": middle + n // across * 15, "of": index[member]}
        says = words("met.place", name=campaign.contender(member).title, what=what, place=held)
        yield (
            {"x": at, "shape": mark.shape, "fill": mark.ink, "said": says, **whose},
            {"x": at + 7.5 / place, "text": mark.letter, **whose},
        )


def _across(block: Block, most: int) -> int:
    """How many members stand side by side in a block."""
    width = (block.last - block.first + 1) * (ink.WIDE - NAMES - 4) / most
    return max(1, int((width - 4) / _MEMBER))


def _lane(row: Ranked, most: int) -> float:
    """From lane to lane of a row, tall enough for the block whose members need most lines."""
    lines = max(-(-len(b.members) // _across(b, most)) for b in row.blocks)
    return _LANE + 15.0 * (lines - 1)


def _legend(sheet: Plate, campaign: Campaign) -> list[Layer]:
    """Who the letters are: two columns above the field, in the campaign's order."""
    marks: dict[float, list[Row]] = {0.0: [], ink.WIDE / 2: []}
    letters: dict[float, list[Row]] = {0.0: [], ink.WIDE / 2: []}
    names: dict[float, list[Row]] = {0.0: [], ink.WIDE / 2: []}
    for n, contender in enumerate(campaign.contenders):
        column, mark = ink.WIDE / 2 * (n % 2), mark_of(n)
        y = -sheet.top + 9 + _LEGEND * (n // 2)
        marks[column].append({"y": y, "shape": mark.shape, "fill": mark.ink, "of": n})
        letters[column].append({"y": y, "text": mark.letter, "of": n})
        names[column].append({"y": y, "text": lines_of(contender.title, 20, 1)[0], "of": n})
    layers: list[Layer] = []
    for side, column in enumerate(marks):
        x = column - sheet.left
        layers += [
            ink.points(sheet, f"legend-marks-{side + 1}", marks[column], x=x + 5.5, shape="", size=72),
            ink.text(sheet, f"legend-letters-{side + 1}", letters[column], x + 15, size=ink.SMALL, weight=700),
            ink.text(sheet, f"legend-names-{side + 1}", names[column], x + 29, size=ink.NAME),
        ]
    return layers


def key(rows: Sequence[Ranked]) -> str:
    """How to read the blocks, in one sentence."""
    tie = any(len(b.members) > 1 for row in rows for b in row.blocks)
    overlap = any(row.lanes > 1 for row in rows)
    return sentence([
        words("key.overview"),
        words("key.overview.tie") if tie else "",
        words("key.overview.open") if overlap else "",
    ])  # fmt: skip


def told(campaign: Campaign, row: Ranked) -> tuple[tuple[str, str], ...]:
    """The row in words: a rank range and the names that hold it."""
    return tuple(
        (rank_range((b.first, b.last)), and_list([campaign.contender(m).title for m in b.members])) for b in row.blocks
    )


def found(campaign: Campaign, rows: Sequence[Ranked]) -> str:
    """Who is alone in first place in what."""
    alone: dict[str, list[str]] = {}
    for row in rows:
        for b in row.blocks:
            if (b.first, b.last) == (1, 1):
                alone.setdefault(b.members[0], []).append(inside(row.title))
    lines = [
        words("overview.first", name=c.title, quantities=and_list(alone[c.id]))
        for c in campaign.contenders
        if c.id in alone
    ]
    return in_a_row(lines) or words("overview.no-first")
