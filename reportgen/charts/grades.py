"""Ordered grades: a strip a contender, a dot a pass at the grade it got."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from reportgen.campaign.declared import Campaign, Quantity
from reportgen.charts import plate as ink
from reportgen.charts import said
from reportgen.charts.brackets import Groups, brackets, places, room_for_brackets
from reportgen.charts.convert import draw
from reportgen.charts.figure import Drawing
from reportgen.charts.letters import LETTER
from reportgen.charts.order import in_order
from reportgen.charts.plate import Plate, Row
from reportgen.charts.readings import CROSS
from reportgen.charts.scale import Axis
from reportgen.charts.side import NAMES, Named, lines_of, named, names
from reportgen.charts.words import sentence, words
from reportgen.evaluation.evaluated import Result
from reportgen.wording.reason import why_missing

_DOT = 8.0  # px from one dot of a grade to the next


def drawing(campaign: Campaign, quantity: Quantity, results: Sequence[Result], groups: Groups, alt: str) -> Drawing:
    """The drawing; grades from left to right as declared, contenders as far in order as they are ranked."""
    results = in_order(quantity, results)
    lines = named(campaign, results, 34.0)
    place = {grade: n for n, grade in enumerate(quantity.grades)}
    right = 10 + room_for_brackets(groups)
    width = ink.WIDE - NAMES - right
    column = width / max(len(place), 1)
    names_of = {grade: lines_of(grade, fits=max(4.0, column / (ink.SMALL * LETTER) - 1)) for grade in place}
    under = 12.0 * max((len(told) for told in names_of.values()), default=1)
    below = under + (26 if quantity.better != "neither" else 8)
    sheet = Plate(NAMES, right, 4, below, 34.0 * len(lines), Axis(-0.5, len(place) - 0.5, (), 0))
    marks = _marks(lines, results, place, column)
    bottom = sheet.height
    labels: list[Row] = []
    for grade, n in place.items():
        for turn, text in enumerate(names_of[grade]):
            labels.append({"x": n, "text": text, "y": bottom + 11 + 12 * turn})
    edges: list[Row] = [{"x": n - 0.5} for n in range(len(place) + 1)]
    direction: list[Row] = [{"text": words(f"grade.{quantity.better}")}] if quantity.better != "neither" else []
    more = quantity.better == "higher"
    layers = [
        ink.rules(sheet, "grid", edges, y=0.0, y2=bottom, opacity=ink.GRID, ink=ink.INK),
        ink.rules(sheet, "base", [{"y": bottom}], x=0.0, x2=sheet.width, ink=ink.INK, opacity=0.5),
        ink.points(sheet, "passes", marks.dots, shape="circle", size=38),
        ink.points(sheet, "passes-left-out", marks.left_out, shape=CROSS, size=26, ink=ink.INK, hollow=True),
        ink.rules(sheet, "middle", marks.middles, x2="x2", width=1.5, ink=ink.INK),
        ink.text(sheet, "not-read", marks.missing, sheet.width / 2, align="center", size=ink.SMALL, opacity=ink.LIGHT),
        ink.text(sheet, "grades", labels, "x", "y", align="center", size=ink.SMALL),
        ink.text(sheet, "good", direction, sheet.width if more else 0.0, bottom + under + 16,
                 align="right" if more else "left", size=ink.SMALL),
        *names(sheet, lines),
        *brackets(sheet, places(lines, results), groups, sheet.width + 12),
    ]  # fmt: skip
    return draw(sheet, layers, "grades", alt)


@dataclass(frozen=True)
class _Marks:
    """A dot a pass, those of passes left out, a line over each middle grade, and words where nothing was read."""

    dots: list[Row] = field(default_factory=list)
    left_out: list[Row] = field(default_factory=list)
    middles: list[Row] = field(default_factory=list)
    missing: list[Row] = field(default_factory=list)


def _marks(lines: Sequence[Named], results: Sequence[Result], place: Mapping[str, int], column: float) -> _Marks:
    """What stands in the strips; `place` of each grade along the axis, `column` px for each."""
    marks = _Marks()
    for at, (line, r) in enumerate(zip(lines, results, strict=True)):
        whose: Row = {"of": line.index, "walk": at}
        told: Row = {"said": said.of_result(line.contender, r), **whose}
        passes = [(turn, p) for turn, p in enumerate(r.by_pass, start=1) if p.word in place]
        spots = _spots([p.word for _, p in passes], column)
        for (turn, p), (x, y) in zip(passes, spots, strict=True):
            row: Row = {"x": place[p.word] + x, "y": line.y + y, "fill": line.mark.ink, **whose}
            row |= {"said": said.of_pass(line.contender, r, p, p.word), "turn": turn}
            (marks.left_out if p.excluded else marks.dots).append(row)
        if r.grade in place and r.passes > 1:
            marks.middles.append({"x": place[r.grade] - 0.42, "x2": place[r.grade] + 0.42, "y": line.y - 9, **told})
        if not passes:
            marks.missing.append({"y": line.y, "text": why_missing(r.missing) or words("not read"), **told})
    return marks


def _spots(grades: Sequence[str], column: float) -> Iterator[tuple[float, float]]:
    """Where each dot of a contender stands beside its grade: in columns across, px down; full rows first."""
    in_a_row = max(1, int((column - 6) / _DOT))
    seen: Counter[str] = Counter()
    total = Counter(grades)
    for grade in grades:
        n = seen[grade]
        seen[grade] += 1
        across = min(total[grade] - n // in_a_row * in_a_row, in_a_row)
        yield (n % in_a_row - (across - 1) / 2) * _DOT / column, n // in_a_row * _DOT


def key(results: Sequence[Result], groups: Groups) -> str:
    """How to read the marks, in one sentence."""
    crossed = any(p.excluded for r in results for p in r.by_pass)
    middle = any(r.grade and r.passes > 1 for r in results)
    return sentence([
        words("key.grade"),
        words("key.grade.middle") if middle else "",
        words("key.excluded") if crossed else "",
        words("key.tie") if groups else "",
    ])  # fmt: skip
