"""A raw file, row by row as it stands: where every trace ends."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from reportgen.addresses import campaign_page, from_to, raw_file
from reportgen.finding import letters
from reportgen.intake.raw.rows import RawRow, RawSheet, RawView
from reportgen.intake.reading import RawFile
from reportgen.pages.framing import frame_of
from reportgen.pages.leaves import Leaf, leaf_words, leaves_of
from reportgen.pages.struck import Piece, Slip, slips_in, struck_cell, struck_line
from reportgen.pages.told import Page, Told
from reportgen.pages.traces import cell_anchor, file_link, in_campaign, listing_page, row_anchor, sheet_anchors
from reportgen.pages.words import words
from reportgen.theme import Frame, Link, render
from reportgen.wording.count import whole


@dataclass(frozen=True)
class ListedCell:
    """One cell (a whole line of a text file). `anchor` is "" where only its row has one; `used`: it was read."""

    anchor: str
    pieces: tuple[Piece, ...]
    used: bool


@dataclass(frozen=True)
class ListedRow:
    """`anchor` is L1, L2 … (`bench-L1` on a sheet), as links name it; `used` says whether a reading came from this row.

    `gap` says what of the file is left out before it, "" where nothing is.
    """

    number: str
    anchor: str
    cells: tuple[ListedCell, ...]
    used: bool
    gap: str


@dataclass(frozen=True)
class ListedSheet:
    """A sheet with its columns' letters, a Parquet file with its columns' names, or the lines of a text."""

    name: str
    anchor: str
    columns: tuple[str, ...]
    beyond: str
    rows: tuple[ListedRow, ...]
    empty: str
    rest: str  # what is left out between the last row here and the next page of the file


@dataclass(frozen=True)
class ListingView:
    """What the template `listing.html` is told. `part` says that not all of a long file is here, "" where it is.

    `leaves` lead to the pages that a long file fills, none where it is one.
    """

    frame: Frame
    name: str
    file: str
    digest: str
    is_text: bool
    form: str
    part: str
    slips: tuple[str, ...]
    sheets: tuple[ListedSheet, ...]
    leaves: tuple[Link, ...]


def listing_pages(told: Told) -> tuple[Page, ...]:
    """One page a raw file that can be shown; a long one fills several."""
    made = []
    for f in told.readings.files:
        for leaf in leaves_of(told.raw_views[f.path]) if f.path in told.raw_views else ():
            page = listing_page(told.campaign, f.path, leaf.sheet, leaf.first)
            made.append(Page(page, render(told.theme, "listing.html", listing_view(told, f, leaf), page)))
    return tuple(made)


def listing_view(told: Told, file: RawFile, leaf: Leaf) -> ListingView:
    """The view of one leaf of a raw file."""
    campaign, view = told.campaign, told.raw_views[file.path]
    page = listing_page(campaign, file.path, leaf.sheet, leaf.first)
    name = in_campaign(campaign, file.path)
    data = Link(words("data.title"), from_to(page, campaign_page(campaign.id, "data")))
    anchors = sheet_anchors(s.name for s in view.sheets)
    used = _used(told, file.path)
    slips = slips_in(told, file.path)
    return ListingView(
        frame=frame_of(told, page, _title(view, name, leaf), trail=(data,)),
        name=name,
        file=file_link(page, raw_file(campaign.id, name)),
        digest=file.digest,
        is_text=view.form == "text",
        form=view.form,
        part=_part(view),
        slips=tuple(slip.says for slip in slips),
        sheets=tuple(
            _sheet(sheet, anchors[sheet.name], view.form == "text", used, slips, before, after)
            for sheet, before, after in leaf.shown(view, anchors)
        ),
        leaves=_leaves(told, file, page),
    )


def _title(view: RawView, name: str, leaf: Leaf) -> str:
    title = words(f"listing.title.{view.form}", file=name)
    return title if leaf.first == 1 else words("listing.leaf.title", title=title, rows=leaf_words(view, leaf))


def _leaves(told: Told, file: RawFile, page: str) -> tuple[Link, ...]:
    """The ways to all leaves of the file; none where it is one page."""
    view = told.raw_views[file.path]
    leaves = leaves_of(view)
    if len(leaves) < 2:
        return ()
    to = [listing_page(told.campaign, file.path, leaf.sheet, leaf.first) for leaf in leaves]
    return tuple(
        Link(leaf_words(view, leaf), file_link(page, there), there == page)
        for leaf, there in zip(leaves, to, strict=True)
    )


def _part(view: RawView) -> str:
    if view.whole:
        return ""
    shown, total = sum(len(s.rows) for s in view.sheets), sum(s.total for s in view.sheets)
    return words(f"listing.part.{view.form}", shown=whole(shown), total=whole(total))


def _used(told: Told, path: str) -> Mapping[tuple[str, int], frozenset[int]]:
    """Sheet and row → the columns that were read, 0 for one unknown; of a series, its first and last line too."""
    found: dict[tuple[str, int], set[int]] = {}
    for r in told.readings.readings.values():
        if r.at.file == path:
            found.setdefault((r.at.sheet, r.at.line), set()).add(r.at.column)
        named_in = r.series.named_in if r.series is not None else None
        if named_in is not None and named_in.file == path:
            found.setdefault((named_in.sheet, named_in.line), set()).add(named_in.column)
        if r.series is not None and r.series.file == path:
            for line in (r.series.first, r.series.last):
                found.setdefault(("", line), set()).add(0)
    keys = {r.key for r in told.readings.readings.values() if r.series is not None and r.series.file == path}
    for mark in (m for trace in told.evaluation.traces if trace.key in keys for m in trace.marks):
        found.setdefault(("", mark.line), set()).add(0)
    return {spot: frozenset(columns) for spot, columns in found.items()}


def _sheet(
    sheet: RawSheet,
    anchor: str,
    is_text: bool,
    used: Mapping[tuple[str, int], frozenset[int]],
    slips: tuple[Slip, ...],
    before: int,
    after: int,
) -> ListedSheet:
    width = max((len(row.cells) for row in sheet.rows), default=0)
    rows = []
    for row in sheet.rows:
        read = used.get((sheet.name, row.number), frozenset())
        mine = tuple(s for s in slips if (s.at.sheet, s.at.line) == (sheet.name, row.number))
        cells = (_line(row, read, mine),) if is_text else tuple(_cells(row, width, anchor, read, mine))
        rows.append(
            ListedRow(
                str(row.number),
                row_anchor(anchor, row.number),
                cells,
                bool(read),
                _gap(before + 1, row.number - 1),
            )
        )
        before = row.number
    columns = sheet.headings or (() if is_text else tuple(letters(n) for n in range(1, width + 1)))
    rest = _gap(before + 1, after - 1) if after else ""
    beyond = words("listing.beyond", n=whole(sheet.beyond)) if sheet.beyond else ""
    return ListedSheet(sheet.name, anchor, columns, beyond, tuple(rows), "" if rows else words("listing.empty"), rest)


def _gap(first: int, last: int) -> str:
    if first > last:
        return ""
    return words("listing.gap" if first < last else "listing.gap.one", first=str(first), last=str(last))


def _line(row: RawRow, read: frozenset[int], slips: tuple[Slip, ...]) -> ListedCell:
    return ListedCell("", struck_line(row.cells[0], slips), bool(read))


def _cells(
    row: RawRow, width: int, sheet: str, read: frozenset[int], slips: tuple[Slip, ...]
) -> tuple[ListedCell, ...]:
    cells = (*row.cells, *[""] * (width - len(row.cells)))
    return tuple(
        ListedCell(
            cell_anchor(sheet, row.number, column) if sheet and (text or column in read) else "",
            struck_cell(text, tuple(s for s in slips if s.at.column in (0, column))),
            column in read,
        )
        for column, text in enumerate(cells, 1)
    )
