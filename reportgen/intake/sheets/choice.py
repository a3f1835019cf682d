"""Which sheet of a spreadsheet is meant."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reportgen.finding import Place, Refused, refuse
from reportgen.intake.table import did_you_mean, key, spelt


@dataclass(frozen=True)
class Listed:
    """A sheet of a spreadsheet: its name, whether it is hidden, whether any of its cells is filled."""

    name: str
    hidden: bool
    filled: bool


def choose(sheets: Sequence[Listed], asked: str, file: str) -> Listed:
    """The one asked for; without one the only visible sheet with cells. Raises `Refused` where that isn't one."""
    if asked:
        named = [s for s in sheets if s.name == asked] or [s for s in sheets if key(s.name) == key(asked)]
        if len(named) == 1:
            return named[0]
        raise _unknown(sheets, asked, file)
    visible = [s for s in sheets if s.filled and not s.hidden]
    if len(visible) == 1:
        return visible[0]
    if visible:
        raise refuse(
            "which-sheet",
            Place(file),
            f"There are {len(visible)} sheets with cells: {spelt([s.name for s in visible])}.",
            "Which of them holds these readings can't be known.",
            f"Write `sheet: {visible[0].name}` beside `file:`; list the file once more for another sheet.",
        )
    hidden = [s.name for s in sheets if s.filled]
    raise refuse(
        "empty-table",
        Place(file),
        f"Only hidden sheets hold cells: {spelt(hidden)}." if hidden else "No sheet of this spreadsheet holds a cell.",
        "What is hidden is never read unasked." if hidden else "An empty file can mean a lost one.",
        f"Write `sheet: {hidden[0]}` beside `file:` if that is the one."
        if hidden
        else "Write the headings in its first row; a table with headings alone counts as not yet tested.",
    )


def _unknown(sheets: Sequence[Listed], asked: str, file: str) -> Refused:
    near = did_you_mean(asked, [s.name for s in sheets])
    return refuse(
        "unknown-sheet",
        Place(file),
        f"There is no sheet “{asked}”; there are {spelt([s.name for s in sheets])}.",
        "Its readings would be lost.",
        f"Did you mean “{near}”?" if near else "Correct the name after `sheet:`.",
    )
