"""Long files, a block at a time: what never comes into memory as a whole."""

from __future__ import annotations

import codecs
import io
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from reportgen.finding import Place, refuse
from reportgen.sources.read import path_of
from reportgen.sources.workspace import Workspace

BLOCK = 1 << 20
SIGNS = "*?[]{}"  # stand for any others in a name given to DuckDB


def blocks(ws: Workspace, rel: str) -> Iterator[bytes]:
    """The file's bytes, a block at a time. Raises Refused: outside the workspace, missing, not readable."""
    try:
        with path_of(ws, rel).open("rb") as file:
            while block := file.read(BLOCK):
                yield block
    except OSError as error:
        do = "Check the path and the disk it lies on, and who may read it."
        raise refuse("unreadable-file", Place(rel), f"{rel} can't be read: {error.strerror}", do=do) from error


def copied_as_utf8(ws: Workspace, rel: str, encoding: str, to: Path) -> None:
    """Writes the file's text to `to` in UTF-8, without a byte order mark and with plain line ends. Raises
    UnicodeDecodeError."""
    decoder = io.IncrementalNewlineDecoder(codecs.getincrementaldecoder(encoding)(), translate=True)
    with to.open("w", encoding="utf-8", newline="") as out:
        for block in blocks(ws, rel):
            out.write(decoder.decode(block))
        out.write(decoder.decode(b"", final=True))


@contextmanager
def plainly_named(path: Path) -> Iterator[Path]:
    """The file, or a copy for as long as it is needed, under a name that DuckDB takes for no other.

    A folder may well be called `bench [2026]`.
    """
    if not any(sign in str(path) for sign in SIGNS):
        yield path
        return
    with tempfile.TemporaryDirectory(prefix="sources-") as folder:
        copy = Path(folder) / "copy"
        shutil.copyfile(path, copy)
        yield copy


def lines(ws: Workspace, rel: str, encoding: str) -> Iterator[str]:
    """The file's lines as an editor counts them, without their ends. Raises Refused, as `blocks` does."""
    decoder = io.IncrementalNewlineDecoder(codecs.getincrementaldecoder(encoding)("replace"), translate=True)
    rest = ""
    for block in blocks(ws, rel):
        *whole, rest = (rest + decoder.decode(block)).split("\n")
        yield from whole
    *whole, rest = (rest + decoder.decode(b"", final=True)).split("\n")
    yield from whole
    if rest:
        yield rest
