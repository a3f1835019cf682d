"""The data page: every raw file with its checksum, and everything computed."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import PurePosixPath

from reportgen.addresses import campaign_page, from_to, raw_file, results_file, test_page
from reportgen.intake.reading import RawFile
from reportgen.pages.framing import frame_of
from reportgen.pages.titles import heading
from reportgen.pages.told import Page, Told
from reportgen.pages.traces import in_campaign, listing_page
from reportgen.pages.words import words
from reportgen.theme import Frame, Link, render
from reportgen.wording.count import whole


@dataclass(frozen=True)
class FileShown:
    """A raw file. `listed` leads to its numbered lines, "" where it has none; `unread` are headings never asked for.

    `saved_as` is its name without folders.
    """

    name: str
    saved_as: str
    href: str
    listed: str
    digest: str
    size: str
    rows: str
    used_by: tuple[Link, ...]
    unread: tuple[str, ...]


@dataclass(frozen=True)
class DataView:
    """What the template `data.html` is told."""

    frame: Frame
    title: str
    files: tuple[FileShown, ...]
    results: str
    readings: str
    licence: str


def data_pages(told: Told) -> tuple[Page, ...]:
    """The one data page."""
    page = campaign_page(told.campaign.id, "data")
    return (Page(page, render(told.theme, "data.html", data_view(told), page)),)


def data_view(told: Told) -> DataView:
    """The view of the campaign's data page."""
    page = campaign_page(told.campaign.id, "data")
    return DataView(
        frame=frame_of(told, page, words("data.title"), words("data.description", campaign=told.campaign.title)),
        title=words("data.title"),
        files=tuple(_file(told, page, f) for f in told.readings.files),
        results=from_to(page, results_file(told.campaign.id)),
        readings=whole(len(told.readings.readings)),
        licence=told.publication.licence,
    )


def _file(told: Told, page: str, f: RawFile) -> FileShown:
    campaign = told.campaign
    name = in_campaign(campaign, f.path)
    tests = dict.fromkeys(k.test for k, r in told.readings.readings.items() if r.at.file == f.path)
    text = told.texts.get(f.path)
    return FileShown(
        name=name,
        saved_as=PurePosixPath(name).name,
        href=from_to(page, raw_file(campaign.id, name)),
        listed=from_to(page, listing_page(campaign, f.path)) if text is not None else "",
        digest=f.digest,
        size=whole(f.size),
        rows=whole(len(text.splitlines())) if text is not None else "",
        used_by=tuple(
            Link(heading(t), from_to(page, test_page(campaign.id, t.id))) for t in campaign.tests if t.id in tests
        ),
        unread=f.unread,
    )
