"""How often a weighed verdict names a winner, by simulation through the program's own joint draws.

A false winner is one that is named though nobody is really ahead. Expected rates are worked out by hand where all is
normal; each check allows three binomial standard deviations.
"""

from __future__ import annotations

from dataclasses import replace
from math import sqrt

import numpy as np
import pytest

from reportgen.judgement.judging import judge
from reportgen.judgement.measured import Measured, Rules
from reportgen.judgement.verdict.overall import FIRM_FROM
from reportgen.metrology.uncertain import Source
from tests.evaluation.weighing import HIGHER, told, weighed

RUNS = 150
OWN, RELATIVE = Rules("higher", scatter="own"), Rules("higher", scatter="relative")


def spread(rate: float, runs: int = RUNS) -> float:
    return 3 * sqrt(rate * (1 - rate) / runs)


def rate_of_winners(k, n, criteria=2, together=0.0, lead=0.0, rules=HIGHER, runs=RUNS, seed=3):
    """Shares of runs in which the first, and in which any other, of k contenders wins; all equal but for `lead` in
    standard deviations of a pass, n passes each, criteria of one test with passes that go together."""
    rng = np.random.default_rng(seed)
    mixed = np.linalg.cholesky(np.full((criteria, criteria), together) + (1 - together) * np.eye(criteria)).T
    right = wrong = 0
    for _ in range(runs):
        x = rng.standard_normal((k, n, criteria)) @ mixed
        x[0] += lead
        found = weighed([told(f"q{c}", {f"c{i}": x[i, :, c] for i in range(k)}, rules) for c in range(criteria)])
        right += found.winner == "c0"
        wrong += found.winner not in (None, "c0")
    return right / runs, wrong / runs


def rate_in_corner(rules, sds, leads, n, runs, criteria=2, seed=4):
    """Share of runs in which anybody wins, on criteria of tests apart; where scatter is relative passes are lognormal."""
    rng = np.random.default_rng(seed)
    named = 0
    for _ in range(runs):
        quantities = []
        for c in range(criteria):
            x = rng.standard_normal((len(sds), n)) * np.array(sds)[:, None] + np.array(leads)[:, None]
            x = np.exp(x) if rules.scatter == "relative" else x
            quantities.append(told(f"q{c}", {f"c{i}": row for i, row in enumerate(x)}, rules, test=f"t{c}"))
        named += weighed(quantities).winner is not None
    return named / runs


@pytest.mark.parametrize("together", [0.9, -0.9])
def test_criteria_that_scatter_together_keep_the_guarantee(together):
    assert sum(rate_of_winners(2, 3, together=together)) == pytest.approx(0.05, abs=spread(0.05))


def test_of_four_equals_hardly_any_campaign_names_one():
    assert sum(rate_of_winners(4, 3, runs=150)) <= 0.011 + spread(0.011, 150)


def test_own_scatter_keeps_the_guarantee():
    assert sum(rate_of_winners(2, 4, rules=OWN)) <= 0.05 + spread(0.05)


CORNERS = {
    "eight equals of two passes": (HIGHER, [1.0] * 8, [0.0] * 8, 2),
    "two best of four alike": (HIGHER, [1.0] * 4, [9.0, 9.0, 0.0, 0.0], 3),
    "two passes, one scattering fifty times as much": (OWN, [50.0, 1.0, 1.0, 1.0], [0.0] * 4, 2),
    "two best of which one scatters ten times as much": (OWN, [1.0, 10.0], [0.0, 0.0], 3),
}


@pytest.mark.parametrize("corner", CORNERS)
def test_the_guarantee_holds_in_corners(corner):
    assert rate_in_corner(*CORNERS[corner], runs=60) <= 0.05 + spread(0.05, 60)


def test_scatter_that_grows_with_the_level_keeps_the_guarantee():
    assert rate_in_corner(RELATIVE, [0.4] * 2, [0.0] * 2, 3, runs=80) <= 0.05 + spread(0.05, 80)


def test_a_lead_on_both_criteria_is_found_more_often_than_on_one():
    one = rate_of_winners(4, 3, criteria=1, lead=2.0, runs=80)
    two = rate_of_winners(4, 3, criteria=2, lead=2.0, runs=80)
    assert one[0] == pytest.approx(
        0.36, abs=spread(0.36, 80)
    )  # as first place by itself (tests/judgement/test_judging_rates.py)
    assert two[0] > one[0] + 0.15
    assert max(one[1], two[1]) <= 0.02


@pytest.mark.parametrize(("times", "false"), [(2, 0.18), (5, 0.52)])
def test_criteria_of_unknown_scatter_alone_would_name_false_winners_and_so_name_none(times, false):
    # Four equals, single readings, an instrument that errs normally by 1 and passes that scatter 2 or 5 times as much.
    rng = np.random.default_rng(6)
    would = named = 0
    for _ in range(RUNS):
        found = weighed([single(f"q{c}", rng.normal(0.0, sqrt(1 + times**2), 4), error=1.0) for c in range(2)])
        would += found.lead.index >= FIRM_FROM
        named += found.winner is not None
    assert would / RUNS == pytest.approx(false, abs=spread(false))
    assert named == 0


def test_at_95_in_a_hundred_one_winner_in_ten_would_be_false():
    rng = np.random.default_rng(6)
    at_95 = at_975 = 0
    for _ in range(RUNS):
        x = rng.standard_normal((2, 3, 2))
        found = weighed([told(f"q{c}", {"a": x[0, :, c], "b": x[1, :, c]}) for c in range(2)])
        at_95 += found.lead.index >= 0.95
        at_975 += found.lead.index >= FIRM_FROM
    assert at_95 / RUNS == pytest.approx(0.10, abs=spread(0.10))
    assert at_975 / RUNS == pytest.approx(0.05, abs=spread(0.05))


def single(quantity: str, values, error: float):
    """One reading each, with an error of the instrument that no two share."""
    made = told(quantity, {f"c{i}": (x,) for i, x in enumerate(values)})
    measured = tuple(
        Measured(m.name, m.value, m.values, {Source("accuracy", "meter", quantity + m.name, "normal"): error})
        for m in made.measured
    )
    return replace(made, measured=measured, judged=judge(measured, made.rules))
