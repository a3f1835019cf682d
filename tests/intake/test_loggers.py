"""Logger files of every dialect, written by other programs, come out as the traces that went in."""

from __future__ import annotations

import csv
import datetime
import io
from collections.abc import Callable
from pathlib import Path

import duckdb
import numpy as np
import pandas as pd
import pytest

from reportgen.campaign.load import load_campaign, load_publication
from reportgen.intake import Readings, read_readings
from reportgen.intake.logger.samples import Samples
from reportgen.intake.reading import Series
from reportgen.sources import find_workspace
from tests.campaigns import refusal, write_campaign

YAML = """\
title: Which lamp lasts longest?
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}
measure:
  brightest:
    kind: logged
    formula: highest(light)
    unit: lx
    readings:
"""
TIMES = [0.0, 0.5, 1.0, 1.5, 2.0, 2.5]
LIGHT = [812.25, 811.5, 805.0, 790.75, 640.5, 12.25]


def declared(source: str) -> str:
    return YAML + "".join(f"      {line}\n" for line in source.splitlines())


def read(place: Path, source: str, **files: str | bytes) -> tuple[Readings, Samples]:
    ws = find_workspace(write_campaign(place, declared(source), **files))
    samples = Samples(ws)
    return read_readings(ws, load_campaign(ws, "", load_publication(ws)[0]), samples), samples


def series_of(readings: Readings) -> list[Series]:
    found = sorted(readings.readings.values(), key=lambda r: r.key)
    return [r.series for r in found if r.series is not None]


def samples_of(samples: Samples, series: Series) -> tuple[list[float], list[float], list[int]]:
    pieces = list(samples.pieces(series))
    return tuple(np.concatenate(side).tolist() for side in zip(*pieces, strict=True))  # type: ignore[return-value]  # always three


ONE = 'logger: {corvane: raw/log.csv}\ntime: Elapsed, s\ncolumns: {light: "Ch1, lx"}\n'


def with_pandas(separator: str = ",", decimal: str = ".", encoding: str = "utf-8") -> bytes:
    frame = pd.DataFrame({"Elapsed": TIMES, "Ch1": LIGHT, "Ch2": 5})
    return frame.to_csv(sep=separator, decimal=decimal, index=False).encode(encoding)


def with_duckdb(place: Path) -> bytes:
    path = place / "duck.csv"
    rows = ", ".join(f"({t}, {v})" for t, v in zip(TIMES, LIGHT, strict=True))
    duckdb.sql(f"COPY (SELECT * FROM (VALUES {rows}) AS t(\"Elapsed\", \"Ch1\")) TO '{path}' (HEADER, DELIMITER '\t')")
    return path.read_bytes()


def with_csv(quoting: int, end: str) -> bytes:
    out = io.StringIO()
    writer = csv.writer(out, quoting=quoting, lineterminator=end)  # type: ignore[arg-type]
    writer.writerows([["Elapsed", "Ch1"], *zip(TIMES, LIGHT, strict=True)])
    return out.getvalue().encode()


DIALECTS: dict[str, Callable[[Path], bytes]] = {
    "pandas, comma": lambda _: with_pandas(),
    "pandas, semicolon and decimal comma": lambda _: with_pandas(";", ","),
    "pandas, tab and decimal comma": lambda _: with_pandas("\t", ","),
    "pandas, byte order mark": lambda _: with_pandas(encoding="utf-8-sig"),
    "pandas, UTF-16": lambda _: with_pandas(encoding="utf-16"),
    "pandas, UTF-16 without a mark": lambda _: with_pandas(encoding="utf-16-le"),
    "DuckDB, tab": with_duckdb,
    "csv, all quoted, CRLF": lambda _: with_csv(csv.QUOTE_ALL, "\r\n"),
    "csv, LF": lambda _: with_csv(csv.QUOTE_MINIMAL, "\n"),
    "lines above": lambda _: b"Model;LX-9\nSerial;0012\n\n" + with_pandas(";", ","),
    "units below": lambda _: b"Elapsed,Ch1\ns,lx\n" + with_csv(csv.QUOTE_MINIMAL, "\n").partition(b"\n")[2],
    "units beside, Windows-1252": lambda _: (
        "Elapsed (s),Ch1 (lx),T (°C)\n".encode("cp1252")
        + b"".join(f"{t},{v},21\n".encode() for t, v in zip(TIMES, LIGHT, strict=True))
    ),
    "a separator at every end": lambda _: (
        b"Elapsed,Ch1,\n" + b"".join(f"{t},{v},\n".encode() for t, v in zip(TIMES, LIGHT, strict=True))
    ),
    "no feed at the end": lambda _: with_pandas().rstrip(b"\n"),
}


