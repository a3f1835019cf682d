"""Where a number comes from, as links: first to its working on the test's page, from there to the row or cell."""

from __future__ import annotations

import posixpath
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from urllib.parse import quote

from reportgen.addresses import as_id, from_to, raw_file, result_anchor, test_page
from reportgen.campaign.declared import Campaign
from reportgen.finding import Place, letters
from reportgen.intake.raw.rows import RawView
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.wording.listing import commas

LINES, ROWS = 500, 100  # of a text and of a sheet on one leaf: what a slow line brings in a second


@dataclass(frozen=True)
class LineLink:
    """A place in a raw file: as printed, and the way to it."""

    text: str
    href: str


def working(campaign: Campaign, page: str, test: str, quantity: str, contender: str, part: str = "") -> str:
    """From `page` to the working of a result."""
    return from_to(page, f"{test_page(campaign.id, test)}#{result_anchor(quantity, contender, part)}")


def in_campaign(campaign: Campaign, path: str) -> str:
    """A file's path from the workspace, as seen from the campaign's folder."""
    return posixpath.relpath(path, campaign.folder or ".")


def leaf_of(view: RawView, line: int) -> int:
    """The first row of the leaf that a row stands on, of its file or sheet. It depends on the row's number alone, so
    that the row's address lasts whatever else is shown.
    """
    rows = LINES if view.form == "text" else ROWS
    return (max(line, 1) - 1) // rows * rows + 1


def listing_page(campaign: Campaign, path: str, sheet: str = "", leaf: int = 1) -> str:
    """The address of the page that shows a raw file (path from the workspace), row by row; of a long one, a leaf of it.

    `sheet` is the sheet's anchor, `leaf` the first row that belongs there.
    """
    name = raw_file(campaign.id, in_campaign(campaign, path))
    return f"{name}.html" if leaf == 1 else f"{'.'.join(filter(None, (name, sheet, str(leaf))))}.html"


def file_link(page: str, address: str, anchor: str = "") -> str:
    """From `page` to a file on the site whose name may hold anything: written as RFC 3986 asks (2.1)."""
    return from_to(page, quote(address) + (f"#{anchor}" if anchor else ""))


def sheet_anchors(names: Iterable[str]) -> Mapping[str, str]:
    """The anchor of each sheet, different for each: its name as an id, or its number where that gives none."""
    found: dict[str, str] = {}
    for n, name in enumerate(names, 1):
        anchor = as_id(name) if name else ""
        found[name] = anchor if not name or (anchor and anchor not in found.values()) else f"sheet-{n}"
    return found


def row_anchor(sheet: str, line: int) -> str:
    """A row's anchor: `L12`, on a sheet `bench-L12`. `sheet` is the sheet's own anchor, "" where a file has none."""
    return "-".join(filter(None, (sheet, f"L{line}")))


def cell_anchor(sheet: str, line: int, column: int) -> str:
    """The anchor of a spreadsheet's cell: `bench-C5`."""
    return f"{sheet}-{letters(column)}{line}"


def anchor_of(told: Told, place: Place) -> str:
    """Where `place` is found on its file's page; "" for the whole file."""
    sheet = sheet_anchors(s.name for s in told.raw_views[place.file].sheets).get(place.sheet, "")
    if not place.line:
        return sheet
    return cell_anchor(sheet, place.line, place.column) if sheet and place.column else row_anchor(sheet, place.line)


def line_link(told: Told, page: str, place: Place) -> LineLink:
    """From `page` to a row or cell of a raw file: on the file's page where there is one, else to the file itself."""
    campaign = told.campaign
    name = in_campaign(campaign, place.file)
    if place.file in told.raw_views:
        view = told.raw_views[place.file]
        sheet = sheet_anchors(s.name for s in view.sheets).get(place.sheet, "")
        there = listing_page(campaign, place.file, sheet, leaf_of(view, place.line))
        return LineLink(_words(told, name, place), file_link(page, there, anchor_of(told, place)))
    return LineLink(_words(told, name, place), file_link(page, raw_file(campaign.id, name)))


def _words(told: Told, name: str, place: Place) -> str:
    """`raw/gas.csv, line 12`; `raw/day.xlsx, sheet Bench, cell C5`; a whole file by its name alone."""
    view = told.raw_views.get(place.file)
    sheet = words("place.sheet", name=place.sheet) if place.sheet else ""
    if not place.line:
        spot = ""
    elif place.sheet and place.column:
        spot = words("place.cell", cell=f"{letters(place.column)}{place.line}")
    else:
        spot = words("place.line" if view is None or view.form == "text" else "place.row", n=str(place.line))
    return commas([*filter(None, (name, sheet, spot))])
