"""What the data page offers besides raw files: tables, what describes them, how to read, check and cite them."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import from_to, on_the_web, results_schema_file
from reportgen.opendata import DataFile
from reportgen.pages.told import Told
from reportgen.theme import Link
from reportgen.wording.count import whole
from reportgen.wording.file_size import file_size
from reportgen.wording.language import say


@dataclass(frozen=True)
class Download:
    """A file to save: its name, how large it is, what it holds ("" where that is said elsewhere)."""

    name: str
    href: str
    size: str
    holds: str = ""


@dataclass(frozen=True)
class TableOffered:
    """One table in both of its forms."""

    title: str
    holds: str
    rows: str
    csv: Download
    parquet: Download


@dataclass(frozen=True)
class Cited:
    """How to cite it: a line and BibTeX to copy, and the same as files."""

    line: str
    bibtex: str
    files: tuple[Download, ...]


@dataclass(frozen=True)
class Offered:
    """All of it. `example` names the table of results, as a program would open it, and `quantity` one to ask it for;
    `licence` has no way where the program doesn't know where its text stands."""

    tables: tuple[TableOffered, ...]
    whole: tuple[Download, ...]
    schema: str
    example: str
    quantity: str
    cited: Cited
    licence: Link | None
    licence_file: Download
    sums: Download


CITING = ("CITATION.cff", "citation.json", "citation.bib")
WHOLE = ("results.json", "datapackage.json", "checksums.sha256")


def offered(told: Told, page: str) -> Offered:
    """What is offered on the page at `page`."""
    campaign, data = told.campaign, told.open_data
    results = f"{campaign.id}/data/results.csv"
    licence = data.licence
    return Offered(
        tables=_tables(told, page),
        whole=tuple(_download(told, page, data.file(path)) for path in WHOLE),
        schema=from_to(page, results_schema_file()),
        example=on_the_web(told.publication.address, results) or from_to(page, results),
        quantity=next(q.id for t in campaign.tests for q in t.quantities),
        cited=Cited(data.line, data.bibtex, tuple(_download(told, page, data.file(path)) for path in CITING)),
        licence=Link(licence.said, licence.address) if licence else None,
        licence_file=_download(told, page, data.file("licence.txt")),
        sums=_download(told, page, data.file("checksums.sha256")),
    )


def _tables(told: Told, page: str) -> tuple[TableOffered, ...]:
    made = []
    for table in told.open_data.tables:
        shape = table.shape
        made.append(
            TableOffered(
                title=shape.title,
                holds=shape.holds,
                rows=whole(len(table.rows)),
                csv=_table(told, page, told.open_data.file(f"data/{shape.name}.csv")),
                parquet=_table(told, page, told.open_data.file(f"data/{shape.name}.parquet")),
            )
        )
    return tuple(made)


def _table(told: Told, page: str, f: DataFile) -> Download:
    return Download(f.path.rpartition("/")[2], _way(told, page, f), file_size(f.size))


def _download(told: Told, page: str, f: DataFile) -> Download:
    return Download(f.path, _way(told, page, f), file_size(f.size), say(f"opendata.file.{f.path}"))


def _way(told: Told, page: str, f: DataFile) -> str:
    return from_to(page, f"{told.campaign.id}/{f.path}")
