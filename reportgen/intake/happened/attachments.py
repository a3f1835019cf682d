"""Laboratory reports are there, open, and have the pages that readings name.

A PDF has its pages; a picture or a text is one page. Only what its name promises is tried.
"""

from __future__ import annotations

import io
import posixpath
from collections.abc import Iterable, Mapping

from reportgen.campaign.declared import Declared
from reportgen.finding import Finding, Refused
from reportgen.intake.reading import Reading
from reportgen.sources import Workspace, as_text, list_files, read_bytes

PICTURES = (".png", ".jpg", ".jpeg", ".webp", ".tif", ".tiff")
TEXTS = (".txt", ".md", ".csv")
FOLDER = "attachments"


class NotThatKind(Exception):
    """An attachment that isn't what its name promises: `says` what is wrong with it."""

    def __init__(self, says: str, do: str) -> None:
        self.says, self.do = says, do
        super().__init__(says)


def wrong_attachments(ws: Workspace, declared: Declared, readings: Iterable[Reading]) -> Iterable[Finding]:
    """One finding for each report that is missing or doesn't open, and for each reading on a page that isn't there."""
    campaign, readings = declared.campaign, tuple(readings)
    yield from _without_laboratory(declared, readings)
    pages: dict[str, int | None] = {}
    for test in campaign.tests:
        report = test.laboratory.report if test.laboratory else ""
        if not report or report in pages:
            continue
        at = declared.at(f"laboratory/{test.id}/report")
        try:
            pages[report] = pages_of(read_bytes(ws, posixpath.join(campaign.folder, report)), report)
        except Refused as refused:
            pages[report] = None
            lie = _lying_there(ws, campaign.folder)
            for wrong in refused.findings:
                yield Finding(
                    "error", "missing-attachment", at, f"“{report}” of the laboratory: {wrong.says}.", lie, wrong.do
                )
        except NotThatKind as broken:
            pages[report] = None
            why = "Whoever follows a value to its page must find it there."
            yield Finding("error", "attachment", at, f"“{report}” {broken.says}.", why, broken.do)
    yield from (f for r in readings if r.attachment and (f := _off_its_pages(r, pages)) is not None)


def _without_laboratory(declared: Declared, readings: Iterable[Reading]) -> Iterable[Finding]:
    """Values of kind laboratory of which nothing says who found them: one finding a quantity."""
    read = {(r.key.test, r.key.name) for r in readings if not r.absent_because}
    for test in declared.campaign.tests:
        for quantity in test.quantities if test.laboratory is None else ():
            if quantity.kind == "laboratory" and any((test.id, name) in read for name in quantity.reads):
                yield Finding(
                    "error",
                    "laboratory-missing",
                    declared.at(f"quantity/{quantity.id}"),
                    f"“{quantity.title}” is a laboratory's value, and nothing says which laboratory found it.",
                    "A value without its report can't be looked up by anyone.",
                    "Add `laboratory:` with `name:` and `report: attachments/….pdf`.",
                )


def pages_of(data: bytes, name: str) -> int:
    """How many pages a report has. Raises `NotThatKind`."""
    kind = posixpath.splitext(name)[1].lower()
    if kind == ".pdf":
        return _pdf(data)
    if kind in PICTURES:
        return _picture(data)
    if kind in TEXTS:
        return _text(data, name)
    raise NotThatKind("is no kind of file that a page can be found in", "Save the report as PDF, picture or text.")


def _pdf(data: bytes) -> int:
    import logging

    from pypdf import PdfReader
    from pypdf.errors import PyPdfError

    again = "Get the report again, or print it to a new PDF."
    quiet, before = logging.getLogger("pypdf"), logging.getLogger("pypdf").level
    quiet.setLevel(logging.CRITICAL)  # what it mends by itself is no matter of the author's
    try:
        if b"%PDF-" not in data[:1024]:
            raise NotThatKind("is no PDF: it doesn't begin like one", again)
        reader = PdfReader(io.BytesIO(data))
        if reader.is_encrypted and not reader.decrypt(""):
            raise NotThatKind("is locked with a password", "Save a copy without one: readers are to open it.")
        pages = len(reader.pages)
    except (PyPdfError, ValueError, KeyError, IndexError, TypeError, AttributeError, RecursionError) as broken:
        raise NotThatKind("can't be opened as a PDF", again) from broken
    finally:
        quiet.setLevel(before)
    if not pages:
        raise NotThatKind("is a PDF without a page", again)
    return pages


def _picture(data: bytes) -> int:
    from PIL import Image

    try:
        with Image.open(io.BytesIO(data)) as picture:
            picture.verify()
            return int(getattr(picture, "n_frames", 1))
    except (OSError, ValueError, SyntaxError, Image.DecompressionBombError) as broken:
        raise NotThatKind("can't be opened as a picture", "Save the picture again.") from broken


def _text(data: bytes, name: str) -> int:
    try:
        as_text(data, name)
    except Refused as refused:
        raise NotThatKind("is no text in UTF-8", refused.findings[0].do) from refused
    return 1


def _off_its_pages(reading: Reading, pages: Mapping[str, int | None]) -> Finding | None:
    """A reading whose page is missing or isn't in its report; None where the report itself is what is wrong."""
    there = pages.get(reading.attachment)
    if there is None or reading.absent_because:
        return None
    if reading.page is None and there > 1:
        return Finding(
            "error",
            "page-missing",
            reading.at,
            f"“{reading.text}” doesn't say on which page of {reading.attachment} it stands, and that has {there}.",
            "Whoever checks it would have to read them all.",
            "Add a column `page`, or `page:` under `laboratory:`.",
        )
    if reading.page is not None and reading.page > there:
        return Finding(
            "error",
            "page-not-there",
            reading.at,
            f"“{reading.text}” is said to stand on page {reading.page} of {reading.attachment}, which has {there}.",
            "The value can't be found where it is said to stand.",
            "Correct the page, counted as a viewer counts them, or the report.",
        )
    return None


def _lying_there(ws: Workspace, folder: str) -> str:
    lie = [posixpath.relpath(f, folder or ".") for f in list_files(ws, posixpath.join(folder, FOLDER))]
    return f"In {FOLDER}/ lie: {', '.join(lie)}." if lie else f"Nothing lies in {FOLDER}/."
