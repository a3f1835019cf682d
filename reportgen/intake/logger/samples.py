"""Samples of logger files, kept by DuckDB in a file of its own for as long as a compile runs, and read in pieces.

A file of any length is parsed once a channel and never whole in memory.
"""

from __future__ import annotations

import shutil
import tempfile
import weakref
from collections.abc import Iterator
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

from reportgen.finding import Place, refuse
from reportgen.intake.logger.asked import Ask, Channel, ask_of
from reportgen.intake.logger.clock import DAY
from reportgen.intake.logger.encoding import Bytes, look_through
from reportgen.intake.logger.layout import Layout, layout_of
from reportgen.intake.logger.loading import load
from reportgen.intake.reading import Series
from reportgen.sources import SIGNS, Workspace, blocks, copied_as_utf8, lines, path_of

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

HEAD = 1 << 16  # bytes that show how a file is laid out
LONGEST = 1 << 22
FEWEST = 5  # lines in them: headings, units, a few samples
PIECE = 122_880  # samples: one row group of DuckDB's
MEMORY = "256MB"


class Samples:
    """The logger files of a workspace, opened where they are asked for."""

    def __init__(self, ws: Workspace) -> None:
        self.ws = ws
        self._raw: dict[str, Bytes] = {}
        self._text: dict[str, Path] = {}
        self._channels: dict[Ask, Channel] = {}

    @cached_property
    def _db(self) -> Any:
        import duckdb

        settings: dict[str, str | bool | int | float | list[str]] = {"memory_limit": MEMORY, "threads": 2}
        settings["temp_directory"] = str(self._folder)
        db = duckdb.connect(str(self._folder / "samples.duckdb"), config=settings)
        db.execute("SET enable_progress_bar = false")  # who waits is told by the program itself
        weakref.finalize(self, db.close)  # the last made is the first called
        return db

    @cached_property
    def _folder(self) -> Path:
        """A folder outside of the workspace, gone when nobody holds these samples any more."""
        folder = tempfile.mkdtemp(prefix="samples-")
        weakref.finalize(self, shutil.rmtree, folder, ignore_errors=True)
        return Path(folder)

    def raw(self, file: str, encoding: str = "") -> Bytes:
        """The file's bytes, looked through; `encoding` as declared, "" where they tell. Raises `Refused`."""
        if file not in self._raw:
            self._raw[file] = look_through(blocks(self.ws, file), file, encoding)
        return self._raw[file]

    def layout(self, file: str, wanted: tuple[str, ...]) -> Layout:
        """How the file is laid out, by what is asked of it. Raises `Refused`."""
        raw = self.raw(file)
        head = HEAD
        text = self._head(file, raw, head)
        while raw.size > head < LONGEST and text.count("\n") + text.count("\r") < FEWEST:
            head *= 4  # one line of thousands of channels is longer than most heads
            text = self._head(file, raw, head)
        return layout_of(text, file, wanted)

    def _head(self, file: str, raw: Bytes, size: int) -> str:
        """The first so many bytes of a file as text, in whole lines."""
        import codecs

        first = b""
        for block in blocks(self.ws, file):
            first += block
            if len(first) >= size:
                break
        text = codecs.getincrementaldecoder(raw.encoding)("replace").decode(first[:size])
        end = len(text) if raw.size <= size else max(text.rfind("\n"), text.rfind("\r", 0, -1)) + 1
        return text[:end] or text

    def channel(self, ask: Ask) -> Channel:
        """The channel, loaded. Raises `Refused` with every cell that can't be used (the first few of each sort)."""
        if ask not in self._channels:
            import duckdb

            try:
                self._channels[ask] = self._load(ask)
            except duckdb.Error as error:
                says = f"this logger file can't be read: {str(error).partition(chr(10))[0]}"
                do = "Look whether it is a whole text table, and whether the disk has room; export it again as CSV."
                raise refuse("unreadable-file", Place(ask.file), says, do=do) from None
        return self._channels[ask]

    def different(self, file: str, layout: Layout, headings: tuple[str, ...]) -> list[tuple[str, ...]]:
        """The different combinations of texts in some columns, in order of appearance."""
        cells = ", ".join(f"coalesce(trim(c{layout.find(h)}), '')" for h in headings)
        rows = self._db.execute(
            f"SELECT {cells}, min(n) AS first FROM (SELECT *, row_number() OVER () AS n "
            f"FROM {self._csv(file, layout)}) GROUP BY ALL ORDER BY first"
        ).fetchall()
        return [tuple(str(c) for c in row[:-1]) for row in rows]

    def pieces(self, series: Series) -> Iterator[tuple[NDArray[np.float64], NDArray[np.float64], NDArray[np.int8]]]:
        """Times in s from the first sample, values, sides (1: over the value, −1: under it), a piece at a time.

        A value is NaN where a limit isn't known.
        """
        yield from self.of(self.channel(ask_of(series)))

    def of(self, channel: Channel) -> Iterator[tuple[NDArray[np.float64], NDArray[np.float64], NDArray[np.int8]]]:
        """The same for a channel. A clock that begins anew at midnight goes on here."""
        import numpy as np

        start: float | None = None
        days, last = 0.0, 0.0
        for begin in range(0, channel.samples, PIECE):
            found = self._db.execute(
                f"SELECT t, v, side FROM {channel.table} WHERE k >= {begin} AND k < {begin + PIECE} ORDER BY k"
            ).fetchnumpy()
            times = np.asarray(found["t"], dtype=np.float64)
            if channel.wraps:
                back = np.diff(times, prepend=last if start is not None else times[0]) < -DAY / 2
                last = float(times[-1])
                times = times + days + DAY * np.cumsum(back)
                days += DAY * float(back.sum())
            start = float(times[0]) if start is None else start
            yield times - start, np.asarray(found["v"], dtype=np.float64), np.asarray(found["side"], dtype=np.int8)

    def clock(self, channel: Channel) -> float | None:
        """The time of day of its first sample in s after midnight, None where the file has no clock times."""
        if not channel.of_day:
            return None
        row = self._db.execute(f"SELECT t FROM {channel.table} WHERE k = 0").fetchone()
        return float(row[0]) % DAY

    def line(self, channel: Channel, sample: int) -> int:
        """The line of a sample, counted from 0."""
        row = self._db.execute(f"SELECT n FROM {channel.table} WHERE k = {sample}").fetchone()
        return self._line(channel.layout, int(row[0]), channel.raw)

    def _load(self, ask: Ask) -> Channel:
        raw = self.raw(ask.file, ask.encoding)
        layout = self.layout(ask.file, (ask.heading, ask.time, *(h for h, _ in ask.only)))
        index = layout.find(ask.heading)
        if index is None or index >= layout.width:
            layout = self.layout(ask.file, (ask.heading,))
            index = layout.find(ask.heading)
        if index is None:
            raise refuse(
                "missing-column",
                Place(ask.file, layout.heading_line),
                f"“{ask.heading}” stands twice among the headings.",
                "Which of the two is meant can't be known.",
                "Name the channel's heading with its unit, as the file has it.",
            )
        if index >= layout.width:
            raise refuse(
                "ragged-row",
                Place(ask.file, layout.first),
                f"This row ends before the column “{ask.heading}”.",
                "From here on every value could stand under the wrong heading.",
                "Look whether the logger stopped here; take that line out in a copy and say so.",
            )
        table = f"s{len(self._channels)}"
        csv = self._csv(ask.file, layout)
        clock = load(self._db, csv, ask, layout, index, table, lambda row: self._line(layout, row, raw))
        samples = int(self._db.execute(f"SELECT count(*) FROM {table}").fetchone()[0])
        if not samples:
            raise refuse(
                "empty-table",
                Place(ask.file, layout.first),
                f"There is no sample of “{ask.heading}” in this file.",
                "An empty channel can mean a sensor that wasn't connected.",
                "Name another channel, or list its contender under `not yet tested:`.",
            )
        return Channel(
            table, layout, raw, samples, clock is not None and clock.wraps, layout.units[index], index,
            clock is not None and clock.of_day,
        )  # fmt: skip

    def _csv(self, file: str, layout: Layout) -> str:
        columns = ", ".join(f"'c{i}': 'VARCHAR'" for i in range(layout.width))
        path = str(self._utf8(file)).replace("'", "''")
        return (
            f"read_csv('{path}', delim='{layout.separator}', quote='\"', escape='\"', header=false, "
            f"skip={layout.first - 1}, auto_detect=false, columns={{{columns}}}, store_rejects=true, "
            "max_line_size=2097152)"
        )

    def _utf8(self, file: str) -> Path:
        """The file itself where DuckDB can read it, else a copy in UTF-8 with one sort of line ends."""
        if file not in self._text:
            raw = self.raw(file)
            if (
                raw.encoding == "utf-8-sig"
                and not raw.mixed
                and not any(s in str(path_of(self.ws, file)) for s in SIGNS)
            ):
                self._text[file] = path_of(self.ws, file)
            else:
                copy = self._folder / f"text{len(self._text)}.csv"
                try:
                    copied_as_utf8(self.ws, file, raw.encoding, copy)
                except UnicodeDecodeError as error:
                    says = f"this file isn't whole in its encoding, {raw.encoding}: {error.reason}"
                    do = "Look whether `encoding:` is right and the file complete; export it as “CSV UTF-8”."
                    raise refuse("wrong-encoding", Place(file), says, do=do) from None
                self._text[file] = copy
        return self._text[file]

    def _line(self, layout: Layout, row: int, raw: Bytes) -> int:
        """The line of a row of samples, counted from 0: where lines are empty they are counted one by one."""
        if self._rows(layout) == raw.lines - layout.first + 1:
            return layout.first + row
        at = -1
        for number, line in enumerate(lines(self.ws, layout.file, raw.encoding), 1):
            at += number >= layout.first and bool(line)
            if at == row:
                return number
        return raw.lines

    def _rows(self, layout: Layout) -> int:
        if layout.file not in self._counted:
            query = f"SELECT count(*) FROM {self._csv(layout.file, layout)}"
            self._counted[layout.file] = int(self._db.execute(query).fetchone()[0])
        return self._counted[layout.file]

    @cached_property
    def _counted(self) -> dict[str, int]:
        return {}
