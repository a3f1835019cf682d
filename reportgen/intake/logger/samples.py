"""Samples of logger files, kept by DuckDB in a file of its own for as long as a compile runs, and read in pieces.

A file of any length is parsed once a channel and never whole in memory.
"""

from __future__ import annotations

import shutil
import tempfile
import weakref
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

from reportgen.finding import Finding, Place, Refused, refuse
from reportgen.intake.logger.cells import Sample, sample_of
from reportgen.intake.logger.clock import DAY, NUMBER, Clock, NoTimes, clock_of
from reportgen.intake.logger.encoding import Bytes, look_through
from reportgen.intake.logger.layout import Layout, layout_of
from reportgen.intake.reading import Series
from reportgen.sources import Workspace, blocks, copied_as_utf8, lines, path_of

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

HEAD = 1 << 16
PIECE = 122_880  # samples: one row group of DuckDB's
MEMORY = "256MB"
TOLD = 5  # mistakes of one sort in one file; the rest are like them


@dataclass(frozen=True)
class Ask:
    """One channel of one file. `time` is the heading of times ("" for the first column), `rate` stands in its place.

    `only` narrows a file that serves several: pairs of heading and text. `unit` is the channel's as declared.
    """

    file: str
    heading: str
    time: str
    time_unit: str
    rate: float | None
    only: tuple[tuple[str, str], ...] = ()
    unit: str = field(default="", compare=False)
    encoding: str = ""  # "" where the file's bytes tell


