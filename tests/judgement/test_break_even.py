"""Break-evens against what Fieller's limits are by definition, and how often they hold the truth."""

from __future__ import annotations

import random
from math import inf

import pytest

from reportgen.judgement.judging import judge
from reportgen.judgement.measured import Measured, Pair, Rules
from reportgen.judgement.money.break_even import BreakEven, CostLine, Slope, break_even, cheapest, slope_of

PRICES = {"dear": 90.0, "cheap": 60.0}
TRUE = {"dear": 0.25, "cheap": 0.37}  # they meet at 250 uses
USE = (0.0, 1e6)


def passes(seed: int, n: int = 4, sd: float = 0.03) -> dict[str, list[float]]:
    source = random.Random(seed)
    return {name: [source.gauss(mean, sd) for _ in range(n)] for name, mean in TRUE.items()}


def pair_of(values: dict[str, list[float]], uses: float | None = None) -> Pair:
    """Judgement on the costs of a use, or on what so many uses cost with the price, pass by pass."""
    told = [[x if uses is None else PRICES[name] + uses * x for x in of] for name, of in values.items()]
    measured = [Measured(name, sum(of) / len(of), tuple(of)) for name, of in zip(values, told, strict=True)]
    return judge(measured, Rules("lower")).pairs[0]


def lines(values: dict[str, list[float]]) -> list[CostLine]:
    return [CostLine(name, PRICES[name], PRICES[name], sum(of) / len(of)) for name, of in values.items()]


def found_for(values: dict[str, list[float]]) -> BreakEven:
    dear, cheap = lines(values)
    return break_even(dear, cheap, slope_of(pair_of(values)), USE)


@pytest.mark.parametrize("seed", range(20))
def test_between_the_limits_totals_are_tied_and_outside_them_told_apart(seed: int) -> None:
    """Fieller's limits by their definition (1954), with judgement on the totals themselves for the witness."""
    values = passes(seed)
    found = found_for(values)
    assert found.why == "crosses"
    assert found.low is not None
    assert found.high is not None
    for uses, favoured in ((found.low * 0.999, "cheap"), (found.low * 1.001, None), (found.high * 0.999, None),
                           (found.high * 1.001, "dear")):  # fmt: skip
        assert pair_of(values, uses).favours == favoured
        low, high = sorted((uses * 0.9999, uses * 1.0001))
        (only,) = cheapest(lines(values), {("dear", "cheap"): slope_of(pair_of(values))}, (low, high))
        assert only.may_be == ((favoured,) if favoured else ("dear", "cheap"))


def test_the_limits_hold_the_truth_in_95_of_100_and_a_wrong_one_is_rarely_named() -> None:
    """600 runs: 0.95 ± 0.027 (three standard errors); the wrong one of two just before they meet in at most 1 in 40."""
    held = wrong = 0
    for seed in range(1000, 1600):
        values = passes(seed)
        found = found_for(values)
        held += found.low is None or found.high is None or found.low <= 250 <= found.high
        wrong += found.high is not None and found.high < 250
    assert held / 600 == pytest.approx(0.95, abs=0.027)
    assert wrong / 600 <= 0.025 + 3 * (0.025 * 0.975 / 600) ** 0.5


def test_three_lines_have_stretches_and_the_middle_one_may_have_none() -> None:
    """A at 10 and 3 a use, B at 20 and 2, C at 40 and 1: A until 10, B until 20, then C (by hand)."""
    a, b, c = CostLine("a", 10, 10, 3), CostLine("b", 20, 20, 2), CostLine("c", 40, 40, 1)
    sure = {("a", "b"): Slope(1, 1, 1), ("b", "c"): Slope(1, 1, 1), ("a", "c"): Slope(2, 2, 2)}
    assert [(s.low, s.high, s.may_be) for s in cheapest([a, b, c], sure, (0, 50))] == [
        (0, 10, ("a",)), (10, 20, ("b",)), (20, 50, ("c",)),
    ]  # fmt: skip
    steep = CostLine("b", 30, 30, 2)
    assert [s.may_be for s in cheapest([a, steep, c], sure, (0, 50))] == [("a",), ("c",)]


def test_the_order_of_a_pair_changes_nothing() -> None:
    values = passes(3)
    dear, cheap = lines(values)
    slope = slope_of(pair_of(values))
    assert slope is not None
    one, other = break_even(dear, cheap, slope, USE), break_even(cheap, dear, slope.turned(), USE)
    assert (one.at, one.low, one.high, one.sooner, one.later) == (
        other.at, other.low, other.high, other.sooner, other.later,
    )  # fmt: skip


def test_a_range_that_may_be_no_dearer_breaks_even_from_the_first_use() -> None:
    dear, cheap = CostLine("dear", 55.0, 75.0, 0.25), CostLine("cheap", 60.0, 60.0, 0.37)
    found = break_even(dear, cheap, Slope(-0.15, -0.10, -0.12), USE)
    assert (found.at, found.low, found.high) == (None, 0.0, pytest.approx(150.0))


def test_of_a_bound_only_the_latest_is_known() -> None:
    dear, cheap = CostLine("dear", 90, 90, 0.25), CostLine("cheap", 60, 60, 0.3, limit="above")
    found = break_even(dear, cheap, Slope(-inf, -0.04), USE)
    assert (found.at, found.low, found.high) == (None, 0.0, pytest.approx(750.0))


def test_alike_in_price_and_cost_are_alike() -> None:
    one, other = CostLine("a", 60, 60, 0.3), CostLine("b", 60, 60, 0.3)
    assert break_even(one, other, Slope(0, 0, 0), USE).why == "alike"
    assert break_even(one, other, None, USE).why == "not-known"
