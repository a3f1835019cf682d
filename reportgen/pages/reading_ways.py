"""The ways from a reading in a working to where it stands: row or cell, page of a report, lines of a trace."""

from __future__ import annotations

import re
from collections.abc import Iterator

from reportgen.addresses import raw_file
from reportgen.evaluation.evaluated import Result
from reportgen.finding import Place
from reportgen.intake.reading import Reading
from reportgen.pages.told import Told
from reportgen.pages.traces import LineLink, file_link, line_link
from reportgen.pages.words import words
from reportgen.wording.listing import commas


def ways(told: Told, page: str, result: Result, r: Reading) -> Iterator[LineLink]:
    """From `page`, in the working of `result`, to each place that shows where the reading comes from."""
    yield line_link(told, page, r.at)
    if r.series is not None:
        last = line_link(told, page, Place(r.series.file, r.series.last))
        yield LineLink(words("reading.last", n=str(r.series.last)), last.href)
        yield from _marks(told, page, result, r, r.series.file)
        if r.series.named_in is not None:
            yield line_link(told, page, r.series.named_in)
    if r.attachment:
        address = raw_file(told.campaign.id, r.attachment)
        if r.page is None:
            yield LineLink(r.attachment, file_link(page, address))
        else:
            text = commas((r.attachment, words("place.page", n=str(r.page))))
            yield LineLink(text, file_link(page, address, f"page={r.page}"))


def _marks(told: Told, page: str, result: Result, r: Reading, file: str) -> Iterator[LineLink]:
    """The ways to what the formula looked for along a trace: its highest or lowest sample, where it passed a limit."""
    formula = told.campaign.quantity(result.quantity).formula
    for mark in (m for trace in told.evaluation.traces if trace.key == r.key for m in trace.marks):
        asked = re.search(rf"\b{mark.what}\(\s*{re.escape(r.key.name)}\b", formula)
        if asked or mark.quantity == result.quantity:
            text = words(f"reading.{mark.what}", n=str(mark.line))
            yield LineLink(text, line_link(told, page, Place(file, mark.line)).href)
