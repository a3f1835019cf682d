"""Differences in percent of the other one: the interval of a ratio, held against Fieller's closed form."""

from __future__ import annotations

from math import fsum, sqrt

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.stats import t as student

from reportgen.judgement.judging import judge
from reportgen.judgement.measured import DeclaredScatter, Percent, Rules
from reportgen.judgement.percent import turned
from reportgen.metrology.uncertain import Source
from tests.judgement.bench import judged, pair, result

RATIO = Rules("lower", ratio=True)
GAIN, OFFSET = Source("gain", "scale"), Source("offset", "scale", "the session")


def fieller(a: float, b: float, va: float, vb: float, q: float) -> tuple[float, float]:
    """Fieller 1954 (Journal of the Royal Statistical Society B 16:175): all r with (a − r·b)² ≤ q²(va + r²·vb), in %."""
    first, middle, last = b * b - q * q * vb, a * b, a * a - q * q * va
    root = sqrt(middle * middle - first * last)
    return 100 * ((middle - root) / first - 1), 100 * ((middle + root) / first - 1)


NUMBERS = st.floats(90, 110).map(lambda x: round(x, 1))


@settings(max_examples=60, derandomize=True)
@given(st.lists(NUMBERS, min_size=2, max_size=6), st.lists(NUMBERS, min_size=2, max_size=6))
def test_scatter_alone_gives_fiellers_limits(one: list[float], other: list[float]) -> None:
    a, b = fsum(one) / len(one), fsum(other) / len(other)
    free = len(one) + len(other) - 2
    pooled = (fsum((x - a) ** 2 for x in one) + fsum((x - b) ** 2 for x in other)) / free
    assume(pooled > 0.01)
    q = float(student.ppf(0.975, free))
    assume(b > 1.5 * q * sqrt(pooled / len(other)))
    found = pair(judged({"one": one, "other": other}, RATIO), "one", "other").percent
    assert found is not None
    low, high = fieller(a, b, pooled / len(one), pooled / len(other), q)
    assert found.value == pytest.approx(100 * (a - b) / b)
    assert (found.low, found.high) == pytest.approx((low, high), abs=1e-4 * (high - low))


@settings(max_examples=60, derandomize=True)
@given(st.lists(NUMBERS, min_size=3, max_size=3), st.lists(NUMBERS, min_size=3, max_size=3), st.floats(0, 3))
def test_it_leaves_nothing_open_exactly_where_the_difference_does(
    one: list[float], other: list[float], step: float
) -> None:
    both = [
        result(name, *values, contributions={GAIN: sum(values) / 100, Source("accuracy", name): 0.4}, steps=(step,))
        for name, values in (("one", one), ("other", other))
    ]
    found = pair(judge(both, RATIO), "one", "other")
    assume(found.low is not None and found.percent is not None and found.percent.low is not None)
    assert (found.low <= 0.0 <= found.high) == (found.percent.low <= 0.0 <= found.percent.high)  # type: ignore[operator,union-attr]


def test_a_gain_that_both_share_cancels_in_the_ratio_and_not_in_the_difference() -> None:
    plain = pair(judged({"one": [95, 96, 94], "other": [100, 101, 99]}, RATIO), "one", "other")
    both = [
        result(name, *values, contributions={GAIN: 0.1 * values[0]})
        for name, values in (("one", (95, 96, 94)), ("other", (100, 101, 99)))
    ]
    gained = pair(judge(both, RATIO), "one", "other")
    assert gained.high - gained.low > 1.02 * (plain.high - plain.low)  # type: ignore[operator]
    half = plain.percent.value - plain.percent.low  # type: ignore[union-attr,operator]
    assert gained.percent.value - gained.percent.low == pytest.approx(half, rel=0.02)  # type: ignore[union-attr,operator]


def test_an_offset_that_both_share_cancels_in_the_difference_and_leaves_its_part_in_the_ratio() -> None:
    """(a + o)/(b + o): ∂r/∂o = (b − a)/b², by hand."""
    none = DeclaredScatter(1e-6, 100)
    both = [result("one", 50.0, contributions={OFFSET: 2.0}), result("other", 100.0, contributions={OFFSET: 2.0})]
    found = pair(judge(both, Rules("lower", ratio=True, declared=none)), "one", "other")
    assert found.high - found.low < 1e-4  # type: ignore[operator]
    wide = 2.0 * sqrt(3) * 0.95 * (100 - 50) / 100**2  # a uniform part's 95 % (JCGM 100, 4.3.7)
    assert found.percent.high - found.percent.value == pytest.approx(100 * wide, rel=0.05)  # type: ignore[union-attr,operator]


