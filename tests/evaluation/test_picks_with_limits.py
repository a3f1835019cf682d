"""The least, most or middle of passes where some are only bounds: against every truth behind them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reportgen.evaluation.picking import picked
from reportgen.metrology.errors import NoValue
from reportgen.metrology.uncertain import Limit, Uncertain
from reportgen.metrology.unit import parse_unit


def _at(value: float, limit: Limit | None = None) -> Uncertain:
    return Uncertain(value, parse_unit("g"), {}, limit)


@pytest.mark.parametrize(
    ("how", "passes", "found", "limit"),
    [
        ("least", [_at(41), _at(999, "above")], 41, None),
        ("most", [_at(41), _at(999, "above")], 999, "above"),
        ("most", [_at(5), _at(3, "above")], 5, "above"),  # 5 itself was read, and the other may be more
        ("least", [_at(5), _at(3, "above")], 3, "above"),
        ("middle", [_at(1, "above"), _at(4), _at(5)], 4, "above"),  # the median is 4 or 5 or between
        ("middle", [_at(2), _at(3), _at(999, "above")], 3, None),
        ("middle", [_at(2), _at(8, "above")], 5, "above"),
        ("least", [_at(5), _at(7, "below")], 5, "below"),
        ("most", [_at(5), _at(3, "below")], 5, None),
    ],
)
def test_a_pick_among_passes_with_limits_claims_no_more_than_they_bear(
    how: str, passes: list[Uncertain], found: float, limit: str | None
) -> None:
    seen = picked(how, passes)
    assert (seen.value, seen.limit) == (found, limit)


def test_a_pick_that_could_be_anything_is_none() -> None:
    with pytest.raises(NoValue):
        picked("middle", [_at(5, "above"), _at(3, "below")])


@given(
    st.lists(
        st.tuples(st.integers(-9, 9), st.sampled_from([None, "above", "below"]), st.integers(0, 20)),
        min_size=1,
        max_size=5,
    ),
    st.sampled_from(["least", "most", "middle"]),
)
def test_whatever_the_truth_behind_the_limits_a_pick_holds_it(
    passes: list[tuple[int, Limit | None, int]], how: str
) -> None:
    from statistics import median

    truth = [v + (beyond if limit == "above" else -beyond if limit == "below" else 0) for v, limit, beyond in passes]
    true = {"least": min, "most": max, "middle": median}[how](truth)
    try:
        seen = picked(how, [_at(v, limit) for v, limit, _ in passes])
    except NoValue:
        return
    assert seen.value is not None
    if seen.limit is None:
        assert true == pytest.approx(seen.value)
    elif seen.limit == "above":
        assert true >= seen.value - 1e-9
    else:
        assert true <= seen.value + 1e-9
