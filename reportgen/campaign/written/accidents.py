"""What happened to readings after they were taken: slips put right, two records of one, and what was only assumed."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Annotated, ClassVar

from reportgen.campaign import short
from reportgen.campaign.given import Given
from reportgen.campaign.scalar import AmountOf, Cell, FilePath, Name, SizeOf, Term, Whole, Words, YesNo
from reportgen.campaign.shape import NotThat, Scalar, Short, key, many
from reportgen.finding import Place


def cell(text: str) -> tuple[int, int]:
    """`C5` as a spreadsheet names it → line 5, column 3. Raises NotThat."""
    found = re.fullmatch(r"\s*([A-Za-z]{1,3})([1-9][0-9]{0,8})\s*", text)
    if found is None:
        raise NotThat(f"“{text.strip()}” is no cell")
    column = 0
    for letter in found[1].upper():
        column = 26 * column + ord(letter) - ord("A") + 1
    return int(found[2]), column


CellRef = Annotated[
    Given[tuple[int, int]],
    Scalar("a cell of a spreadsheet", cell, r"^\s*[A-Za-z]{1,3}[1-9][0-9]{0,8}\s*$", (1, 1), ("C5",)),
]


@dataclass(frozen=True, kw_only=True)
class WrittenAmendment:
    """A slip of the pen in a raw file, put right without touching the file."""

    at: Place
    file: FilePath = key("The raw file, from the campaign's folder", required=True)
    sheet: Term | None = key("Its sheet, where a spreadsheet has several")
    line: Whole | None = key("The line, as an editor or spreadsheet counts it")
    column: Term | None = key("The heading of the column")
    cell: CellRef | None = key("The cell of a spreadsheet (C5), in place of line and column")
    from_: Cell | None = key("What the file says, just as it stands there; left out for an empty cell")
    to: Term = key("What was meant, in any notation", required=True)
    why: Words = key("How that is known", required=True)
    seen_by: Words | None = key("Who has seen it besides the one who wrote it")


@dataclass(frozen=True, kw_only=True)
class WrittenWhere:
    """One reading among all: whose, on which pass, which column."""

    at: Place
    contender: Name = key("Whose reading it is", required=True)
    reading: Term = key("The heading of its column, or `what` in the bench log", required=True)
    pass_: Term | None = key("Its pass, where there are several")
    part: Term | None = key("Its part, where there are several")
    specimen: Term | None = key("Its specimen, where there are several")
    test: Name | None = key("Its test, where several tests have a reading of that name")
    SHORT: ClassVar[Short] = Short(short.which, short.WHERE_PATTERN, ("ostler, pass 2, canister after",))


@dataclass(frozen=True, kw_only=True)
class WrittenTwoRecords:
    """Two records of one reading that disagree."""

    at: Place
    where: WrittenWhere = key("Which reading: ostler, pass 2, canister after", required=True)
    said: tuple[Term, ...] = many("What the two records say; the file holds one of them", required=True)
    used: Term = key("The one that counts; not known: both stand, and every value between them", required=True)
    because: Words = key("Why that one", required=True)


@dataclass(frozen=True, kw_only=True)
class WrittenAssumption:
    """A name in formulas that nobody measured, and how far off it may be."""

    at: Place
    within: SizeOf = key("How far off it may be, either way", required=True)
    because: Words = key("What makes it fair to assume", required=True)
    value: AmountOf | None = key("The value taken; nothing written is 0")
    alike: YesNo | None = key("yes: one error for all contenders; else each has its own")