def test_five_percent_less_is_not_five_percent_more_from_the_other_side() -> None:
    """1/0.95 = 1.0526: 5 % less one way is 5.3 % more the other way."""
    back = turned(Percent(-5.0, -6.0, -4.0))
    assert back is not None
    assert back.value == pytest.approx(100 / 0.95 - 100)
    assert (back.low, back.high) == pytest.approx((100 / 0.96 - 100, 100 / 0.94 - 100))
    assert turned(Percent(-100.0, None, None)) is None


def test_from_the_other_side_the_same_ratios_are_left_open() -> None:
    one, other = [95.0, 96.5, 94.1], [100.0, 101.0, 98.9]
    this = pair(judged({"one": one, "other": other}, RATIO), "one", "other").percent
    that = pair(judged({"other": other, "one": one}, RATIO), "other", "one").percent
    assert this is not None
    assert that is not None
    back = turned(this)
    assert back is not None
    assert (back.low, back.value, back.high) == pytest.approx((that.low, that.value, that.high), abs=1e-4)


def test_no_percentage_of_what_may_be_nothing() -> None:
    assert pair(judged({"one": [5, 6, 7], "other": [0.5, 1.5, -0.5]}, RATIO), "one", "other").percent is None
    assert pair(judged({"one": [-5, -6], "other": [-9, -8]}, RATIO), "one", "other").percent is None
    assert pair(judged({"one": [5, 6], "other": [9, 8]}, Rules("lower")), "one", "other").percent is None


def test_one_pass_each_has_a_percentage_and_no_interval() -> None:
    both = [result(name, x, contributions={OFFSET: 0.1}, steps=(0.1,)) for name, x in (("one", 14.0), ("other", 16.0))]
    found = pair(judge(both, RATIO), "one", "other")
    assert found.percent == Percent(pytest.approx(-12.5), None, None)  # type: ignore[arg-type]
    unknown = pair(judge([result("one", 14.0), result("other", 16.0)], RATIO), "one", "other")
    assert unknown.percent is None  # nothing says that 16 isn't nothing


def test_under_relative_scatter_it_is_the_ratio_that_was_judged() -> None:
    rules = Rules("lower", scatter="relative", ratio=True)
    one, other = [95.0, 96.5, 94.1], [100.0, 101.0, 98.9]
    found = pair(judged({"one": one, "other": other}, rules), "one", "other").percent
    logs = np.log(one), np.log(other)
    d = logs[0].mean() - logs[1].mean()
    s = sqrt((logs[0].var(ddof=1) + logs[1].var(ddof=1)) / 2)
    half = student.ppf(0.975, 4) * s * sqrt(2 / 3)
    expected = [100 * np.expm1(x) for x in (d, d - half, d + half)]
    assert found is not None
    assert (found.value, found.low, found.high) == pytest.approx(expected, rel=1e-9)


def test_the_interval_holds_the_true_percentage_in_ninety_five_of_a_hundred_campaigns() -> None:
    """Scatter of 10 % of the level, three passes each, a shared gain of 3 %: 600 campaigns from one seed."""
    draw, true, held, n = np.random.default_rng(5), 100 * (80 / 100 - 1), 0, 600
    for _ in range(n):
        gain = 1 + 0.03 * draw.uniform(-1, 1)
        passes = {"one": gain * draw.normal(80, 8, 3), "other": gain * draw.normal(100, 8, 3)}
        both = [
            result(name, *values, contributions={GAIN: 0.03 / sqrt(3) * float(values.mean())})
            for name, values in passes.items()
        ]
        found = pair(judge(both, RATIO), "one", "other").percent
        assert found is not None
        held += found.low <= true <= found.high  # type: ignore[operator]
    assert abs(held / n - 0.95) < 3.5 * sqrt(0.95 * 0.05 / n)
