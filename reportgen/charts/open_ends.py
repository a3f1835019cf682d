"""Open ends: where a meter stopped, and what is known beyond."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.charts import plate as ink
from reportgen.charts.letters import LETTER, px_of
from reportgen.charts.plate import Layer, Plate, Row
from reportgen.charts.readings import VALUE, Line
from reportgen.charts.scale import known
from reportgen.charts.side import NAMES, lines_of
from reportgen.charts.words import words
from reportgen.wording import interval
from reportgen.wording.reason import why_missing

BREAK = "M-1,1L0,-1M0,1L1,-1"  # two slanted strokes
_ARROW = 24.0  # px; a shorter arrow is none
_STROKES = 5.0  # px from the far edge to a break there


def open_ends(sheet: Plate, lines: Sequence[Line]) -> list[Layer]:
    """An arrow from a bound to the edge of the field that it points at, and in words what is known.

    A bound beyond the axis begins behind a break at the edge on which it lies: a short arrow where it points away from
    the rest, one across the whole field where it points over it. One that nobody knows has no place of its own.
    """
    arrows: list[Row] = []
    stops: list[Row] = []
    breaks: list[Row] = []
    heads: dict[str, list[Row]] = {"above": [], "below": []}
    beside: dict[str, list[Row]] = {"above": [], "below": []}
    under: dict[str, list[Row]] = {"above": [], "below": []}
    least = _ARROW / sheet.width * (sheet.x.high - sheet.x.low)
    for line in lines:
        e, y, colour = line.result.estimate, line.named.y, line.named.mark.ink
        if e is None or e.limit is None:
            continue
        edge, inward = (sheet.x.high, -1) if e.limit == "above" else (sheet.x.low, 1)
        start = edge + inward * least
        if known(e.value) and (e.value < sheet.x.low if e.limit == "above" else e.value > sheet.x.high):
            start = edge + inward * (sheet.x.high - sheet.x.low) * (1 - _STROKES / sheet.width)
        if known(e.value) and sheet.x.holds(e.value):
            start = e.value
            stops.append({"x": start, "y": y - VALUE / 2, "y2": y + VALUE / 2, "stroke": colour, **line.whose})
        elif known(e.value):
            breaks.append({"x": start, "y": y, "stroke": colour, **line.whose})
        arrows.append({"x": start, "x2": edge, "y": y, "stroke": colour, **line.told})
        heads[e.limit].append({"y": y, "fill": colour, **line.whose})
        running = line.result.running and e.limit == "above"
        said = interval.so_far(e.value, e.unit) if running else interval.bound(e.value, e.unit, e.limit)
        at = sheet.x.at(start, sheet.width)
        room = at if e.limit == "above" else sheet.width - at
        fits = room > px_of(said, ink.SMALL) + 8
        words_of: Row = {"x": start, "y": y if fits else y + 15, "text": said, **line.whose}
        (beside if fits else under)[e.limit].append(words_of)
    short, long = _nothing(lines, sheet.width)
    return [
        ink.rules(sheet, "limits", arrows, x2="x2", width=2),
        ink.rules(sheet, "limit-stops", stops, y2="y2", width=2),
        ink.points(sheet, "limit-breaks", breaks, shape=BREAK, size=60, hollow=True, stroke=1.5),
        ink.points(sheet, "limits-above", heads["above"], x=sheet.width - 1.0, shape="triangle-right", size=64),
        ink.points(sheet, "limits-below", heads["below"], x=1.0, shape="triangle-left", size=64),
        ink.text(sheet, "limits-above-said", beside["above"], "x", align="right", size=ink.SMALL, dx=-8),
        ink.text(sheet, "limits-below-said", beside["below"], "x", size=ink.SMALL, dx=8),
        ink.text(sheet, "limits-above-under", under["above"], sheet.width + 3, align="right", size=ink.SMALL),
        ink.text(sheet, "limits-below-under", under["below"], -3.0, size=ink.SMALL),
        ink.text(sheet, "not-read", short, sheet.width / 2, align="center", size=ink.SMALL, opacity=ink.LIGHT),
        ink.text(sheet, "not-read-because", long, 2.0, size=ink.SMALL, opacity=ink.LIGHT),
    ]


def _nothing(lines: Sequence[Line], width: float) -> tuple[list[Row], list[Row]]:
    """In place of marks, why there are none: in the middle of the field where that fits, else on two lines from the
    field's left, over the margin that holds no figure in such a row."""
    short: list[Row] = []
    long: list[Row] = []
    for line in lines:
        if (e := line.result.estimate) and (e.limit is not None or known(e.value)):
            continue
        said = why_missing(line.result.missing) or words("not read")
        if px_of(said, ink.SMALL) <= width:
            short.append({"y": line.named.y, "text": said, **line.told})
            continue
        told = lines_of(said, (ink.WIDE - NAMES - 4) / (ink.SMALL * LETTER))
        for turn, t in enumerate(told):
            whose = line.told if turn == 0 else line.whose
            long.append({"y": line.named.y + (turn - (len(told) - 1) / 2) * 13, "text": t, **whose})
    return short, long
