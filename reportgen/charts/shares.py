"""Yes/no: a dot a pass, filled for yes, out of as many as there were."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.campaign.declared import Campaign, Quantity
from reportgen.charts import plate as ink
from reportgen.charts import said
from reportgen.charts.brackets import Groups, brackets, places, room_for_brackets
from reportgen.charts.convert import draw
from reportgen.charts.figure import Drawing
from reportgen.charts.order import in_order
from reportgen.charts.plate import Plate, Row
from reportgen.charts.readings import CROSS
from reportgen.charts.scale import Axis
from reportgen.charts.side import NAMES, Named, figures, named, names
from reportgen.charts.words import sentence, words
from reportgen.evaluation.evaluated import Result
from reportgen.wording.count import whole
from reportgen.wording.reason import why_missing

_RIGHT = 66.0  # px for "12 of 12"
_FIRST = 13.0  # px from the names to the middle of the first dot


def drawing(campaign: Campaign, quantity: Quantity, results: Sequence[Result], groups: Groups, alt: str) -> Drawing:
    """The drawing; passes run from left to right in their order, and a bracket joins each of `groups`."""
    ordered = in_order(quantity, results)
    right = _RIGHT + room_for_brackets(groups)
    lines = named(campaign, ordered, 32.0)
    most = max((len(r.by_pass) for r in ordered), default=1) or 1
    pitch = min(18.0, (ink.WIDE - NAMES - right - _FIRST) / most)
    sheet = Plate(NAMES, right, 4, 4, 14 + 32.0 * len(lines) - 14, Axis(0, 1, (), 0))
    size = min(90.0, (pitch * 0.62) ** 2)
    yes: list[Row] = []
    no: list[Row] = []
    left_out: list[Row] = []
    missing: list[Row] = []
    for at, (line, r) in enumerate(zip(lines, ordered, strict=True)):
        whose: Row = {"of": line.index, "walk": at}
        if not r.of:
            told_of: Row = {"said": said.of_result(line.contender, r), **whose}
            missing.append({"y": line.y, "text": why_missing(r.missing) or words("not read"), **told_of})
        for n, p in enumerate(r.by_pass):
            row: Row = {"at": (_FIRST + n * pitch) / sheet.width, "y": line.y, **whose}
            answer = words(f"met.{p.word}") if p.word in {"yes", "no"} else p.word
            row |= {"said": said.of_pass(line.contender, r, p, answer), "turn": n}
            row |= {"fill": line.mark.ink, "stroke": line.mark.ink}
            if p.excluded:
                left_out.append(row)
            elif p.word in {"yes", "no"}:
                (yes if p.word == "yes" else no).append(row)
    told: list[tuple[Named, str]] = [(line, count_text(r)) for line, r in zip(lines, ordered, strict=True)]
    layers = [
        ink.points(sheet, "yes", yes, x="at", shape="circle", size=size),
        ink.points(sheet, "no", no, x="at", shape="circle", size=size * 0.85, hollow=True, stroke=1.5),
        ink.points(sheet, "passes-left-out", left_out, x="at", shape=CROSS, size=26, ink=ink.INK, hollow=True),
        ink.text(sheet, "not-read", missing, 2.0, size=ink.SMALL, opacity=ink.LIGHT),
        *names(sheet, lines),
        *figures(sheet, told, sheet.width + _RIGHT - 4),
        *brackets(sheet, places(lines, ordered), groups, sheet.width + _RIGHT + 8),
    ]
    return draw(sheet, layers, "shares", alt)


def count_text(result: Result) -> str:
    """ "3 of 4", or nothing where there was no pass."""
    return words("of", yes=whole(result.yes or 0), of=whole(result.of)) if result.of else ""


def key(results: Sequence[Result], groups: Groups) -> str:
    """How to read the marks, in one sentence."""
    crossed = any(p.excluded for r in results for p in r.by_pass)
    return sentence([
        words("key.yes"), words("key.excluded") if crossed else "", words("key.tie") if groups else "",
    ])  # fmt: skip
