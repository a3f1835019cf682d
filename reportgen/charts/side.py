"""What stands beside a chart's field: contenders' marks, letters and names; axes; the good direction in words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from reportgen.campaign.declared import Contender
from reportgen.charts import plate as ink
from reportgen.charts.identity import Mark, mark_of
from reportgen.charts.plate import Layer, Plate, Row
from reportgen.charts.words import words
from reportgen.wording import number
from reportgen.wording.unit import spelled

NAMES = 110.0  # px for mark, letter and name
_FITS = 13  # letters of a name on one line of that width, with room for a wider face than the one measured with


@dataclass(frozen=True)
class Named:
    """A contender's line in a chart: `y` is its middle in px, `note` a few words under the name, `pale` if unranked."""

    contender: Contender
    index: int
    y: float
    note: str = ""
    pale: bool = False

    @property
    def mark(self) -> Mark:
        return mark_of(self.index)


def lines_of(name: str, fits: int = _FITS, most: int = 2) -> tuple[str, ...]:
    """A name on at most `most` lines of about `fits` letters, cut with an ellipsis where it is longer still."""
    lines: list[str] = [""]
    for word in name.split():
        joined = f"{lines[-1]} {word}".strip()
        if len(joined) <= fits or not lines[-1]:
            lines[-1] = joined
        else:
            lines.append(word)
    kept = [line if len(line) <= fits else f"{line[: fits - 1]}…" for line in lines[:most]]
    if len(lines) > most and not kept[-1].endswith("…"):
        kept[-1] = f"{kept[-1][: fits - 1]}…"
    return tuple(kept)


def names(sheet: Plate, named: Sequence[Named]) -> list[Layer]:
    """Mark, letter and name at the left of each line."""
    left = -sheet.left
    marks: list[Row] = [{"y": n.y, "shape": n.mark.shape, "fill": n.mark.ink} for n in named]
    letters: list[Row] = [{"y": n.y, "text": n.mark.letter} for n in named]
    told: dict[bool, list[Row]] = {False: [], True: []}
    notes: list[Row] = []
    for n in named:
        lines = [(line, False) for line in lines_of(n.contender.title, most=1 if n.note else 2)]
        lines += [(n.note, True)] if n.note else []
        for turn, (line, small) in enumerate(lines):
            row: Row = {"y": n.y + (turn - (len(lines) - 1) / 2) * 14, "text": line}
            (notes if small else told[n.pale]).append(row)
    return [
        ink.points(sheet, "marks", marks, x=left + 5.5, shape="", size=72),
        ink.text(sheet, "letters", letters, left + 15, size=ink.SMALL, weight=700),
        ink.text(sheet, "names", told[False], left + 29, size=ink.NAME),
        ink.text(sheet, "names-unranked", told[True], left + 29, size=ink.NAME, opacity=ink.LIGHT),
        ink.text(sheet, "notes", notes, left + 29, size=ink.SMALL, opacity=ink.LIGHT),
    ]


def x_axis(sheet: Plate, what: str, unit: str, better: str) -> list[Layer]:
    """Ticks with their numbers, hair lines up through the field, what is measured, and which way is good."""
    bottom = sheet.height
    ticks: list[Row] = [{"x": t, "text": number.fixed(t, sheet.x.decimals)} for t in sheet.x.ticks]
    printed = spelled(unit)
    label = words("axis", what=what, unit=printed) if printed and what else printed or what
    direction = words(better) if better in {"lower", "higher"} else ""
    at, align = (sheet.width, "right") if better == "higher" else (0.0, "left")
    other = (0.0, "left") if better == "higher" else (sheet.width, "right")
    return [
        ink.rules(sheet, "grid", ticks, y=0.0, y2=bottom, opacity=ink.FAINT * 1.6, ink=ink.INK),
        ink.rules(sheet, "base", [{"y": bottom}] if ticks else [], x=0.0, x2=sheet.width, ink=ink.INK, opacity=0.5),
        ink.text(sheet, "ticks", ticks, "x", bottom + 11, align="center", size=ink.SMALL),
        ink.text(sheet, "good", [{"text": direction}] if direction else [], at, bottom + 29, align=align, size=ink.SMALL),
        ink.text(sheet, "unit", [{"text": label}] if label else [], other[0], bottom + 29, align=other[1], size=ink.SMALL,
                 opacity=ink.LIGHT),
    ]  # fmt: skip


def index_of(contenders: Sequence[Contender]) -> Mapping[str, int]:
    """Each contender's place in the campaign's order, by id."""
    return {c.id: n for n, c in enumerate(contenders)}
