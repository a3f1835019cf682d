"""The order of contenders in tables and charts: by what the readings say, and in a tie by the campaign's order alone."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from reportgen.charts.order import in_order
from reportgen.evaluation.evaluated import Result
from tests.prose.builder import Asked, told

NAMES = ("corvane", "ostler", "brindle", "tamsin")


def results(values: list[float], ranks: list[tuple[int, int]], better: str) -> tuple[list[Result], list[str]]:
    t = told("gas", Asked(better=better), **dict(zip(NAMES, values, strict=True)))
    of = [replace(r, rank=rank) for r, rank in zip(t.evaluation.results, ranks, strict=True)]
    return of, [r.contender for r in in_order(t.campaign.quantity("gas"), of)]


@given(st.lists(st.floats(1, 99), min_size=4, max_size=4), st.sampled_from(["lower", "higher"]))
def test_in_a_tie_values_order_nobody(values: list[float], better: str) -> None:
    _, ordered = results(values, [(1, 4)] * 4, better)
    assert ordered == list(NAMES)


@given(st.lists(st.floats(1, 99), min_size=4, max_size=4))
def test_places_order_and_values_do_not(values: list[float]) -> None:
    _, ordered = results(values, [(3, 4), (1, 2), (3, 4), (1, 2)], "lower")
    assert ordered == ["ostler", "tamsin", "corvane", "brindle"]


def test_those_not_ranked_follow_and_those_without_a_value_come_last() -> None:
    t = told("gas", Asked(), corvane="not read", ostler=3.0, brindle=2.0, tamsin=1.0)
    missing, first, blocked, second = t.evaluation.results
    of = [
        missing,
        replace(first, rank=(1, 2)),
        replace(blocked, rank=None, blocked="why"),
        replace(second, rank=(1, 2)),
    ]
    ordered = [r.contender for r in in_order(t.campaign.quantity("gas"), of)]
    assert ordered == ["ostler", "tamsin", "brindle", "corvane"]
