"""Lists of all comparisons by what a reader may look for: the archive's choice for whoever has no scripts."""

from __future__ import annotations

from dataclasses import dataclass, replace

from reportgen.addresses import LISTS, from_to
from reportgen.finding import Finding
from reportgen.pages.told import Page
from reportgen.site.framing import Wide, frame_of
from reportgen.site.wide.facets import Value, facets_of, key_of
from reportgen.site.wide.newest import newest_first
from reportgen.site.wide.uses import Use, uses
from reportgen.site.words import words
from reportgen.theme import Frame, Link, render
from reportgen.wording.sentence import capital


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
                tuple((_term(facet.name, value), _uses(value)) for value in facet.values),
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


def _term(facet: str, value: Value) -> str:
    return capital(value.title) if facet == "kind" else value.title  # a maker writes its name as it likes


def _uses(value: Value) -> tuple[Use, ...]:
    return tuple(_said_once(use, value) for use in uses(LISTS, value.uses))


def _said_once(use: Use, value: Value) -> Use:
    """Where what is meant is called as the line is already, the comparison's title leads to it."""
    if [key_of(test.text) for test in use.tests] != [key_of(value.title)]:
        return use
    return replace(use, campaign=Link(use.campaign.text, use.tests[0].href), tests=())


def _anchor(name: str) -> str:
    return f"by-{name}"
