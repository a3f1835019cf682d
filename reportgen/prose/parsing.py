"""CommonMark, read by one parser set up one way: tables allowed, raw HTML not."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING
from urllib.parse import unquote

from reportgen.finding import Place
from reportgen.wording.apostrophe import typeset

if TYPE_CHECKING:
    from markdown_it import MarkdownIt
    from markdown_it.token import Token


@cache
def parser() -> MarkdownIt:
    """The parser. CommonMark 0.31 with tables; a tag typed in a text is shown as it was typed, an apostrophe as a
    printer sets it but for code."""
    from markdown_it import MarkdownIt

    made = MarkdownIt("commonmark", {"html": False}).enable("table")
    made.add_render_rule("text", _printed)
    return made


def _printed(_: object, found: Sequence[Token], at: int, *__: object) -> str:
    from markdown_it.common.utils import escapeHtml

    return escapeHtml(typeset(found[at].content))


@dataclass(frozen=True)
class Mark:
    """A link or picture of a text: its address as typed, the words in brackets, and where it stands."""

    address: str
    words: str
    place: Place
    picture: bool


def tokens(text: str) -> list[Token]:
    """The text's tokens. A byte order mark or a null never reaches the parser's output as such."""
    return parser().parse(text)


class Spots:
    """Finds the line and column of each link's and picture's opening bracket, in reading order.

    The parser gives lines for blocks alone, so the block's lines are searched for the address as it was typed; a
    search goes on behind the last hit, so that two links to one address have two places.
    """

    def __init__(self, path: str, text: str, first_line: int = 1) -> None:
        self._path, self._lines, self._first_line = path, text.splitlines(), first_line
        self._behind: dict[str, tuple[int, int]] = {}

    def place(self, address: str, block: list[int] | None) -> Place:
        """The place of the next link to `address` inside a block (from line, to line), or of the block."""
        typed = next((a for a in (address, unquote(address)) if any(a in line for line in self._lines)), address)
        start, end = block or [0, len(self._lines)]
        from_line, from_column = self._behind.get(typed, (start, 0))
        for number in range(max(start, from_line), min(end, len(self._lines))):
            column = self._lines[number].find(typed, from_column if number == from_line else 0)
            if column >= 0:
                self._behind[typed] = (number, column + len(typed))
                return Place(self._path, number + self._first_line, _bracket(self._lines[number], column) + 1)
        return Place(self._path, start + self._first_line)


def _bracket(line: str, column: int) -> int:
    """Where the link begins whose address stands at `column`: its `[`, or the `!` before it."""
    opening = [m.start() for m in re.finditer(r"!?\[", line[:column])]
    return opening[-1] if opening else column


def marks(path: str, text: str) -> Iterator[Mark]:
    """Every link and picture of a text, in order."""
    spots = Spots(path, text)
    for block in tokens(text):
        children = block.children or []
        for n, child in enumerate(children):
            if child.type == "image":
                address = str(child.attrGet("src") or "")
                yield Mark(address, child.content, spots.place(address, block.map), True)
            elif child.type == "link_open":
                address = str(child.attrGet("href") or "")
                yield Mark(address, words_within(children, n), spots.place(address, block.map), False)


def words_within(children: list[Token], opening: int) -> str:
    """The plain words of a link that opens at an index."""
    words = []
    for child in children[opening + 1 :]:
        if child.type == "link_close":
            break
        words.append(child.content)
    return "".join(words)
