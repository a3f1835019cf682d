"""Which findings belong on a page, and beside what: an address on it, or words of the author's that stand there."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from reportgen.finding import Finding, Place

if TYPE_CHECKING:
    from reportgen.pages.whereabouts import Whereabouts

LineOf = Callable[[Place], str]  # the text of the author's line at a place, "" where it can't be had

FEWEST_WORDS = 3  # fewer could stand anywhere
TEXTS = (".md", ".yaml", ".yml")
_LINK = re.compile(r"!?\[([^\]]*)\]\([^)]*\)")
_KEY = re.compile(r"^\s*(?:-\s+)?(?:[\w ]+:\s+)?[\"'>|]?")
_MARKS = re.compile(r"[*_`#\"]|^\s*(?:[-+>]|\d+\.)\s")


@dataclass(frozen=True)
class Note:
    """One finding as a page shows it. `anchor` is where on this page it belongs, "" for nowhere in particular;
    `words` are the author's, to be looked for on the page; `here`: it is about something on this page."""

    severity: str
    place: str
    says: str
    why: str
    do: str
    anchor: str = ""
    words: str = ""
    here: bool = False


def notes_on(page: str, findings: Iterable[Finding], where: Whereabouts | None, line_of: LineOf) -> tuple[Note, ...]:
    """Each finding as the page at `page` shows it, those about something on it first."""
    noted = [_note(page, finding, where, line_of) for finding in findings]
    return tuple(sorted(noted, key=lambda note: (note.severity != "error", not note.here)))


def _note(page: str, finding: Finding, where: Whereabouts | None, line_of: LineOf) -> Note:
    ways = where.of(finding) if where else ()
    at_home = [way.partition("#")[2] for way in ways if way.partition("#")[0] == page]
    words = words_of(line_of(finding.place)) if finding.place.line and finding.place.file.endswith(TEXTS) else ""
    return Note(
        finding.severity,
        str(finding.place) if finding.place.file else "",
        finding.says,
        finding.why,
        finding.do,
        next((anchor for anchor in at_home if anchor), ""),
        words,
        bool(at_home),
    )


def words_of(line: str) -> str:
    """The longest run of an author's own words in a line of Markdown or YAML, as a page would show it.

    What the program puts in place of a reference parts two runs. "" where a run is too short to be known again.
    """
    text = _KEY.sub("", line, count=1) if re.match(r"^\s*(?:-\s+)?[\w ]+:(?:\s|$)", line) else line
    runs = _MARKS.sub("", _LINK.sub("\n", text)).split("\n")
    tidied = (" ".join(run.split()).strip(" .,;:'") for run in runs)
    longest = max(tidied, key=len, default="")
    return longest if len(longest.split()) >= FEWEST_WORDS else ""
