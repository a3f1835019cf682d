"""Whatever a file holds, it is read or refused with places: never a stack trace, never a lost reading."""

from __future__ import annotations

import csv
import io
import tempfile
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from reportgen.finding import Finding, Refused
from reportgen.intake import Readings
from tests.intake.table_bench import measure, read, weighed

TESTS = (weighed(), measure("noise", "dB"), measure("lit", "", "yes/no"), measure("sparks", "", "count"))
WORDS = [
    "contender", "what", "value", "pass", "unit", "corvane", "ostler", "Corvane Sol", "noise", "noise (dB)", "lit",
    "gas burned before", "gas-burned after", "sparks", "all", "", " ", "1", "2.0", "12,5", "over 9", "none (x)", "yes",
    '"', "a\nb", "é", "5:31", "nan", "1e400",
]  # fmt: skip


def outcome(content: bytes) -> Readings | tuple[Finding, ...]:
    with tempfile.TemporaryDirectory() as folder:
        try:
            return read(Path(folder), content, *TESTS)
        except Refused as refused:
            return refused.findings


def read_or_refuse(content: bytes) -> None:
    found = outcome(content)
    if isinstance(found, tuple):
        assert any(f.severity == "error" for f in found)
        assert all(f.says and f.do and f.place.file for f in found)
        return
    lines = content.count(b"\n") + content.count(b"\r") + 1
    for key, reading in found.readings.items():
        assert key.contender in ("corvane", "ostler")
        assert 1 < reading.at.line <= lines
        number = reading.value is not None or reading.limit is not None
        assert [number, bool(reading.word), bool(reading.absent_because)].count(True) == 1


@settings(max_examples=40)
@given(st.binary(max_size=60))
def test_any_bytes(content: bytes) -> None:
    read_or_refuse(content)


rows = st.lists(st.lists(st.sampled_from(WORDS), min_size=2, max_size=5), min_size=1, max_size=5)


@settings(max_examples=80)
@given(rows, st.sampled_from([",", ";", "\t"]))
def test_any_table_made_of_words_a_bench_uses(table: list[list[str]], separator: str) -> None:
    read_or_refuse("\n".join(separator.join(row) for row in table).encode())


HEADINGS = [["contender", "pass", "noise"], ["what", "corvane", "ostler"], ["contender", "what", "value"]]


@settings(max_examples=80)
@given(st.sampled_from(HEADINGS), st.lists(st.lists(st.sampled_from(WORDS), min_size=3, max_size=3), max_size=4))
def test_any_rows_under_headings_that_fit(heading: list[str], table: list[list[str]]) -> None:
    out = io.StringIO()
    csv.writer(out).writerows([heading, *table])
    read_or_refuse(out.getvalue().encode())
