"""What changed since the campaign was first issued."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import campaign_page
from reportgen.pages.framing import frame_of
from reportgen.pages.told import Page, Told
from reportgen.pages.words import words
from reportgen.prose.specimens import day_of
from reportgen.theme import Frame, render


@dataclass(frozen=True)
class ChangesView:
    """What the template `changes.html` is told; newest line first."""

    frame: Frame
    title: str
    lines: tuple[str, ...]


def changes_pages(told: Told) -> tuple[Page, ...]:
    """The one page of changes."""
    page = campaign_page(told.campaign.id, "changes")
    return (Page(page, render(told.theme, "changes.html", changes_view(told), page)),)


def changes_view(told: Told) -> ChangesView:
    """The view of the page of changes."""
    page = campaign_page(told.campaign.id, "changes")
    published = told.campaign.published
    line = words("changes.first-on", n=str(told.issue), date=day_of(published)) if published else ""
    return ChangesView(
        frame=frame_of(told, page, words("changes.title")),
        title=words("changes.title"),
        lines=(line or words("changes.first", n=str(told.issue)),),
    )
