"""The weighed verdict beside independent computations: SciPy's t test, plain draws in NumPy, a formula drawn as it is."""

from __future__ import annotations

from math import sqrt
from textwrap import dedent

import numpy as np
import pytest
from scipy import stats

from reportgen.judgement.measured import Rules
from reportgen.metrology.uncertain import Source
from tests.evaluation.bench import evaluated
from tests.evaluation.test_weighed import NEAR, overall
from tests.evaluation.weighing import told, weighed


def test_an_index_at_fixed_weights_is_that_of_students_test_on_the_weighed_sum_of_each_pass():
    # The witness is SciPy's two-sample t test, of what each pass is worth on all criteria together; passes of two
    # criteria that scatter together are so taken as they are.
    rng = np.random.default_rng(8)
    for n, r in ((2, 0.9), (3, -0.4), (5, 0.5), (4, 0.0)):
        correlations = np.full((3, 3), r) + (1 - r) * np.eye(3)
        mixed = rng.standard_normal((2, n, 3)) @ np.linalg.cholesky(correlations).T / 10
        mixed[0] += 0.05
        found = weighed([told(f"q{c}", {"a": mixed[0, :, c], "b": mixed[1, :, c]}) for c in range(3)])
        worth = mixed.mean(axis=2)
        test = stats.ttest_ind(worth[0], worth[1], alternative="less")
        assert found.index[0].index == pytest.approx(test.pvalue, abs=NEAR)


@pytest.mark.parametrize("seed", range(6))
def test_plain_draws_in_numpy_agree(seed):
    # The witness draws everything anew, straight from what a campaign would say: Student's t about each mean with one χ²
    # a quantity, an offset that all contenders share, one that a contender has on two quantities, weights from sorted
    # uniform numbers.
    rng = np.random.default_rng(100 + seed)
    names, n, many = ("a", "b", "c"), 4, 200_000
    passes = {q: {c: rng.normal(0.5 + 0.1 * rng.random(), 0.1, n) for c in names} for q in "pqr"}
    offset, own = 0.3, 0.06
    scale = Source("offset", "scale")

    def errors(name):
        return {scale: offset, Source("accuracy", "thermometer", name): own}

    quantities = [told(q, v, test=q, contributions={c: errors(c) for c in names}) for q, v in passes.items()]
    found = weighed(quantities, {q: [q] for q in "pqr"})

    cuts = np.sort(rng.random((2, many)), axis=0)
    weights = np.stack([cuts[0], cuts[1] - cuts[0], 1 - cuts[1]])
    shared = rng.uniform(-sqrt(3), sqrt(3), many) * offset
    of_contender = {c: rng.uniform(-sqrt(3), sqrt(3), many) * own for c in names}
    worth = {c: np.zeros(many) for c in names}
    off = {c: np.zeros(many) for c in names}
    for w, values in zip(weights, passes.values(), strict=True):
        pooled = sqrt(np.mean([np.var(v, ddof=1) for v in values.values()]))
        spread = pooled / np.sqrt(rng.chisquare(3 * (n - 1), many) / (3 * (n - 1)))
        for c in names:
            error = rng.standard_normal(many) * spread / sqrt(n) + shared + of_contender[c]
            worth[c] += w * (values[c].mean() + error)
            off[c] += w * error
    for pair in found.index:
        assert pair.index == pytest.approx(np.mean(worth[pair.first] > worth[pair.second]), abs=NEAR + 0.005)
    order = np.argsort(np.argsort(-np.stack([worth[c] for c in names]), axis=0), axis=0)
    for row, name in zip(order, names, strict=True):
        wanted = np.bincount(row, minlength=3) / many
        assert found.places[name] == pytest.approx(tuple(wanted), abs=NEAR + 0.005)
    first = np.argmax(np.stack([off[c] for c in names]), axis=0)
    for i, name in enumerate(names):
        assert found.equal_first[name] == pytest.approx(np.mean(first == i), abs=NEAR + 0.005)


def test_a_formula_that_bends_is_drawn_as_it_bends(tmp_path):
    # Time on a gram divides by grams known to ±75 % and ±17 %; the witness draws the formula itself. Along a straight line
    # a would hardly ever reach b.
    text = """\
        title: Which?
        contenders: {a: A one, b: B two}
        instruments:
          rough-scale: {resolution: 0.0001 g, accuracy: ±1.5 g, shared: nothing}
        measure:
          heat: one reading, kJ, higher
          time on a gram:
            kind: one reading
            formula: heat / grams
            unit: kJ/g
            better: higher
            columns: {grams: {unit: g, instrument: rough-scale}}
        verdict: {groups: {g: {criteria: {time on a gram: {worst: 0 kJ/g, best: 10 kJ/g}}}}}
        readings: readings.csv
        """
    rows = "contender,heat,grams\na,10.0000,2.0000\nb,81.0000,9.0000\n"
    found = overall(evaluated(tmp_path, dedent(text), readings=rows))
    rng = np.random.default_rng(2)
    off = rng.uniform(-1.5, 1.5, (2, 400_000))
    a, b = 10 / (2 + off[0]), 81 / (9 + off[1])
    straight_a, straight_b = 5 - 2.5 * off[0], 9 - off[1]
    assert np.mean(a > b) - np.mean(straight_a > straight_b) > 4 * NEAR
    assert found.index[0].index == pytest.approx(np.mean(a > b), abs=NEAR)


def test_where_scatter_grows_with_the_level_one_criterion_says_what_first_place_says():
    # On a scale of logarithms the index is that of Student's test on them (SciPy), whatever the value function.
    rng = np.random.default_rng(5)
    passes = {name: np.exp(rng.normal(m, 0.3, 4)) for name, m in (("a", 0.5), ("b", 0.0))}
    found = weighed([told("q", passes, Rules("higher", scatter="relative"))])
    test = stats.ttest_ind(*(np.log(v) for v in passes.values()), alternative="less")
    assert found.index[0].index == pytest.approx(test.pvalue, abs=NEAR)
