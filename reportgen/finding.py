"""What the program has to say about the author's files, and where.

Every room may raise or return these; none of them prints.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

Severity = Literal["error", "warning", "note"]
SEVERITIES: tuple[Severity, ...] = ("error", "warning", "note")


@dataclass(frozen=True, order=True)
class Place:
    """A spot in a file: `file` as a POSIX path from the workspace, line and column from 1 (0: the whole file).

    In a spreadsheet `sheet` is set, and line and column are those of a cell: `raw/day.xlsx, sheet Bench, cell C5`.
    """

    file: str
    line: int = 0
    column: int = 0
    sheet: str = ""

    def __str__(self) -> str:
        if self.sheet:
            return ", ".join(filter(None, (self.file, f"sheet {self.sheet}", self.cell)))
        return ":".join([self.file, *(str(n) for n in (self.line, self.column) if n)])

    @property
    def cell(self) -> str:
        """Its spot as a spreadsheet names it: `cell C5`, `row 5`, or "" for the whole sheet."""
        if not self.line:
            return ""
        return f"cell {letters(self.column)}{self.line}" if self.column else f"row {self.line}"


def letters(column: int) -> str:
    """A column from 1 as a spreadsheet names it: 1 is A, 27 is AA."""
    name = ""
    while column:
        column, rest = divmod(column - 1, 26)
        name = chr(ord("A") + rest) + name
    return name


@dataclass(frozen=True)
class Finding:
    """One thing to tell the author: what is wrong (`says`), why it matters (`why`) and what to do (`do`).

    `rule` names the check in words that stay (``unread-column``); an author's `accept:` refers to it.
    `subject` is the campaign's address for what it concerns, such as ``test/gas-burned`` (empty: the whole).
    `contender` narrows it, as a caveat is narrowed. `accepted` carries the author's reason once given.
    """

    severity: Severity
    rule: str
    place: Place
    says: str
    why: str = ""
    do: str = ""
    subject: str = ""
    contender: str = ""
    accepted: str = ""


class Refused(Exception):
    """The author's files can't be used as they stand; carries every finding known so far, never none."""

    def __init__(self, findings: Iterable[Finding]) -> None:
        self.findings = tuple(findings)
        super().__init__("; ".join(f"{f.place}: {f.says}" for f in self.findings))


def unseen_characters(text: str) -> str:
    """A sentence on the first character of `text` that prints as nothing or as a space; "" where there is none.

    Format characters and spaces other than the plain one (Unicode, categories Cf and Zs).
    """
    for character in text:
        if unicodedata.category(character) in ("Cf", "Zs") and character != " ":
            name = unicodedata.name(character, "unnamed").lower()
            return f"There is a character that can't be seen: {name} (U+{ord(character):04X})."
    return ""


def refuse(rule: str, place: Place, says: str, why: str = "", do: str = "") -> Refused:
    """One error, ready to raise."""
    return Refused([Finding("error", rule, place, says, why, do)])


def in_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Errors first, then warnings, then notes; by place inside each."""
    return tuple(sorted(findings, key=lambda f: (SEVERITIES.index(f.severity), f.place, f.rule, f.says)))