@pytest.mark.parametrize("dialect", DIALECTS)
def test_a_dialect_comes_out_as_it_went_in(dialect: str, tmp_path: Path) -> None:
    readings, samples = read(tmp_path, ONE, **{"raw/log.csv": DIALECTS[dialect](tmp_path)})
    (series,) = series_of(readings)
    assert samples_of(samples, series) == (TIMES, LIGHT, [0] * 6)
    assert (series.samples, series.begins, series.ends) == (6, 0, 2.5)
    assert series.last - series.first == 5


def test_lines_of_a_trace_are_those_of_the_file(tmp_path: Path) -> None:
    rows = ["Logger LX-9", "", "Elapsed,Ch1", "s,lx", "0,5", "", "1,6", "2,7", "", "3,8"]
    readings, _ = read(tmp_path, ONE, **{"raw/log.csv": "\n".join(rows) + "\n"})
    (series,) = series_of(readings)
    assert (rows[series.first - 1], rows[series.last - 1]) == ("0,5", "3,8")
    assert (series.unit, series.heading) == ("lx", "Ch1")


def stamps(form: str, start: datetime.datetime, seconds: list[float]) -> str:
    return "".join(f"{(start + datetime.timedelta(seconds=s)).strftime(form)},5\n" for s in seconds)


@pytest.mark.parametrize(
    "form",
    [
        "%H:%M:%S",
        "%H:%M:%S.%f",
        "%I:%M:%S %p",
        "%Y-%m-%d %H:%M:%S",
        "%Y-%m-%dT%H:%M:%SZ",
        "%Y-%m-%dT%H:%M:%S+02:00",
        "%d.%m.%Y %H:%M:%S",
    ],
)
def test_a_clock_runs_on_over_midnight(form: str, tmp_path: Path) -> None:
    """Python's datetime writes the stamps; 32 hours pass, over two midnights and the end of a month."""
    seconds = [600.0 * i for i in range(6 * 32)]
    text = "Clock,Ch1\n" + stamps(form, datetime.datetime(2026, 5, 30, 22, 58, 30), seconds)
    readings, samples = read(tmp_path, ONE.replace("Elapsed, s", "Clock"), **{"raw/log.csv": text})
    (series,) = series_of(readings)
    assert samples_of(samples, series)[0] == pytest.approx(seconds)


@pytest.mark.parametrize(("unit", "size"), [("ms", 0.001), ("s", 1), ("min", 60), ("h", 3600)])
def test_elapsed_time_is_in_its_own_unit(unit: str, size: float, tmp_path: Path) -> None:
    text = "Elapsed,Ch1\n" + "".join(f"{i},5\n" for i in range(5))
    readings, _ = read(tmp_path, ONE.replace("Elapsed, s", f"Elapsed, {unit}"), **{"raw/log.csv": text})
    assert series_of(readings)[0].ends == pytest.approx(4 * size)


def test_a_rate_stands_for_times(tmp_path: Path) -> None:
    source = 'logger: {corvane: raw/log.csv}\nrate: 4 Hz\ncolumns: {light: "Ch1, lx"}\n'
    readings, samples = read(tmp_path, source, **{"raw/log.csv": "Ch1\n5\n6\n7\n"})
    assert samples_of(samples, series_of(readings)[0])[0] == [0, 0.25, 0.5]


