"""The sections of a page, read from its text as it is set: what its contents name, and where these stand."""

from __future__ import annotations

import re
from dataclasses import dataclass

from markupsafe import Markup

from reportgen.theme.frame import Link

FEWEST = 3  # sections that want contents
PLACE = "<!-- contents -->"  # where a template wants them; else they stand under the title


@dataclass(frozen=True)
class Sectioned:
    """A text, parted where its contents are to stand; `sections` are none where they are few."""

    opening: str
    rest: str
    sections: tuple[Link, ...]


_HEADING = re.compile(
    r'<(h2)\b[^>]*?\bid="([^"]+)"[^>]*>(.*?)</\1>|<div\b[^>]*?\bid="([^"]+)" data-section="([^"]+)">', re.DOTALL
)
_TITLE_ENDS = re.compile(r"</(?:h1)\s*>")
_UNSAID = re.compile(r'<(sup)\b.*?</\1>|<(span) class="unseen">.*?</\2>', re.DOTALL)


def sections_of(markup: str) -> Sectioned:
    """The text of a page with what its headings of the second level name, and `data-section` where there is none."""
    title = _TITLE_ENDS.search(markup)
    place = markup.find(PLACE)
    at = place if place >= 0 else title.end() if title else 0
    found = tuple(
        Link(Markup(_UNSAID.sub("", words or named)).striptags(), f"#{id or bare}")
        for _, id, words, bare, named in _HEADING.findall(markup)
    )
    return Sectioned(markup[:at], markup[at:].removeprefix(PLACE), found if len(found) >= FEWEST else ())
