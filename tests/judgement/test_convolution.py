"""Student's t beside parts of every shape: quantiles of their sum against closed forms, tables and direct integration."""

from math import asin, cos, inf, pi, radians, sin, sqrt

import numpy as np
import pytest
from scipy.special import stdtr

from reportgen.judgement.half_width import unshared
from reportgen.judgement.reach.convolution import probability_below, quantile
from reportgen.judgement.reach.parts import Parts, parts_of, sd_of
from reportgen.metrology.uncertain import Source

CAUCHY = 12.706204736174694  # tan(0.475·π), the 97.5 % quantile of t with one degree of freedom, in closed form


@pytest.mark.parametrize(("degrees", "angle", "printed"), [(6, 45, 2.435), (8, 45, 2.292), (12, 45, 2.167)])
def test_two_students_together_have_the_quantiles_of_behrens_and_fisher(degrees, angle, printed):
    # Fisher and Yates, Statistical Tables, table VI (5 %, two-sided; equal degrees of freedom), from memory
    other = Parts(student=((sin(radians(angle)), degrees),))
    assert quantile(0.95, cos(radians(angle)), degrees, other) == pytest.approx(printed, abs=0.001)


def test_students_of_one_degree_of_freedom_add_their_sizes():
    # t with one degree of freedom is Cauchy's; a sum of such is one as wide as all together (Feller II, II.4)
    two = quantile(0.95, 1.0, 1, Parts(student=((2.0, 1),)))
    assert two == pytest.approx(3 * CAUCHY, rel=1e-6)
    three = quantile(0.95, 0.0, 1, Parts(student=((0.5, 1), (1.0, 1), (2.0, 1))))
    assert three == pytest.approx(3.5 * CAUCHY, rel=1e-6)


@pytest.mark.parametrize(
    ("degrees", "size", "of_part"),
    [(1, 0.5, 2), (2, 2.0, 3), (4, 0.3, 1), (9, 20.0, 2), (30, 1000.0, 1), (3, 1.0, 1e7)],
)
def test_two_students_agree_with_direct_integration(degrees, size, of_part):
    h = quantile(0.95, 1.0, degrees, Parts(student=((size, of_part),)))
    s = np.linspace(-25, 25, 100_001)  # of asinh of the part, so that its tails are reached
    edges = stdtr(of_part, np.sinh(s))
    inside = stdtr(degrees, h - size * np.sinh(s)) - stdtr(degrees, -h - size * np.sinh(s))
    found = np.sum((inside[1:] + inside[:-1]) / 2 * np.diff(edges))
    assert found == pytest.approx(0.95, abs=3e-6)


@pytest.mark.parametrize(("size", "degrees"), [(1.0, 1), (0.1, 1), (0.01, 3), (0.001, 2), (0.0003, 5)])
def test_a_student_beside_a_uniform_part_agrees_with_direct_integration_however_narrow_it_is(size, degrees):
    h = quantile(0.95, 0.0, 1, Parts(uniform=(1.0,), student=((size, degrees),)))
    at = np.linspace(-1, 1, 200_001)
    inside = stdtr(degrees, (h - at) / size) - stdtr(degrees, (-h - at) / size)
    assert np.trapezoid(inside, at) / 2 == pytest.approx(0.95, abs=2e-6)
    assert quantile(0.95, size, degrees, Parts(uniform=(1.0,))) == pytest.approx(h, rel=1e-8)


def test_a_triangular_and_an_arcsine_part_alone_end_where_their_formulas_say():
    # JCGM 101, 6.4.5 (triangular: P(|X| ≤ h) = 1 − (1 − h)²) and 6.4.6 (arcsine: 2·asin(h)/π)
    assert quantile(0.95, 0.0, 1, Parts(triangular=(1.0,))) == pytest.approx(1 - sqrt(0.05), rel=1e-4)
    assert quantile(0.95, 0.0, 1, Parts(arcsine=(1.0,))) == pytest.approx(sin(0.95 * pi / 2), rel=1e-4)
    assert probability_below(0.3, 0.0, 1, Parts(arcsine=(1.0,))) == pytest.approx(0.5 + asin(0.3) / pi, abs=1e-4)
    assert sd_of(Parts(triangular=(1.0,))) == pytest.approx(1 / sqrt(6))
    assert sd_of(Parts(arcsine=(1.0,))) == pytest.approx(1 / sqrt(2))


def test_all_shapes_together_agree_with_a_million_draws():
    draw, n = np.random.default_rng(11), 1_000_000
    total = np.sin(draw.uniform(-pi / 2, pi / 2, n)) + draw.triangular(-2, 0, 2, n) + draw.uniform(-0.5, 0.5, n)
    total += 0.3 * draw.standard_normal(n) + 0.4 * draw.standard_t(2, n) + 0.7 * draw.standard_t(3, n)
    parts = Parts((0.5,), 0.3, (2.0,), (1.0,), ((0.4, 2),))
    h = quantile(0.95, 0.7, 3, parts)
    assert (np.abs(total) <= h).mean() == pytest.approx(0.95, abs=4 * sqrt(0.95 * 0.05 / n))
    assert (total <= 1.5).mean() == pytest.approx(probability_below(1.5, 0.7, 3, parts), abs=4 * sqrt(0.25 / n))


def test_a_size_known_for_certain_is_normal():
    assert parts_of(student=[(3.0, inf)], normal_sds=[4.0]) == Parts(normal=5.0)


def fit(where, degrees=4, of="line", sort="fit"):
    return Source(sort, of, where, "normal", degrees)


def test_parameters_of_one_fit_are_one_student_together():
    # JCGM 101, 6.4.9.3: one estimate of a variance behind all of them
    together = unshared({fit("1"): 3.0, fit("2"): -4.0}, {})
    assert together == Parts(student=((5.0, 4),))
    assert unshared({fit("1"): 3.0, fit("1", of="other"): 4.0}, {}) == Parts(student=((3.0, 4), (4.0, 4)))


def test_what_two_results_share_of_a_fit_cancels_before_it_is_put_together():
    left = unshared({fit("1"): 3.0, fit("2"): 4.0}, {fit("1"): 3.0, fit("2"): 1.0})
    assert left == Parts(student=((3.0, 4),))


def test_the_scatter_of_each_contender_is_an_estimate_by_itself():
    a, b = (fit(name, 2, "loss", "scatter") for name in ("corvane", "ostler"))
    assert unshared({a: 1.0}, {b: 2.0}, repeat=True) == Parts(student=((1.0, 2), (2.0, 2)))