def test_ends_of_the_scale_stay_limits_and_gaps_stay_gaps(tmp_path: Path) -> None:
    text = "Elapsed,Ch1\n0,500\n1,over 999\n2,OL\n3,<1\n4,none (cable out)\n5,\n6,400\n"
    readings, samples = read(tmp_path, ONE, **{"raw/log.csv": text})
    times, values, sides = samples_of(samples, series_of(readings)[0])
    assert (times, sides) == ([0, 1, 2, 3, 6], [0, 1, 1, -1, 0])
    assert values[1] == 999
    assert np.isnan(values[2])
    assert values[3] == 1


def test_gaps_and_changes_of_rate_are_told_with_where_and_how_long(tmp_path: Path) -> None:
    times = [*range(30), *range(50, 70), *range(80, 400, 10)]
    text = "Elapsed,Ch1\n" + "".join(f"{t},5\n" for t in times)
    readings, _ = read(tmp_path, ONE, **{"raw/log.csv": text})
    (series,) = series_of(readings)
    assert series.gaps == ((29, 50),)
    told = {f.rule: f.says.replace("\u00a0", " ") for f in readings.findings}
    assert "21 s from 29 s on" in told["gap-in-a-trace"]
    assert "from 69 s on" in told["rate-changes"]
    assert "every 10 s, before every 1 s" in told["rate-changes"]


def test_samples_that_are_missing_among_even_ones_are_counted(tmp_path: Path) -> None:
    """40 and 75, 76 left out of one sample a second: three missing, none of it a gap. Random pauses miss nothing."""
    times = [t for t in range(120) if t not in (40, 75, 76)]
    text = "Elapsed,Ch1\n" + "".join(f"{t},5\n" for t in times)
    readings, _ = read(tmp_path / "1", ONE, **{"raw/log.csv": text})
    (told,) = [f for f in readings.findings if f.rule == "samples-dropped"]
    assert (told.severity, told.place.file) == ("note", "raw/log.csv")
    assert "every 1 s, and 3 samples are missing" in told.says.replace("\u00a0", " ")
    uneven = np.cumsum(np.random.default_rng(1).uniform(0.5, 1.5, 300))
    text = "Elapsed,Ch1\n" + "".join(f"{t:.3f},5\n" for t in uneven)
    readings, _ = read(tmp_path / "2", ONE, **{"raw/log.csv": text})
    assert not [f for f in readings.findings if f.rule == "samples-dropped"]


def test_names_of_files_say_contender_pass_and_part(tmp_path: Path) -> None:
    source = 'logger: raw/{contender}/run-{pass}-{part}.csv\ntime: Elapsed, s\ncolumns: {light: "Ch1, lx"}\n'
    text = "Elapsed,Ch1\n0,5\n1,6\n"
    paths = ["raw/ostler-mk-ii/run-1-cold.csv", "raw/corvane/run-10-cold.csv", "raw/corvane/run-9-warm.csv"]
    readings, _ = read(tmp_path, source, **dict.fromkeys(paths, text))
    assert {(k.contender, k.pass_, k.part) for k in readings.readings} == {
        ("ostler", "1", "cold"), ("corvane", "10", "cold"), ("corvane", "9", "warm"),
    }  # fmt: skip


def test_one_file_serves_all_by_columns_that_name_contender_and_pass(tmp_path: Path) -> None:
    rows = [(t, who, n, v + n) for who, v in (("Corvane Sol", 5), ("ostler", 9)) for n in (1, 2) for t in range(4)]
    text = "Elapsed,lamp,pass,Ch1\n" + "".join(f"{t},{who},{n},{v}\n" for t, who, n, v in rows)
    source = 'logger: raw/all.csv\ncontender: lamp\ntime: Elapsed, s\ncolumns: {light: "Ch1, lx"}\n'
    readings, samples = read(tmp_path, source, **{"raw/all.csv": text})
    found = {(k.contender, k.pass_): r.series for k, r in readings.readings.items()}
    assert set(found) == {("corvane", "1"), ("corvane", "2"), ("ostler", "1"), ("ostler", "2")}
    second = found["ostler", "2"]
    assert second is not None
    assert samples_of(samples, second)[1] == [11, 11, 11, 11]
    assert (second.first, second.last) == (14, 17)


