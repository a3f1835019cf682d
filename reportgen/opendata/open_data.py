"""Everything of a campaign that is for others to take, put together."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Sequence

from reportgen.addresses import on_the_web, results_schema_file
from reportgen.campaign.declared import Campaign, Publication
from reportgen.intake.reading import Readings
from reportgen.opendata.checksums import checksums
from reportgen.opendata.citing.bibtex import as_bibtex
from reportgen.opendata.citing.cff import as_cff
from reportgen.opendata.citing.citation import as_line, citation_of
from reportgen.opendata.citing.csl import as_csl
from reportgen.opendata.csv_form import as_csv
from reportgen.opendata.files import DataFile, OpenData, PassedOn
from reportgen.opendata.licence_file import as_licence
from reportgen.opendata.package import LICENCE_FILE, data_package
from reportgen.opendata.parquet_form import as_parquet
from reportgen.opendata.table import Table
from reportgen.opendata.tables import tables_of
from reportgen.wording.language import speaking

InParquet = Callable[[Sequence[Table]], Iterable[bytes]]


def open_data(
    campaign: Campaign,
    publication: Publication,
    readings: Readings,
    record: str,
    raw: Sequence[PassedOn],
    issue: int,
    in_parquet: InParquet = as_parquet,
) -> OpenData:
    """All files, in the publication's language. `record` is results.json, from which the tables are taken, so that they
    can't say anything else; `in_parquet` writes tables as Parquet, or has kept them."""
    with speaking(publication.speaks):
        cited = citation_of(campaign, publication, issue)
        tables = tables_of(json.loads(record), campaign, readings)
        bibtex = as_bibtex(cited)
        made = [DataFile(f"data/{t.shape.name}.csv", as_csv(t), "csv", t) for t in tables]
        made += [
            DataFile(f"data/{t.shape.name}.parquet", data, "parquet", t)
            for t, data in zip(tables, in_parquet(tables), strict=True)
        ]
        made += [
            DataFile("results.json", record.encode(), "json"),
            DataFile("CITATION.cff", as_cff(cited), "cff"),
            DataFile("citation.json", as_csl(cited), "json"),
            DataFile("citation.bib", bibtex.encode(), "bib"),
            DataFile(LICENCE_FILE, as_licence(cited), "txt"),
        ]
        made.append(DataFile("datapackage.json", data_package(campaign, publication, cited, made, raw), "json"))
        sums = checksums([*((f.path, f.digest) for f in made), *((f.path, f.digest) for f in raw)])
        made.append(DataFile("checksums.sha256", sums, "sha256"))
        line = as_line(cited)
    return OpenData(cited.address, cited, cited.licence, tables, tuple(made), tuple(raw), line, bibtex)


def schema_of_results(publication: Publication) -> str:
    """What results.json names as its schema: where it stands on the web, else the way there from the campaign."""
    return on_the_web(publication.address, results_schema_file()) or f"../{results_schema_file()}"
