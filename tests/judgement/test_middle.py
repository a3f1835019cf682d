"""A difference in a quantity's unit, where passes scatter in proportion: the level of both is uncertain besides the ratio."""

from math import exp, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reportgen.judgement.judging import judge
from reportgen.judgement.measured import Rules
from reportgen.judgement.scale import ends_from_logarithm
from reportgen.metrology.uncertain import Source
from tests.judgement.bench import result

RELATIVE = Rules("lower", scatter="relative")
GAIN = Source("gain", "meter", "1")


def passes(centre: float, spread: float) -> tuple[float, ...]:
    """Three passes whose logarithms have a mean of ln(centre) and a standard deviation of `spread`."""
    return tuple(centre * exp(spread * x) for x in (-1.0, 0.0, 1.0))


def the_pair(a: float, b: float, spread: float = 0.01, gain: float = 0.0):
    measured = [
        result(name, *passes(x, spread), contributions={GAIN: gain * x} if gain else {})
        for name, x in (("a", a), ("b", b))
    ]
    return judge(measured, RELATIVE).pairs[0]


@pytest.mark.parametrize("ratio", [1.0, 2.0, 10.0, 100.0])
def test_the_uncertainty_of_a_difference_is_that_of_two_results(ratio):
    # JCGM 100, 5.1.2, of a − b with u = s·a/√3 and s·b/√3; a hundredth is so small that it is exact to as much
    found = the_pair(100.0 * ratio, 100.0)
    assert found.u == pytest.approx(sqrt((100 * ratio) ** 2 + 100**2) * 0.01 / sqrt(3), rel=0.01)
    t = 2.776  # JCGM 100, table G.2: 4 degrees of freedom
    assert (found.high - found.low) / 2 == pytest.approx(t * found.u, rel=0.01)


def test_a_gain_that_both_share_leaves_its_share_of_the_difference():
    # JCGM 100, F.1.2.3: what both share counts with the difference of the two, here 900 of it
    found, without = the_pair(1000.0, 100.0, gain=0.05), the_pair(1000.0, 100.0)
    assert found.u == pytest.approx(sqrt(without.u**2 + (0.05 * 900) ** 2), rel=0.01)
    alike = the_pair(100.0, 100.0, gain=0.05)
    assert alike.u == pytest.approx(the_pair(100.0, 100.0).u, rel=1e-9)


def test_the_ratio_alone_decides():
    for gain in (0.0, 0.05, 0.5):
        found = the_pair(103.5, 100.0, gain=gain)
        assert found.resolved
        assert 0 < found.low < found.difference < found.high


@given(
    d=st.floats(-5, 5),
    below=st.floats(0, 5),
    above=st.floats(0, 5),
    of_middle=st.floats(0, 3),
    centre=st.floats(0.1, 1e3),
)
def test_an_end_lies_on_the_side_of_zero_where_that_of_the_ratio_does(d, below, above, of_middle, centre):
    low, high = ends_from_logarithm(centre, d, (below, above), of_middle)
    plain_low, plain_high = ends_from_logarithm(centre, d, (below, above), 0.0)
    assert (low > 0) == (plain_low > 0)
    assert (high < 0) == (plain_high < 0)
    assert low <= plain_low + 1e-9 * (1 + abs(plain_low))
    assert high >= plain_high - 1e-9 * (1 + abs(plain_high))
    turned = ends_from_logarithm(centre, -d, (above, below), of_middle)
    assert turned == pytest.approx((-high, -low), rel=1e-9, abs=1e-9)
