"""The mark of what was worked out: equal for the same sums on the same readings, and for no others."""

from __future__ import annotations

from dataclasses import replace

import pytest

from reportgen.metrology.formulas.evaluate import evaluate_by
from reportgen.metrology.formulas.fingerprint import FINGERPRINT, Marked, marks_of
from reportgen.metrology.formulas.parse import parse
from reportgen.metrology.uncertain import Source, Uncertain
from reportgen.metrology.unit import parse_unit

OFFSET, STEP = Source("offset", "scale", "day 1"), Source("step", "scale", "1")
A = Uncertain(231.4, parse_unit("g"), {STEP: 0.03, OFFSET: 0.17})
B = Uncertain(217.1, parse_unit("g"), {OFFSET: 0.17})


class Names:
    """Two readings by name."""

    def __init__(self, a: Uncertain, b: Uncertain) -> None:
        self.by_name = {"a": a, "b": b}

    def value(self, name: str) -> Marked:
        return FINGERPRINT.leaf(self.by_name[name])

    def over_passes(self, name: str) -> list[Marked]:
        return [self.value(name)]

    over_parts = over_passes

    def of(self, contender: str, name: str) -> Marked:
        return self.value(name)


def never(*_: object) -> Uncertain:
    raise AssertionError("no channel here")


def mark(formula: str = "a - b", a: Uncertain = A, b: Uncertain = B) -> str:
    return evaluate_by(FINGERPRINT, parse(formula), Names(a, b), never).mark


def test_the_same_sums_on_the_same_readings_bear_one_mark() -> None:
    again = replace(A, contributions={OFFSET: 0.17, STEP: 0.03})  # their order says nothing
    assert mark() == mark(a=again)
    assert mark("(a) - b") == mark()


@pytest.mark.parametrize(
    "formula", ["b - a", "a + b", "a - a", "a / b", "-(a - b)", "a - b + b", "a - 2 * b", "sqrt(a * b)", "a ^ 2 / b"]
)
def test_other_sums_bear_another(formula: str) -> None:
    assert mark(formula) != mark()


@pytest.mark.parametrize(
    "other",
    [
        replace(A, value=231.4000000000001),
        replace(A, unit=parse_unit("kg")),
        replace(A, limit="above"),
        replace(A, contributions={OFFSET: 0.17}),
        replace(A, contributions={STEP: -0.03, OFFSET: 0.17}),
        replace(A, contributions={STEP: 0.03, Source("offset", "scale", "day 2"): 0.17}),
        replace(A, contributions={STEP: 0.03, Source("offset", "scale", "day 1", "normal"): 0.17}),
        replace(A, contributions={STEP: 0.03, Source("offset", "scale", "day 1", "normal", 4.0): 0.17}),
    ],
)
def test_another_reading_bears_another(other: Uncertain) -> None:
    assert mark(a=other) != mark()


def test_powers_units_and_joins_are_told_apart() -> None:
    x, y = FINGERPRINT.leaf(A), FINGERPRINT.leaf(B)
    marks = [
        FINGERPRINT.power(x, 2.0).mark,
        FINGERPRINT.power(x, 3.0).mark,
        FINGERPRINT.in_unit(x, parse_unit("kg")).mark,
        FINGERPRINT.in_unit(x, parse_unit("mg")).mark,
        FINGERPRINT.joins["mean"]([x, y]).mark,
        FINGERPRINT.joins["sum"]([x, y]).mark,
        FINGERPRINT.joins["sum"]([y, x]).mark,
        FINGERPRINT.joins["sum"]([x]).mark,
        x.mark,
    ]
    assert len(set(marks)) == len(marks)


def test_contributions_are_told_whatever_their_order() -> None:
    assert marks_of({STEP: 0.03, OFFSET: 0.17}) == marks_of({OFFSET: 0.17, STEP: 0.03})
    assert marks_of({STEP: 0.03}) != marks_of({STEP: 0.04})
