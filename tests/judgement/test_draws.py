"""Intervals from joint draws beside Student's t, against distributions whose ends are known."""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, inf, sqrt

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy import stats

from reportgen.judgement.drawn.beyond import Beyond, apart
from reportgen.judgement.drawn.draws import by_draws, probability_below
from reportgen.judgement.drawn.quantile_of_draws import INSTRUMENT_ALONE, Scattered
from reportgen.judgement.judging import judge
from reportgen.judgement.measured import Measured, Rules
from reportgen.metrology.uncertain import Source
from tests.judgement.bench import pair

Numbers = NDArray[np.float64]
GAIN = Source("gain", "rule")


def normal(number: int, name: str = "") -> Numbers:
    stream = np.random.Generator(np.random.PCG64([number, *name.encode()]))
    return stream.standard_normal(10_000)


def log_normal(size: float, name: str = "", lost: float = 0.0) -> Beyond:
    """e^(size·z) − 1 about a value of 1, straight part size·z; `lost`: of the draws, those above have no answer."""

    def block(number: int, repeat: bool) -> tuple[Numbers, Numbers]:
        z = normal(number, name)
        full = np.expm1(size * z)
        if lost:
            full = np.where(z > stats.norm.ppf(1 - lost), np.nan, full)
        return size * z, full

    return Beyond(lambda repeat: size * size / 2, block)


def ask(beyond: Beyond, size: float, scattered: Scattered = INSTRUMENT_ALONE) -> tuple[float, float]:
    """The interval of a value of 1 whose straight part is normal."""
    half, u = quantile_beside(size, scattered, 0.975), sqrt(size**2 + scattered.root**2)
    found = by_draws(beyond, half, u, scattered, 0.05)
    assert found is not None
    assert found.needed
    return found.low, found.high


def quantile_beside(size: float, scattered: Scattered, share: float) -> float:
    """Of size·z + √A·T, by quadrature."""
    if not scattered.root:
        return float(stats.norm.ppf(share)) * size
    z = stats.norm.ppf((np.arange(4000) + 0.5) / 4000)
    low, high = -60 * scattered.root, 60 * scattered.root
    for _ in range(80):
        middle = (low + high) / 2
        below = stats.t(scattered.degrees).cdf((middle - size * z) / scattered.root).mean() < share
        low, high = (middle, high) if below else (low, middle)
    return float(low)


def test_the_ends_of_a_log_normal_are_powers_of_the_ends_of_a_normal() -> None:
    """JCGM 101, 7.7: a rising function carries quantiles over."""
    low, high = ask(log_normal(0.3), 0.3)
    assert (low, high) == pytest.approx((exp(-0.3 * 1.959964) - 1, exp(0.3 * 1.959964) - 1), abs=0.005)


def test_its_u_is_the_standard_deviation_of_a_log_normal() -> None:
    found = by_draws(log_normal(0.3), 0.588, 0.3, INSTRUMENT_ALONE, 0.05)
    assert found is not None
    assert found.u == pytest.approx(stats.lognorm(0.3).std(), abs=0.005)
    assert found.mean == pytest.approx(stats.lognorm(0.3).mean() - 1, abs=0.005)


@pytest.mark.parametrize("degrees", [2, 8])
def test_beside_scatter_the_ends_hold_what_quadrature_says(degrees: int) -> None:
    scattered = Scattered(0.2, degrees, repeat=True)
    low, high = ask(log_normal(0.4), 0.4, scattered)
    z = stats.norm.ppf((np.arange(20_000) + 0.5) / 20_000)
    below = [float(stats.t(degrees).cdf((h - np.expm1(0.4 * z)) / 0.2).mean()) for h in (low, high)]
    assert below == pytest.approx([0.025, 0.975], abs=0.001)


def test_nothing_is_drawn_where_second_order_cannot_show() -> None:
    asked: list[int] = []

    def block(number: int, repeat: bool) -> tuple[Numbers, Numbers]:
        asked.append(number)
        return normal(number), normal(number)

    assert by_draws(Beyond(lambda repeat: 1e-6, block), 1.96, 1.0, INSTRUMENT_ALONE, 0.05) is None
    assert asked == []


