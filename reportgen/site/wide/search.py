"""The page on which a reader searches everything. It puts nothing into words by itself: sentences are written here."""

from __future__ import annotations

import json
from dataclasses import dataclass

from reportgen.addresses import SEARCH
from reportgen.finding import Finding, Place
from reportgen.pages.told import Page
from reportgen.site.framing import Wide, frame_of
from reportgen.site.searching import available
from reportgen.site.wide.lists import ways_to_lists
from reportgen.site.words import words, words_of
from reportgen.theme import Frame, Link, render
from reportgen.wording.count import whole

TOLD = 100  # pages found up to which their number is said


@dataclass(frozen=True)
class SearchView:
    """What `wide/search.html` is told. `made`: there is something to search in. `said` and `of` are JSON: a sentence
    for each number of pages found, the last for more; and the title of each campaign by its folder."""

    frame: Frame
    title: str
    made: bool
    ways: tuple[Link, ...]
    said: str
    of: str


def search_page(wide: Wide) -> tuple[tuple[Page, ...], tuple[Finding, ...]]:
    """The one page; none where there is nothing to look for. A note where it can't be searched."""
    if not wide.cards:
        return (), ()
    title = words("search")
    said = [words("search.none"), *(words_of(n, "search.found", n=whole(n)) for n in range(1, TOLD + 1))]
    view = SearchView(
        frame=frame_of(wide, SEARCH, title),
        title=title,
        made=available(),
        ways=ways_to_lists(wide, SEARCH),
        said=_json([*said, words("search.more", n=whole(TOLD))]),
        of=_json({card.id: card.title for card in sorted(wide.cards, key=lambda c: c.id)}),
    )
    page = Page(SEARCH, render(wide.theme, "wide/search.html", view, SEARCH))
    return (page,), () if view.made else (_note(),)


def _note() -> Finding:
    says = "the site is made without its search: the program that makes the index isn't there"
    why = "It is the package pagefind-bin, which has been made for the usual systems alone."
    do = "Where pip finds it for yours: pip install pagefind-bin. The lists of the archive serve without it."
    return Finding("note", "no-search", Place("content/publication.yaml"), says, why, do)


def _json(of: object) -> str:
    return json.dumps(of, ensure_ascii=False, separators=(",", ":"))