def test_one_file_serves_all_by_a_channel_for_each_contender(tmp_path: Path) -> None:
    text = "Elapsed,Corvane Sol (lx),ostler (lx)\n0,5,7\n1,6,8\n"
    source = 'logger: raw/all.csv\ntime: Elapsed, s\ncolumns: {light: "light, lx"}\n'
    readings, samples = read(tmp_path, source, **{"raw/all.csv": text})
    values = {k.contender: samples_of(samples, r.series)[1] for k, r in readings.readings.items() if r.series}
    assert values == {"corvane": [5, 6], "ostler": [7, 8]}


HEAD = "Elapsed,Ch1\n0,5\n1,6\n"
WRONG = {
    "text-in-a-channel": (ONE, HEAD + "2,broken\n", 4, "broken"),
    "time-backwards": (ONE, HEAD + "0.5,6\n", 4, "backwards"),
    "time-twice": (ONE, HEAD + "1,6\n", 4, "same time"),
    "no-times": (ONE, HEAD + "later,6\n", 4, "later"),
    "ragged-row": (ONE, HEAD + "2,6,9\n", 4, "3 cells"),
    "quotes": (ONE, HEAD + '2,"6\n', 4, "quotes"),
    "missing-column": (ONE, "Elapsed,Ch2\n0,5\n1,6\n", 1, "Ch1"),
    "empty-table": (ONE, "Elapsed,Ch1\n", 1, "no sample"),
    "separator-in-number": (ONE, "Elapsed;Ch1\n0;5,5\n1;6.5\n", 3, "has a point"),
    "units-disagree": (ONE, HEAD + "2,7 mV\n", 4, "mV"),
    "two-encodings": (ONE, HEAD.encode() + "2,7\n# µ\n".encode() + b"# \xb5\n", 6, "Two encodings"),
    "nul-character": (ONE, HEAD.encode() + b"2,\0\n", 4, "NUL"),
    "missing-file": ("logger: raw/{contender}.csv\ntime: Elapsed, s\ncolumns: {light: Ch1}\n", HEAD, 0, "named like"),
    "nobody-in-a-logger": (
        "logger: raw/log.csv\ntime: Elapsed, s\ncolumns: {light: Ch1}\n",
        HEAD,
        1,
        "which contender",
    ),
    "unknown-brace": ("logger: raw/{stove}.csv\ncolumns: {light: Ch1}\n", HEAD, 0, "stands for nothing"),
    "no-rate": ("logger: {corvane: raw/log.csv}\nrate: 4 kg\ncolumns: {light: Ch1}\n", HEAD, 0, "rate of samples"),
    "rate-and-time": (
        "logger: {corvane: raw/log.csv}\nrate: 4 Hz\ntime: Elapsed\ncolumns: {light: Ch1}\n",
        HEAD,
        0,
        "not both",
    ),
    "readings-without-place": ("logger: {corvane: raw/log.csv}\nfile: raw/log.csv\n", HEAD, 0, "beside"),
    "unknown-contender": ("logger: {corvus: raw/log.csv}\ncolumns: {light: Ch1}\n", HEAD, 0, "corvus"),
}


@pytest.mark.parametrize("rule", WRONG)
def test_a_mistake_is_told_at_its_line(rule: str, tmp_path: Path) -> None:
    source, text, line, says = WRONG[rule]
    found = refusal(tmp_path, declared(source), **{"raw/log.csv": text})
    told = [f for f in found if f.rule == rule]
    assert told, found
    assert says in told[0].says
    assert told[0].do
    assert told[0].place.file == ("raw/log.csv" if line else "campaign.yaml")
    assert not line or told[0].place.line == line


def test_mistakes_of_several_files_are_told_in_one_run(tmp_path: Path) -> None:
    source = 'logger: raw/{contender}.csv\ntime: Elapsed, s\ncolumns: {light: "Ch1, lx"}\n'
    found = refusal(
        tmp_path,
        declared(source),
        **{"raw/corvane.csv": HEAD + "2,broken\n", "raw/ostler.csv": HEAD + "2,6,9\n3,7,9\n"},
    )
    assert [(f.rule, f.place.file, f.place.line) for f in found if f.severity == "error"] == [
        ("text-in-a-channel", "raw/corvane.csv", 4),
        ("ragged-row", "raw/ostler.csv", 4),
    ]


