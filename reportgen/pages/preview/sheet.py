"""The sheet of a preview picture, 1200 by 630: where each thing stands. Feeds show it small, so type is large.

It has a ground and an edge of its own, since nobody knows whether the feed around it is light or dark.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from reportgen.marks import ContenderMark
from reportgen.pages.preview.fitting import broken, cut, width_of

WIDTH, HEIGHT = 1200, 630
_EDGE, _RIGHT = 60, 1140
_HEAD, _FOOT = 74, 594  # where the top and the bottom line stand
_PANEL = 480  # px: width of the results
_BESIDE = 60  # px between answer and results
_ROW = 66
_LARGE, _TEXT, _NAME, _SMALL, _SMALLEST = 50, 33, 28, 24, 20  # sizes of type
MOST_ROWS = 5


@dataclass(frozen=True)
class Result:
    """One result as the picture is told it; `limit` above or below: `value` is a bound. All are in one unit."""

    name: str
    mark: ContenderMark
    printed: str
    value: float
    low: float | None
    high: float | None
    limit: str | None


@dataclass(frozen=True)
class Told:
    """What the picture says. `results` with `measured` (what) and `way` (which direction is better), or none."""

    publication: str
    date: str
    title: str
    answer: str
    invented: str
    measured: str = ""
    way: str = ""
    results: tuple[Result, ...] = ()
    more: str = ""


@dataclass(frozen=True)
class Line:
    """A line of text whose foot stands at `y`."""

    y: int
    text: str


@dataclass(frozen=True)
class Ends:
    """Where lines begin and end, in px from the left, with the anchors (SVG 2, 11.10.1) that hold them there.

    `left` and `right` are so whichever way the language runs; `mark` and `name` stand at the beginning of a row.
    """

    left: int
    right: int
    begin: int
    end: int
    begins: str
    ends: str
    mark: int
    name: int


def ends_of(left: int, right: int, right_to_left: bool) -> Ends:
    """The ends of a stretch from `left` to `right`."""
    if right_to_left:
        return Ends(left, right, right, left, "end", "start", right - 12, right - 36)
    return Ends(left, right, left, right, "start", "end", left + 12, left + 36)


@dataclass(frozen=True)
class Row:
    """One result, drawn: ends of its range and its value in px from the left, `arrow` where an open end points."""

    mark: ContenderMark
    colour: str
    name: str
    printed: str
    y: int
    bar_y: int
    tick_y: int
    low: int
    length: int
    value: int
    open: str


@dataclass(frozen=True)
class Sheet:
    """What `preview.svg` is told: colours by name, places in whole px."""

    colours: Mapping[str, str]
    publication: str
    date: str
    title: tuple[Line, ...]
    answer: tuple[Line, ...]
    measured: str
    way: str
    measured_y: int
    panel: Ends
    rows: tuple[Row, ...]
    more: str
    more_y: int
    invented: tuple[Line, ...]
    sheet: Ends


def sheet_of(told: Told, colours: Mapping[str, str], right_to_left: bool = False) -> Sheet:
    """The sheet, everything in its place; what is too long ends in an ellipsis."""
    inside = _RIGHT - _EDGE
    invented = broken(told.invented, _SMALLEST, inside, 2) if told.invented else ()
    foot = _FOOT - 26 * len(invented) - 12
    title = broken(told.title, _LARGE, inside, 3)
    top = _HEAD + 150 + (len(title) - 1) * 58
    answer = _lines(told.answer, inside - _PANEL - _BESIDE if told.results else inside, (foot - top) // 44 + 1)
    shown = told.results[: min(max(0, (foot - top - 24) // _ROW), MOST_ROWS)]
    more = told.more if len(told.results) > len(shown) > 0 else ""
    panel = ends_of(_EDGE, _EDGE + _PANEL, True) if right_to_left else ends_of(_RIGHT - _PANEL, _RIGHT, False)
    run = _from_right if right_to_left else str
    return Sheet(
        colours=colours,
        publication=run(cut(told.publication, _NAME, 440)),
        date=run(cut(told.date, _NAME, 600)),
        title=tuple(Line(_HEAD + 76 + n * 58, run(text)) for n, text in enumerate(title)),
        answer=tuple(Line(top + n * 44, run(text)) for n, text in enumerate(answer)),
        measured=run(cut(told.measured, _SMALL, _PANEL - 20 - width_of(told.way, _SMALL))) if shown else "",
        way=run(told.way) if shown else "",
        measured_y=top - 6,
        panel=panel,
        rows=_rows([replace(r, name=run(_name(r))) for r in shown], colours, panel, top + 32),
        more=run(more) if more else "",
        more_y=top + 36 + len(shown) * _ROW,
        invented=tuple(Line(_FOOT - 26 * (len(invented) - 1 - n), run(text)) for n, text in enumerate(invented)),
        sheet=ends_of(_EDGE, _RIGHT, right_to_left),
    )


def _lines(text: str, width: float, most: int) -> tuple[str, ...]:
    """Each line the text has, broken where it must be."""
    lines: list[str] = []
    for line in text.split("\n"):
        lines += broken(line, _TEXT, width, most - len(lines))
    return tuple(lines)


def _name(r: Result) -> str:
    return cut(r.name, _NAME, _PANEL - 74 - width_of(r.printed, _NAME))


def _from_right(text: str) -> str:
    """The text with its runs in order from the right (Unicode 16, UAX #9, 2.1): the converter knows no direction."""
    return f"\u202b{text}\u202c"


def _rows(results: Sequence[Result], colours: Mapping[str, str], panel: Ends, top: int) -> tuple[Row, ...]:
    numbers = [v for r in results for v in (r.value, r.low, r.high) if v is not None]
    if not numbers:
        return ()
    least, most = min(numbers), max(numbers)
    span = most - least or 1.0

    def at(value: float) -> int:
        return int(panel.left + 8 + (value - least) / span * (_PANEL - 40))

    made = []
    for n, r in enumerate(results):
        y = top + n * _ROW
        low = at(r.low if r.low is not None else r.value)
        high = at(r.high if r.high is not None else r.value)
        if r.limit:
            low, high = (at(r.value), panel.right - 18) if r.limit == "above" else (panel.left + 14, at(r.value))
        made.append(
            Row(
                mark=r.mark,
                colour=colours[r.mark.css_class],
                name=r.name,
                printed=r.printed,
                y=y,
                bar_y=y + 13,
                tick_y=y + 9,
                low=low,
                length=max(2, high - low),
                value=at(r.value),
                open=r.limit or "",
            )
        )
    return tuple(made)
