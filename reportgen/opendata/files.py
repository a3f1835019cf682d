"""The files of a campaign's open data, as pages and the site are told of them."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from reportgen.opendata.citing.citation import Citation
from reportgen.opendata.licences import Licence
from reportgen.opendata.table import Table

MEDIA: Mapping[str, str] = {
    "csv": "text/csv",  # RFC 7111
    "parquet": "application/vnd.apache.parquet",  # registered with IANA
    "json": "application/json",  # RFC 8259
    "tsv": "text/tab-separated-values",
    "txt": "text/plain",
    "log": "text/plain",
    "dat": "text/plain",
    "md": "text/markdown",  # RFC 7763
    "yaml": "application/yaml",  # RFC 9512
    "yml": "application/yaml",
    "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    "ods": "application/vnd.oasis.opendocument.spreadsheet",
    "pdf": "application/pdf",
}


@dataclass(frozen=True)
class DataFile:
    """A file made for others to take. `path` is from the campaign's folder on the site; `table` is what it is a form
    of."""

    path: str
    data: bytes
    form: str  # how its name ends
    table: Table | None = None

    @cached_property
    def digest(self) -> str:
        """SHA-256 in hexadecimal."""
        return hashlib.sha256(self.data).hexdigest()

    @property
    def size(self) -> int:
        """Bytes."""
        return len(self.data)


@dataclass(frozen=True)
class PassedOn:
    """A file of the author's that stands on the site byte for byte; `path` from the campaign's folder on the site."""

    path: str
    digest: str
    size: int

    @property
    def form(self) -> str:
        """How its name ends, in small letters; "" where it has no ending."""
        return self.path.rpartition("/")[2].lower().rpartition(".")[2] if "." in self.path.rpartition("/")[2] else ""


@dataclass(frozen=True)
class OpenData:
    """All of it. `home` is where the campaign stands on the web ("" where the publication has no address).

    `files` are in the order in which a reader wants them; `raw` as they are named.
    """

    home: str
    citation: Citation
    licence: Licence | None
    tables: tuple[Table, ...]
    files: tuple[DataFile, ...]
    raw: tuple[PassedOn, ...]
    line: str  # to copy: how to cite it
    bibtex: str

    def file(self, path: str) -> DataFile:
        """The file at a path from the campaign's folder."""
        return next(f for f in self.files if f.path == path)


def media_type(form: str) -> str:
    """The media type (RFC 6838) of files whose name ends so; bytes of no known kind otherwise."""
    return MEDIA.get(form, "application/octet-stream")