@pytest.mark.parametrize(
    ("data", "rule"),
    [
        (HEAD.encode("utf-16") + b"1", "wrong-encoding"),  # cut in the middle of a character
        (b"", "empty-table"),
        (b"\x81\xb5 Elapsed,Ch1\n0,5\n", "not-utf-8"),
        ("".join(f"{t},{t} lx\n" for t in range(3000)).encode(), "text-in-a-channel"),
    ],
)
def test_a_damaged_file_is_refused_in_words(data: bytes, rule: str, tmp_path: Path) -> None:
    data = b"Elapsed,Ch1\n" + data if rule == "text-in-a-channel" else data
    found = refusal(tmp_path, declared(ONE), **{"raw/log.csv": data})
    assert [f.rule for f in found if f.severity == "error"] == [rule]


def test_a_declared_code_page_is_taken_at_its_word(tmp_path: Path) -> None:
    text = "Zeit (min);Ch1 (°C)\n0;5,5\n1;6,5\n".encode("cp850")
    source = "logger: {corvane: raw/log.csv}\nencoding: cp850\ncolumns: {light: Ch1}\n"
    readings, _ = read(tmp_path, source, **{"raw/log.csv": text})
    (series,) = series_of(readings)
    assert series.unit == "°C"
    assert series.ends == 60


@pytest.mark.parametrize(
    ("source", "text", "says"),
    [
        (ONE.replace(", s", ""), HEAD, "nothing says in which unit"),
        (ONE.replace(", s", ", kg"), HEAD, "no unit of time"),
        (ONE, "Elapsed,Ch1\n05/02/2026 10:00:00,5\n", "slashes"),
        (ONE, "Elapsed,Ch1\n10:05,5\n10:06,5\n", "hours and minutes or minutes and seconds"),
    ],
)
def test_a_time_that_could_mean_two_things_is_never_guessed(source: str, text: str, says: str, tmp_path: Path) -> None:
    told = [f for f in refusal(tmp_path, declared(source), **{"raw/log.csv": text}) if f.rule == "no-times"]
    assert says in told[0].says


def test_a_code_page_taken_for_granted_is_told(tmp_path: Path) -> None:
    text = "Elapsed (s),Ch1 (lx),T (°C)\n0,5,21\n1,6,21\n".encode("cp1252")
    readings, _ = read(tmp_path, ONE, **{"raw/log.csv": text})
    assert [f.rule for f in readings.findings if f.rule == "encoding-assumed"] == ["encoding-assumed"]
    assert readings.files[0].encoding == "cp1252"


@pytest.mark.parametrize(
    ("form", "clock"),
    [("%H:%M:%S", True), ("%I:%M:%S %p", True), ("%Y-%m-%dT%H:%M:%S", True), ("%d.%m.%Y %H:%M:%S", True),
     ("%Y-%m-%dT%H:%M:%S+02:00", False)],
)  # fmt: skip
def test_a_gap_is_told_by_the_clock_of_its_file(form: str, clock: bool, tmp_path: Path) -> None:
    """Python's datetime writes the stamps and says the time; with an offset from UTC it is counted instead."""
    start = datetime.datetime(2026, 5, 30, 23, 58, 30)
    seconds = [*(15.0 * i for i in range(12)), *(420 + 15.0 * i for i in range(6))]
    text = "Clock,Ch1\n" + stamps(form, start, seconds)
    readings, _ = read(tmp_path, ONE.replace("Elapsed, s", "Clock"), **{"raw/log.csv": text})
    (gap,) = [f for f in readings.findings if f.rule == "gap-in-a-trace"]
    last = start + datetime.timedelta(seconds=165)
    at = f"{last:%H:%M:%S}" if clock else "2 min 45 s"
    assert f"4 min 15 s from {at} on" in gap.says.replace("\u00a0", " ")
