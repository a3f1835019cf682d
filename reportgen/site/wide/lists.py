"""Lists of all comparisons by what a reader may look for: the archive's choice for whoever has no scripts."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import LISTS, from_to
from reportgen.finding import Finding
from reportgen.pages.told import Page
from reportgen.site.framing import Wide, frame_of
from reportgen.site.wide.facets import facets_of
from reportgen.site.wide.newest import newest_first
from reportgen.site.wide.uses import Use, uses
from reportgen.site.words import words
from reportgen.theme import Frame, Link, render


@dataclass(frozen=True)
class ListShown:
    """One list: its anchor, its title, and each line's term with the comparisons that have it."""

    anchor: str
    title: str
    lines: tuple[tuple[str, tuple[Use, ...]], ...]


@dataclass(frozen=True)
class ListsView:
    """What `wide/lists.html` is told; `ways` lead to the lists."""

    frame: Frame
    title: str
    ways: tuple[Link, ...]
    lists: tuple[ListShown, ...]


def lists_page(wide: Wide) -> tuple[tuple[Page, ...], tuple[Finding, ...]]:
    """The one page; none where there is nothing to look for."""
    facets = facets_of(newest_first(wide.cards))
    if not facets:
        return (), ()
    title = words("lists")
    view = ListsView(
        frame=frame_of(wide, LISTS, title, words("lists.description")),
        title=title,
        ways=ways_to_lists(wide, LISTS),
        lists=tuple(
            ListShown(
                _anchor(facet.name),
                words(f"lists.{facet.name}"),
                tuple((value.title, uses(LISTS, value.uses)) for value in facet.values),
            )
            for facet in facets
        ),
    )
    return (Page(LISTS, render(wide.theme, "wide/lists.html", view, LISTS)),), ()


def ways_to_lists(wide: Wide, page: str) -> tuple[Link, ...]:
    """The ways from `page` to each of the lists."""
    return tuple(
        Link(words(f"lists.{facet.name}"), from_to(page, f"{LISTS}#{_anchor(facet.name)}"))
        for facet in facets_of(wide.cards)
    )


def _anchor(name: str) -> str:
    return f"by-{name}"
