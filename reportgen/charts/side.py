"""What stands beside a chart's field: contenders' marks, letters and names; axes; the good direction in words."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reportgen.campaign.declared import Campaign, Contender
from reportgen.charts import plate as ink
from reportgen.charts.letters import LETTER, characters, cut, length
from reportgen.charts.plate import Layer, Plate, Row
from reportgen.charts.scale import Axis
from reportgen.charts.words import words
from reportgen.evaluation.evaluated import Result
from reportgen.marks import ContenderMark, mark_of
from reportgen.wording import number
from reportgen.wording.language import spoken
from reportgen.wording.unit import spelled

NAMES = 116.0  # px for mark, letter and name
_FITS = 12.0  # letters of a name on one line of that width


@dataclass(frozen=True)
class Named:
    """A contender's line in a chart: `y` is its middle in px, `note` a few words under the name, `pale` if unranked."""

    contender: Contender
    index: int
    y: float
    note: str = ""
    pale: bool = False

    @property
    def mark(self) -> ContenderMark:
        return mark_of(self.index)


def lines_of(name: str, fits: float = _FITS, most: int = 2) -> tuple[str, ...]:
    """A name on at most `most` lines of about `fits` letters, cut with an ellipsis where it is longer still."""
    lines: list[str] = [""]
    for word in name.split():
        joined = f"{lines[-1]} {word}".strip()
        if length(joined) <= fits or not lines[-1]:
            lines[-1] = joined
        else:
            lines.append(word)
    if len(lines) > most:
        lines[most - 1 :] = [" ".join(lines[most - 1 :])]
    return tuple(cut(line, fits) for line in lines)


def names(sheet: Plate, named: Sequence[Named]) -> list[Layer]:
    """Mark, letter and name at the left of each line."""
    left, letters_wide = -sheet.left, 7.5 * max((len(n.mark.letter) for n in named), default=1)
    begin, fits = left + 22 + letters_wide, _FITS - (letters_wide - 7.5) / (ink.NAME * LETTER)
    marks: list[Row] = [{"y": n.y, "shape": n.mark.shape, "fill": n.mark.ink, "of": n.index} for n in named]
    letters: list[Row] = [{"y": n.y, "text": n.mark.letter, "of": n.index} for n in named]
    told: dict[bool, list[Row]] = {False: [], True: []}
    notes: list[Row] = []
    for n in named:
        lines = [(line, False) for line in lines_of(n.contender.title, fits)]
        lines += [(n.note, True)] if n.note else []
        for turn, (line, small) in enumerate(lines):
            row: Row = {"y": n.y + (turn - (len(lines) - 1) / 2) * 14, "text": line, "of": n.index}
            (notes if small else told[n.pale]).append(row)
    return [
        ink.points(sheet, "marks", marks, x=left + 5.5, shape="", size=72),
        ink.text(sheet, "letters", letters, left + 15, size=ink.SMALL, weight=700),
        ink.text(sheet, "names", told[False], begin, size=ink.NAME),
        ink.text(sheet, "names-unranked", told[True], begin, size=ink.NAME, opacity=ink.LIGHT),
        ink.text(sheet, "notes", notes, begin, size=ink.SMALL, opacity=ink.LIGHT),
    ]


def x_axis(sheet: Plate, unit: str, better: str) -> list[Layer]:
    """Ticks with their numbers, hair lines up through the field, the unit, and which way is good."""
    bottom = sheet.height
    ticks: list[Row] = [{"x": t, "text": number.fixed(t, sheet.x.decimals)} for t in fitting(sheet.x, sheet.width)]
    printed = spelled(unit)
    direction = words(better) if better in {"lower", "higher"} else ""
    at, align, other, aside = (
        (sheet.width, "right", 0.0, "left") if better == "higher" else (0.0, "left", sheet.width, "right")
    )
    return [
        ink.rules(sheet, "grid", ticks, y=0.0, y2=bottom, opacity=ink.GRID, ink=ink.INK),
        ink.rules(sheet, "base", [{"y": bottom}] if ticks else [], x=0.0, x2=sheet.width, ink=ink.INK, opacity=0.5),
        ink.text(sheet, "ticks", ticks, "x", bottom + 11, align="center", size=ink.SMALL),
        ink.text(
            sheet, "good", [{"text": direction}] if direction else [], at, bottom + 29, align=align, size=ink.SMALL
        ),
        ink.text(
            sheet, "unit", [{"text": printed}] if printed else [], other, bottom + 29, align=aside, size=ink.SMALL
        ),
    ]


def foot(unit: str, better: str) -> float:
    """Px below the field that `x_axis` needs."""
    return 40.0 if spelled(unit) or better != "neither" else 22.0


def fitting(scale: Axis, length: float) -> tuple[float, ...]:
    """The ticks whose numbers stand clear of one another on an axis `length` px long; else every second or third."""
    for nth in range(1, len(scale.ticks) + 1):
        kept = [t for n, t in enumerate(scale.ticks) if n % nth == 0]
        widest = max(characters(number.fixed(t, scale.decimals)) for t in kept) * 6.6 + 6
        if len(kept) < 2 or scale.at(kept[1], length) - scale.at(kept[0], length) >= widest:
            return tuple(kept)
    return scale.ticks


def room_for(told: Sequence[str]) -> float:
    """Px from the field to the right end of the values beside it."""
    return 10 + ink.DIGIT * max(map(characters, told), default=0)


def figures(sheet: Plate, told: Sequence[tuple[Named, str]], right: float, unit: str = "") -> list[Layer]:
    """The values beside the lines, decimal sign under decimal sign, the longest ending at `right` px of the field.

    Their `unit` stands over them.
    """
    sign = spoken().decimal_sign
    after = max((characters(text.partition(sign)[2]) for _, text in told), default=0)
    at = right - (after * ink.DIGIT + 4 if after else 0)
    whole: list[Row] = []
    part: list[Row] = []
    for n, text in told:
        before, found, decimals = text.partition(sign)
        if text:
            whole.append({"y": n.y, "text": before, "of": n.index})
        if found:
            part.append({"y": n.y, "text": sign + decimals, "of": n.index})
    over: list[Row] = [{"text": spelled(unit)}] if spelled(unit) and whole else []
    return [
        ink.text(sheet, "figures", whole, at, align="right"),
        ink.text(sheet, "figures-decimals", part, at),
        ink.text(sheet, "figures-unit", over, right, -11.0, align="right", size=ink.SMALL, opacity=ink.LIGHT),
    ]


def named(campaign: Campaign, ordered: Sequence[Result], pitch: float = 0.0) -> list[Named]:
    """The lines for results in their order, `pitch` px apart (closer where there are many); more for a long name."""
    pitch = pitch or (38.0 if len(ordered) <= 14 else 32.0)
    index = {c.id: n for n, c in enumerate(campaign.contenders)}
    made: list[Named] = []
    y = 14.0
    for r in ordered:
        contender = campaign.contender(r.contender)
        note = words("not ranked") if r.blocked else ""
        extra = 7.0 if note and len(lines_of(contender.title)) > 1 else 0.0
        made.append(Named(contender, index[r.contender], y + extra, note, bool(r.blocked)))
        y += pitch + 2 * extra
    return made
