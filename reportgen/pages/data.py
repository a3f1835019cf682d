"""The data page: tables for others to take, how to check and cite them, every raw file and what was read from it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from reportgen.addresses import campaign_page, from_to, raw_file, test_page
from reportgen.intake.raw.rows import RawView
from reportgen.intake.reading import RawFile, Reading
from reportgen.pages.framing import frame_of
from reportgen.pages.offered import Offered, offered
from reportgen.pages.titles import heading
from reportgen.pages.told import Page, Told
from reportgen.pages.traces import file_link, in_campaign, listing_page
from reportgen.pages.words import words, words_of
from reportgen.theme import Frame, Link, render
from reportgen.wording.count import whole
from reportgen.wording.file_size import file_size


@dataclass(frozen=True)
class FileShown:
    """A raw file. `listed` leads to its rows, "" where it has none; `unread` are headings never asked for.

    `form` says what it is, `rows` how long, `series` which channels of a logger
    were read.
    """

    name: str
    href: str
    listed: str
    listed_as: str
    form: str
    digest: str
    size: str
    rows: str
    sheets: tuple[str, ...]
    series: tuple[str, ...]
    used_by: tuple[Link, ...]
    unread: tuple[str, ...]


@dataclass(frozen=True)
class AttachmentShown:
    """A laboratory's report or another attachment that readings were taken from, with its pages."""

    name: str
    href: str
    pages: tuple[Link, ...]
    used_by: tuple[Link, ...]


@dataclass(frozen=True)
class DataView:
    """What the template `data.html` is told."""

    frame: Frame
    title: str
    readings: int
    readings_printed: str
    offered: Offered
    files: tuple[FileShown, ...]
    attachments: tuple[AttachmentShown, ...]


def data_pages(told: Told) -> tuple[Page, ...]:
    """The one data page."""
    page = campaign_page(told.campaign.id, "data")
    return (Page(page, render(told.theme, "data.html", data_view(told), page)),)


def data_view(told: Told) -> DataView:
    """The view of the campaign's data page: tables first, then what loggers wrote."""
    page = campaign_page(told.campaign.id, "data")
    shown = [_file(told, page, f) for f in told.readings.files]
    readings = len({r.at if r.for_all else key for key, r in told.readings.readings.items()})
    return DataView(
        frame=frame_of(told, page, words("data.title"), words("data.description", campaign=told.campaign.title)),
        title=words("data.title"),
        readings=readings,
        readings_printed=whole(readings),
        offered=offered(told, page),
        files=tuple(sorted(shown, key=lambda f: bool(f.series))),
        attachments=_attachments(told, page),
    )


def _file(told: Told, page: str, f: RawFile) -> FileShown:
    campaign = told.campaign
    name = in_campaign(campaign, f.path)
    mine = [r for r in told.readings.readings.values() if r.at.file == f.path]
    series = tuple(
        dict.fromkeys(
            words("data.series", channel=r.series.heading, first=str(r.series.first), last=str(r.series.last),
                  samples=whole(r.series.samples))
            for r in mine if r.series is not None
        )
    )  # fmt: skip
    view = told.raw_views.get(f.path)
    form = "logger" if series and f.form == "text" else "yaml" if name.endswith((".yaml", ".yml")) else f.form
    return FileShown(
        name=name,
        href=file_link(page, raw_file(campaign.id, name)),
        listed=file_link(page, listing_page(campaign, f.path)) if view is not None else "",
        listed_as=words(f"data.listed.{f.form}"),
        form=words(f"data.form.{form}"),
        digest=f.digest,
        size=file_size(f.size),
        rows=_rows(f.form, view) if view is not None else "",
        sheets=tuple(s.name for s in view.sheets if s.name) if view is not None else (),
        series=series,
        used_by=_tests(told, page, mine),
        unread=f.unread,
    )


def _rows(form: str, view: RawView) -> str:
    total = sum(s.total for s in view.sheets)
    return words_of(total, f"data.rows.{form}", n=whole(total))


def _tests(told: Told, page: str, readings: Iterable[Reading]) -> tuple[Link, ...]:
    read = {r.key.test for r in readings}
    campaign = told.campaign
    return tuple(Link(heading(t), from_to(page, test_page(campaign.id, t.id))) for t in campaign.tests if t.id in read)


def _attachments(told: Told, page: str) -> tuple[AttachmentShown, ...]:
    """Each attachment that readings name, by name, with the pages they stand on."""
    campaign = told.campaign
    found: dict[str, list[Reading]] = {}
    for r in told.readings.readings.values():
        if r.attachment:
            found.setdefault(r.attachment, []).append(r)
    made = []
    for name in sorted(found):
        address = raw_file(campaign.id, name)
        numbers = sorted({r.page for r in found[name] if r.page is not None})
        pages = tuple(Link(words("place.page", n=str(n)), file_link(page, address, f"page={n}")) for n in numbers)
        made.append(AttachmentShown(name, file_link(page, address), pages, _tests(told, page, found[name])))
    return tuple(made)