@dataclass(frozen=True)
class Channel:
    """A channel as it was loaded: its table, how many samples, and where they stand."""

    table: str
    layout: Layout
    raw: Bytes
    samples: int
    wraps: bool
    unit: str  # as the file says, "" where it doesn't
    index: int  # of its column in a row


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
        import codecs

        raw = self.raw(file)
        first = b""
        for block in blocks(self.ws, file):
            first += block
            if len(first) >= HEAD:
                break
        text = codecs.getincrementaldecoder(raw.encoding)("replace").decode(first[:HEAD])
        if raw.size > HEAD:
            text = text[: text.rfind("\n") + 1]
        return layout_of(text, file, wanted)

    def channel(self, ask: Ask) -> Channel:
        """The channel, loaded. Raises `Refused` with every cell that can't be used (the first few of each sort)."""
        if ask not in self._channels:
            self._channels[ask] = self._load(ask)
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
        seconds, wraps = self._seconds(ask, layout)
        table = f"s{len(self._channels)}"
        self._fill(ask, layout, index, seconds, table)
        self._check_rows(ask, layout)
        self._check_times(ask, layout, table, raw)
        self._settle_cells(ask, layout, table, raw)
        samples = int(self._db.execute(f"SELECT count(*) FROM {table}").fetchone()[0])
        if not samples:
            raise refuse(
                "empty-table",
                Place(ask.file, layout.first),
                f"There is no sample of “{ask.heading}” in this file.",
                "An empty channel can mean a sensor that wasn't connected.",
                "Name another channel, or list its contender under `not yet tested:`.",
            )
        return Channel(table, layout, raw, samples, wraps, layout.units[index], index)

    def _seconds(self, ask: Ask, layout: Layout) -> tuple[str, bool]:
        """The query for seconds, and whether its clock begins anew at midnight."""
        if ask.rate:
            return f"(row_number() OVER () - 1) / {ask.rate!r}", False
        at = layout.find(ask.time) if ask.time else 0
        if at is None or at >= layout.width:
            raise refuse(
                "missing-column",
                Place(ask.file, layout.heading_line),
                f"There is no one column of times “{ask.time}” in this logger file.",
                "Without times nothing can be said of a trace.",
                "Name it as the file has it, or give `rate: 10 Hz` for a file without times.",
            )
        try:
            clock: Clock = clock_of(layout.cells(at), ask.time_unit or layout.units[at])
        except NoTimes as wrong:
            raise refuse("no-times", Place(ask.file, layout.first, at + 1), wrong.says, wrong.why, wrong.do) from None
        return clock.sql.replace("{x}", f"trim(c{at})"), clock.wraps

    def _csv(self, file: str, layout: Layout) -> str:
        columns = ", ".join(f"'c{i}': 'VARCHAR'" for i in range(layout.width))
        path = str(self._utf8(file)).replace("'", "''")
        return (
            f"read_csv('{path}', delim='{layout.separator}', quote='\"', escape='\"', header=false, "
            f"skip={layout.first - 1}, auto_detect=false, columns={{{columns}}}, store_rejects=true, "
            "max_line_size=2097152)"
        )

    def _utf8(self, file: str) -> Path:
        """The file itself where it is UTF-8, else a copy that is."""
        if file not in self._text:
            raw = self.raw(file)
            if raw.encoding == "utf-8-sig":
                self._text[file] = path_of(self.ws, file)
            else:
                copy = self._folder / f"text{len(self._text)}.csv"
                copied_as_utf8(self.ws, file, raw.encoding, copy)
                self._text[file] = copy
        return self._text[file]

    def _fill(self, ask: Ask, layout: Layout, index: int, seconds: str, table: str) -> None:
        """Every sample with its row's number `n`; `raw` holds what is no plain number, `tick` a time that is none."""
        x = f"trim(c{index})"
        decimals = "'[.,]'" if layout.separator != "," else "'[.]'"
        plain = NUMBER.replace("[.,]", decimals.strip("'"))
        value = f"CASE WHEN regexp_full_match({x}, '{plain}') THEN TRY_CAST(replace({x}, ',', '.') AS DOUBLE) END"
        only = " AND ".join(f"coalesce(trim(c{layout.find(h)}), '') = '{_quoted(text)}'" for h, text in ask.only)
        time = "NULL" if ask.rate else f"trim(c{layout.find(ask.time) if ask.time else 0})"
        sign = f"CASE WHEN contains({x}, ',') THEN 2 WHEN contains({x}, '.') THEN 1 ELSE 0 END"
        self._db.execute(
            f"CREATE TABLE {table} AS SELECT row_number() OVER () - 1 AS k, n, t, v, CAST(0 AS TINYINT) AS side, "
            f"CASE WHEN v IS NULL OR NOT isfinite(v) THEN x END AS raw, CASE WHEN t IS NULL THEN tick END AS tick, "
            f"CAST(CASE WHEN v IS NULL THEN 0 ELSE sign END AS TINYINT) AS sign FROM "
            f"(SELECT n, x, v, sign, {'t' if not ask.rate else seconds} AS t, tick FROM "
            f"(SELECT *, {x} AS x, {value} AS v, {sign} AS sign, {time} AS tick"
            f"{'' if ask.rate else f', {seconds} AS t'} FROM "
            f"(SELECT *, row_number() OVER () - 1 AS n FROM {self._csv(ask.file, layout)})"
            f"{f' WHERE {only}' if only else ''})) WHERE x IS NOT NULL AND x <> ''"
        )

    def _check_rows(self, ask: Ask, layout: Layout) -> None:
        """Rows that don't fit the headings, as DuckDB turned them away."""
        rejected = self._db.execute(
            f"SELECT line, csv_line, error_type FROM reject_errors ORDER BY line LIMIT {TOLD}"
        ).fetchall()
        if not rejected:
            return
        self._db.execute("DELETE FROM reject_errors")
        raise Refused(_misfit(ask.file, layout, int(line), str(text or ""), str(sort)) for line, text, sort in rejected)

    def _check_times(self, ask: Ask, layout: Layout, table: str, raw: Bytes) -> None:
        wrong = self._db.execute(f"SELECT n, tick FROM {table} WHERE t IS NULL ORDER BY k LIMIT {TOLD}").fetchall()
        if wrong:
            raise Refused(
                Finding(
                    "error",
                    "no-times",
                    Place(ask.file, self._line(layout, int(n), raw)),
                    f"“{tick}” is no time such as those above it." if tick else "This sample has no time.",
                    "Where it belongs in the trace can't be known.",
                    "Correct it in a copy of the file and say so, or give `rate:` where samples came evenly.",
                )
                for n, tick in wrong
            )

    def _settle_cells(self, ask: Ask, layout: Layout, table: str, raw: Bytes) -> None:
        """What is no plain number: limits are written beside it, gaps taken out, the rest refused."""
        self._check_signs(ask, layout, table, raw)
        texts = self._db.execute(
            f"SELECT raw, min(n) AS first FROM {table} WHERE raw IS NOT NULL GROUP BY raw ORDER BY first LIMIT 5000"
        ).fetchall()
        wrong: list[Finding] = []
        for text, n in texts:
            found = sample_of(text, ask.unit, Place(ask.file, self._line(layout, int(n), raw)), ask.heading)
            if isinstance(found, Finding):
                wrong.append(found)
                if len(wrong) == TOLD:
                    break
            elif isinstance(found, Sample):
                value = float("nan") if found.value is None else found.value
                self._db.execute(f"UPDATE {table} SET v = ?, side = ? WHERE raw = ?", [value, found.side, text])
            else:
                self._db.execute(f"DELETE FROM {table} WHERE raw = ?", [text])
        if wrong:
            raise Refused(wrong)
        if texts:  # rows taken out leave holes in k
            self._db.execute(
                f"CREATE OR REPLACE TABLE {table} AS SELECT * REPLACE (row_number() OVER () - 1 AS k) "
                f"FROM (SELECT * FROM {table} ORDER BY k)"
            )

    def _check_signs(self, ask: Ask, layout: Layout, table: str, raw: Bytes) -> None:
        """A point and a comma in one channel: one of the two may part thousands."""
        signs = self._db.execute(f"SELECT sign, min(n) FROM {table} WHERE sign > 0 GROUP BY sign ORDER BY 2").fetchall()
        if len(signs) > 1:
            sign = "comma" if signs[1][0] == 2 else "point"
            raise refuse(
                "separator-in-number",
                Place(ask.file, self._line(layout, int(signs[1][1]), raw)),
                f"{ask.heading}: here a number has a {sign}, while those above have the other sign.",
                "One of the two may part thousands; that is never guessed.",
                "Export the file again with one decimal sign.",
            )

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


def ask_of(series: Series) -> Ask:
    """What was asked when the series was read."""
    return Ask(
        series.file,
        series.heading,
        series.time,
        series.time_unit,
        series.rate,
        series.only,
        series.declared_unit,
        series.encoding,
    )


def _quoted(text: str) -> str:
    return text.replace("'", "''")


def _misfit(file: str, layout: Layout, line: int, text: str, sort: str) -> Finding:
    if "QUOTE" in sort:
        return Finding(
            "error",
            "quotes",
            Place(file, line),
            "The quotes in this row don't fit.",
            "Where a cell ends can't be known.",
            "Look whether the file was cut off here, and export it again.",
        )
    cells = text.count(layout.separator) + 1
    return Finding(
        "error",
        "ragged-row",
        Place(file, line),
        f"This row has {cells} {'cell' if cells == 1 else 'cells'}, those above have {layout.width}.",
        "From here on every value could stand under the wrong heading.",
        "Look whether the logger stopped here, or wrote a line of its own; take that line out in a copy and say so.",
    )