def test_a_bend_that_cancels_is_drawn_and_first_order_kept() -> None:
    """A guess from above may be far above: the draws say that nothing is left out."""
    straight = Beyond(lambda repeat: 1.0, lambda number, repeat: (normal(number), normal(number)))
    found = by_draws(straight, 1.96, 1.0, INSTRUMENT_ALONE, 0.05)
    assert found is not None
    assert (found.needed, found.draws, found.settled) == (False, 10_000, True)


def test_draws_without_an_answer_may_lie_on_either_side() -> None:
    """One in a hundred: 2.5 % less that share is left below, and what is left above is counted from the answered."""
    low, high = ask(log_normal(0.3, lost=0.01), 0.3)
    ends = [stats.norm.ppf(p) for p in (0.015, 0.975)]
    assert (low, high) == pytest.approx([exp(0.3 * z) - 1 for z in ends], abs=0.006)


def test_too_many_without_an_answer_leave_no_interval() -> None:
    found = by_draws(log_normal(0.3, lost=0.03), 0.588, 0.3, INSTRUMENT_ALONE, 0.05)
    assert found is not None
    assert found.needed
    assert not found.ends


def test_of_two_that_share_their_draws_the_difference_has_none() -> None:
    both = apart(log_normal(0.3, "shared"), log_normal(0.3, "shared"))
    assert both is not None
    straight, full = both.block(0, True)
    assert (float(np.abs(straight).max()), float(np.abs(full).max())) == (0.0, 0.0)


def test_a_probability_is_that_of_the_draws_beside_scatter() -> None:
    found = probability_below(log_normal(0.3), 0.2, Scattered(0.1, 5, repeat=True))
    z = stats.norm.ppf((np.arange(20_000) + 0.5) / 20_000)
    assert found == pytest.approx(stats.t(5).cdf((0.2 - np.expm1(0.3 * z)) / 0.1).mean(), abs=0.003)


def one(name: str, values: Sequence[float], beyond: Beyond, size: float) -> Measured:
    value = sum(values) / len(values)
    return Measured(name, value, tuple(values), {Source("accuracy", name, "", "normal"): size}, beyond=beyond)


def test_a_lead_must_exceed_the_side_of_its_interval_that_faces_nothing() -> None:
    """A is ahead by 1.5 and its own error reaches far down only: to first order the interval of the difference leaves 0
    out, by the draws it doesn't. Turned round, the side away from 0 is the long one, and the lead stands."""

    def skewed(sign: float, name: str) -> Beyond:
        def block(number: int, repeat: bool) -> tuple[Numbers, Numbers]:
            z = normal(number, name)
            return 0.5 * z, sign * np.expm1(0.5 * sign * z)

        return Beyond(lambda repeat: 0.125, block)

    def resolved(sign: float) -> bool:
        runs = [10.0, 10.01, 9.99]
        a = one("a", [x + 1.3 for x in runs], skewed(sign, "a"), 0.5)
        b = one("b", runs, Beyond(lambda repeat: 0.0, lambda n, repeat: (np.zeros(10_000),) * 2), 0.0)
        found = pair(judge([a, b], Rules("higher")), "a", "b")
        assert found.draws is not None
        assert found.draws.needed
        assert found.low is not None
        assert found.high is not None
        assert found.resolved == (found.low > 0.0)
        assert abs(found.low + found.high - 2.6) > 0.3  # uneven about 1.3
        return found.resolved

    assert resolved(1.0)
    assert not resolved(-1.0)


def test_where_no_interval_is_left_nothing_is_said_of_a_pair() -> None:
    runs = [10.0, 10.01, 9.99]
    a = one("a", [x + 5 for x in runs], log_normal(0.3, "a", lost=0.1), 0.3)
    b = one("b", runs, log_normal(0.3, "b"), 0.3)
    judged = judge([a, b], Rules("higher"))
    found = pair(judged, "a", "b")
    assert (found.decision, found.reason.code, found.low, found.high) == ("not enough to say", "no-answer", None, None)
    assert judged.first.winner is None
    assert judged.singles["a"].why_no_u == "no-answer"
    assert judged.singles["b"].u is not None
    assert all(abs(x) < inf for p in judged.pairs for x in p.reason.numbers.values())
