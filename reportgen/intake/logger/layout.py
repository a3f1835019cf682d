"""How a logger laid its file out, told from its head: what separates cells, where the headings stand, units, first row.

Loggers write lines of their own above the headings; the heading line is the first that holds the most of what the
campaign asks for and has numbers or times below it.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, cached_property

from reportgen.finding import Place, Refused, refuse
from reportgen.intake.logger.clock import NUMBER
from reportgen.intake.table import did_you_mean, key, spelt, without_unit

SEPARATORS = (",", ";", "\t")
DEEPEST = 300  # lines above the headings, at most
_DATUM = re.compile(rf"\s*(?:{NUMBER}|[0-9]{{1,4}}[:/.-][0-9]{{1,2}}[:/.-].*|[0-9]+:[0-9]+.*|over\b.*|under\b.*|OL)\s*")


@dataclass(frozen=True)
class Layout:
    """`units` stand beside or below the headings, "" where none does. `first` is the line of the first sample.

    `sample` are the first rows of samples, each with as many cells as `width`.
    """

    file: str
    separator: str
    heading_line: int
    headings: tuple[str, ...]
    units: tuple[str, ...]
    first: int
    width: int
    sample: tuple[tuple[str, ...], ...]

    def find(self, heading: str) -> int | None:
        """The index of a heading: as written to the letter, else in other letters, or with its unit beside it in
        brackets or behind a comma. None where there is none, or where several could be meant."""
        to_the_letter, otherwise = self._named
        found = to_the_letter.get(heading.strip()) or otherwise.get(key(heading), [])
        return found[0] if len(found) == 1 else None

    @cached_property
    def _named(self) -> tuple[Mapping[str, list[int]], Mapping[str, list[int]]]:
        """Indices by heading as written, and by any name it goes by: there may be ten thousand of them."""
        to_the_letter: dict[str, list[int]] = {}
        otherwise: dict[str, list[int]] = {}
        for i, heading in enumerate(self.headings):
            to_the_letter.setdefault(heading, []).append(i)
            for name in {key(heading), _bare(heading)}:
                otherwise.setdefault(name, []).append(i)
        return to_the_letter, otherwise

    def cells(self, index: int) -> tuple[str, ...]:
        """A column of the sample."""
        return tuple(row[index].strip() for row in self.sample)


def layout_of(head: str, file: str, wanted: Collection[str]) -> Layout:
    """`head` is the beginning of the file's text, in whole lines. Raises `Refused` where no headings are there."""
    if not head.strip():
        raise refuse(
            "empty-table",
            Place(file),
            "This logger file is empty.",
            "An empty file can mean a lost one.",
            "Put the whole file there, or list its contender under `not yet tested:`.",
        )
    lines = re.split(r"\r\n|\n|\r", head)
    found = [_Candidate(s, i, cells) for s in SEPARATORS for i, cells in _rows(lines[:DEEPEST], s)]
    names = {key(w) for w in wanted if w}
    hits = cache(lambda cells: len(names.intersection(n for c in cells for n in (key(c), _bare(c)))))
    scored = [(hits(one.cells), one) for one in found]
    most = max((met for met, _ in scored), default=0)
    if not most:
        raise _open_quotes(lines, file) or _no_headings(lines, file, found, wanted)
    best = [one for met, one in scored if met == most]
    best = [one for one in best if _below(lines, one)] or best
    widest = max(len(one.cells) for one in best)
    one = next(c for c in best if len(c.cells) == widest or c.separator == best[0].separator)
    if quotes := _open_quotes(lines[: one.index], file):
        raise quotes
    headings = one.cells
    below = [(i, cells) for i, cells in _rows(lines[one.index + 1 :], one.separator)]
    units = tuple(_unit_beside(h) for h in headings)
    if below and not any(_DATUM.fullmatch(c) for c in below[0][1]) and any(below[0][1]):
        under = below.pop(0)[1]
        units = tuple((c.strip("[]() ") or units[i]) if i < len(units) else "" for i, c in enumerate(under))
        units = (*units, *("" for _ in headings[len(units) :]))
    if not below:
        raise refuse(
            "empty-table",
            Place(file, one.index + 1),
            "There is no sample below the headings of this logger file.",
            "An empty file can mean a lost one.",
            "Put the whole file there, or list its contender under `not yet tested:`.",
        )
    width = len(below[0][1])
    rows = tuple(cells for _, cells in below[:200] if len(cells) == width)
    return Layout(file, one.separator, one.index + 1, headings, units, one.index + 2 + below[0][0], max(width, 1), rows)


@dataclass(frozen=True)
class _Candidate:
    separator: str
    index: int
    cells: tuple[str, ...]


def _rows(lines: Sequence[str], separator: str) -> list[tuple[int, tuple[str, ...]]]:
    """Lines that aren't empty with their index, split; a line whose quotes don't fit is one cell."""
    found = []
    for i, line in enumerate(lines):
        if not line.strip():
            continue
        try:
            cells = next(csv.reader([line], delimiter=separator, strict=True), [])
        except csv.Error:
            cells = [line]
        found.append((i, tuple(c.strip() for c in cells)))
    return found


def _below(lines: Sequence[str], one: _Candidate) -> bool:
    """Whether one of the next two rows holds a number or time."""
    rows = _rows(lines[one.index + 1 : one.index + 6], one.separator)[:2]
    return any(_DATUM.fullmatch(c) for _, cells in rows for c in cells)


def _bare(heading: str) -> str:
    """The heading without the unit in brackets or behind a comma, as names are compared."""
    name, unit = without_unit(heading)
    return key(name if unit else heading.rpartition(",")[0] or heading)


def _unit_beside(heading: str) -> str:
    _, unit = without_unit(heading)
    return unit or (heading.rpartition(",")[2].strip() if "," in heading else "")


def _no_headings(lines: Sequence[str], file: str, found: Sequence[_Candidate], wanted: Collection[str]) -> Refused:
    asked = [w for w in wanted if w]
    likely = max((c for c in found if _below(lines, c)), key=lambda c: len(c.cells), default=None)
    there = [c for c in likely.cells if c] if likely else []
    near = next((n for w in asked if (n := did_you_mean(w, there))), "")
    where = f"the first {DEEPEST} lines of this logger file" if len(lines) > DEEPEST else "this logger file"
    return refuse(
        "missing-column",
        Place(file, likely.index + 1 if likely else 0),
        f"There is no heading {spelt(asked[:1])} in {where}, nor the name of a contender"
        + (f"; there are {spelt(there)}." if there else "."),
        "Its samples can't be told from one another.",
        f"Did you mean “{near}”?" if near else "Name the channel's heading under `columns:`, as the file has it.",
    )


def _open_quotes(lines: Sequence[str], file: str) -> Refused | None:
    """A line whose quotes don't close: all that comes below could belong to its cell."""
    for number, line in enumerate(lines[:DEEPEST], 1):
        cells = re.split("[" + "".join(SEPARATORS) + "]", line)
        if any(c.lstrip().startswith('"') for c in cells) and line.count('"') % 2:
            return refuse(
                "quotes",
                Place(file, number),
                "The quotes in this line don't fit.",
                "Where a cell ends can't be known.",
                "Close the quotation mark in a copy of the file and say so, or export it again.",
            )
    return None
