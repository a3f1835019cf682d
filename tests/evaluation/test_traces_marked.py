"""The lines of a logger's file that are worth a look are found as one would find them by eye."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import numpy as np
import pytest

from reportgen.evaluation.evaluated import Crossing
from reportgen.evaluation.traces_marked import marked
from reportgen.intake.reading import ReadingKey, Series
from reportgen.metrology.traces.piece import Piece
from reportgen.metrology.traces.trace import Trace
from reportgen.metrology.unit import parse_unit

KEY = ReadingKey("pull", "corvane", "1", "1", "", "pull")
VALUES = [1.0, 4.0, 9.0, 9.0, 5.0, 0.5, 7.0]  # one a second, from line 5 on
SERIES = Series("a.csv", "", "Pull", "t", None, "N", "", 5, 11, 7, 0.0, 6.0)


def trace(values: list[float], length: int, sides: list[int] | None = None) -> Trace:
    """The values in pieces of a length."""

    def pieces() -> Iterator[Piece]:
        for i in range(0, len(values), length):
            part = np.array(values[i : i + length])
            side = np.array((sides or [0] * len(values))[i : i + length], dtype=np.int8)
            yield Piece(np.arange(i, i + len(part), dtype=np.float64), part, side)

    def observe(*_: object) -> object:
        raise AssertionError("nothing is observed here")

    return Trace("pull", pieces, parse_unit("N"), observe, 0.0, 6.0, 1.0)  # type: ignore[arg-type]  # never called


@pytest.mark.parametrize("length", [1, 2, 3, 7, 100])
def test_the_first_of_the_highest_and_of_the_lowest_samples_is_marked_however_a_trace_comes_in_pieces(
    length: int,
) -> None:
    assert {m.what: m.line for m in marked(trace(VALUES, length), SERIES, ())} == {"highest": 7, "lowest": 10}


@pytest.mark.parametrize("length", [1, 2, 3, 7])
def test_a_limit_is_marked_at_the_first_sample_behind_it(length: int) -> None:
    """Between 4 at 1 s and 9 at 2 s a straight line passes 6 at 1.4 s: the sample behind it is the third, line 7."""
    crossing = Crossing(KEY, "time-to-pull", "over", 6.0, 1.4)
    never = replace(crossing, at=6.0, past=True)
    marks = marked(trace(VALUES, length), SERIES, (crossing, crossing, never))
    assert [(m.line, m.quantity) for m in marks if m.what == "passed"] == [(7, "time-to-pull")]


def test_nothing_is_marked_where_lines_hold_no_sample_of_the_trace() -> None:
    assert marked(trace(VALUES, 3), replace(SERIES, last=12), ()) == ()


def test_a_sample_off_the_scale_counts_with_its_limit_and_one_without_a_limit_not_at_all() -> None:
    off = [1.0, float("nan"), 999.0, 3.0, 3.0, 3.0, 3.0]
    assert {m.what: m.line for m in marked(trace(off, 2, [0, 1, 1, 0, 0, 0, 0]), SERIES, ())} == {
        "highest": 7,
        "lowest": 5,
    }
