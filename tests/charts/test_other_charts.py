"""Yes/no, counts, grades, places and prices, drawn for what they are."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from reportgen.campaign.declared import Quantity
from reportgen.charts.draw import drawn, figures
from reportgen.charts.overview import blocks_of
from reportgen.charts.ties import tied
from reportgen.evaluation.evaluated import Result, ValueForMoney, Verdict
from tests.charts.bench_of_results import campaign, contenders, measured, passes, quantity
from tests.charts.pictures import layer, ticks

TWO = contenders("Corvane Sol", "Ostler Mk II")


def looked(q: Quantity, contender: str, words: list[str], left_out: tuple[int, ...] = (), grade: str = "") -> Result:
    used = [w for n, w in enumerate(words) if n not in left_out]
    yes_no = q.kind == "yes/no"
    return replace(
        measured(q, contender, [], None, rank=None),
        kind=q.kind, estimate=None, by_pass=passes([None] * len(words), left_out, words), passes=len(used),
        excluded=len(left_out), yes=used.count("yes") if yes_no else None, of=len(used) if yes_no else None, grade=grade,
    )  # fmt: skip


def test_yes_and_no_are_dots_out_of_as_many_as_there_were_passes() -> None:
    q = quantity("lit", "", "higher", kind="yes/no")
    results = [looked(q, "corvane-sol", ["yes"] * 3), looked(q, "ostler-mk-ii", ["yes", "no", "yes", "no"], (3,))]
    shown = figures(*campaign(TWO, [(q, results)]))[q.id]
    assert [len(layer(shown.svg, name)) for name in ("yes", "no", "passes-left-out")] == [5, 1, 1]
    assert {t.text for t in layer(shown.svg, "figures")} == {"3 of 3", "2 of 3"}
    assert "Corvane Sol: 3 of 3" in shown.alt
    assert not layer(shown.svg, "bars")


def test_a_count_is_a_bar_from_zero() -> None:
    q = quantity("scratches", "", kind="count")
    results = [
        replace(measured(q, c.id, v, None, rank=None), kind="count") for c, v in zip(TWO, ([3.0], [7.0]), strict=True)
    ]
    svg = figures(*campaign(TWO, [(q, results)]))[q.id].svg
    three, seven = layer(svg, "bars")
    nought = next(x for n, x in ticks(svg) if n == 0)
    assert three.left == seven.left == pytest.approx(nought)
    assert (seven.right - nought) / (three.right - nought) == pytest.approx(7 / 3, rel=1e-3)


def test_grades_keep_their_order_and_every_pass_is_a_dot_in_its_column() -> None:
    q = quantity("ease", "", "higher", kind="grade", grades=("poor", "fair", "good"))
    results = [looked(q, "corvane-sol", ["good", "good", "fair"], grade="good"), looked(q, "ostler-mk-ii", ["poor"])]
    svg = figures(*campaign(TWO, [(q, results)]))[q.id].svg
    labels = {t.text: t.x for t in layer(svg, "grades")}
    assert list(labels) == ["poor", "fair", "good"]
    assert labels["poor"] < labels["fair"] < labels["good"]
    dots = [min(labels, key=lambda g: abs(labels[g] - dot.x)) for dot in layer(svg, "passes")]
    assert sorted(dots) == ["fair", "good", "good", "poor"]


def test_contenders_of_one_rank_range_share_a_block_and_overlapping_blocks_take_lanes() -> None:
    made = blocks_of({"a": (1, 3), "b": (2, 4), "c": (1, 3), "d": (4, 4)})
    assert [(b.first, b.last, b.members, b.lane) for b in made] == [
        (1, 3, ("a", "c"), 0),
        (2, 4, ("b",), 1),
        (4, 4, ("d",), 0),
    ]


def test_the_overview_says_who_is_alone_in_first_place_and_leaves_unranked_quantities_out() -> None:
    def row(id: str, ranks: list[tuple[int, int] | None], better: str = "lower") -> tuple[Quantity, list[Result]]:
        q = quantity(id, better=better)
        return q, [
            measured(q, c.id, [1.0 + n, 1.2 + n], 0.2, rank=r) for n, (c, r) in enumerate(zip(TWO, ranks, strict=True))
        ]

    rows = [row("gas", [(1, 1), (2, 2)]), row("time", [(1, 2), (1, 2)]), row("mass", [None, None], "neither")]
    shown = figures(*campaign(TWO, rows))["overview"]
    assert shown.found == "Corvane Sol alone is first in gas."
    assert shown.rows == (
        ("Gas", "1", "Corvane Sol"),
        ("Gas", "2", "Ostler Mk II"),
        ("Time", "1–2", "Corvane Sol and Ostler Mk II"),
    )
    assert [t.text for t in layer(shown.svg, "titles")] == ["Gas", "Time"]
    assert len(layer(shown.svg, "blocks")) == 3


def priced(*prices: tuple[float, float, tuple[str, ...]], currency: str = "EUR") -> Verdict:
    told = (ValueForMoney(c.id, f"{p[0]} EUR", p[0], p[1], currency, p[2]) for c, p in zip(TWO, prices, strict=True))
    return Verdict((), (), tuple(told), ("gas-burned",), None, frozenset())


def money(verdict: Verdict) -> Any:
    q = quantity()
    results = [
        measured(q, "corvane-sol", [14.0, 14.2], 0.5),
        measured(q, "ostler-mk-ii", [17.0, 17.2], 0.5, rank=(2, 2)),
    ]
    return drawn(*campaign(TWO, [(q, results)], {q.id: [("corvane-sol", "ostler-mk-ii")]}, verdict_of=verdict))


def test_who_is_beaten_at_no_higher_price_is_an_open_mark_and_is_named() -> None:
    shown = money(priced((89.0, 89.0, ()), (100.0, 120.0, ("corvane-sol",)))).figures["money"]
    assert (len(layer(shown.svg, "marks")), len(layer(shown.svg, "marks-beaten"))) == (1, 1)
    assert len(layer(shown.svg, "price-ranges")) == 1
    assert shown.found == "On gas burned alone, Ostler Mk II is beaten by Corvane Sol at no higher price."


def test_beaten_is_what_the_drawn_quantity_says_not_what_all_of_them_say() -> None:
    shown = money(priced((89.0, 89.0, ()), (100.0, 100.0, ()))).figures["money"]
    assert len(layer(shown.svg, "marks-beaten")) == 1
    dearer = money(priced((120.0, 120.0, ()), (100.0, 100.0, ("corvane-sol",)))).figures["money"]
    assert not layer(dearer.svg, "marks-beaten")
    assert dearer.found == "On gas burned alone, nobody is shown to be beaten by another at no higher price."


def test_prices_in_two_currencies_are_not_drawn_on_one_axis() -> None:
    verdict = priced((89.0, 89.0, ()), (100.0, 100.0, ()))
    mixed = replace(verdict, value=(verdict.value[0], replace(verdict.value[1], currency="USD")))
    told = money(mixed)
    assert "money" not in told.figures
    assert told.absent["money"] == "the prices are in different currencies"


def test_tie_groups_hold_exactly_the_pairs_that_are_not_resolved() -> None:
    """Piepho 2004: two share a group exactly when they are not told apart."""
    names = list("abcdef")
    resolved = [("a", "d"), ("a", "e"), ("a", "f"), ("b", "e"), ("b", "f"), ("c", "f"), ("b", "d")]
    groups = tied(names, resolved)
    assert groups is not None
    together = {frozenset((x, y)) for g in groups for x in g for y in g if x != y}
    everyone = {frozenset((x, y)) for x in names for y in names if x != y}
    assert together == everyone - {frozenset(pair) for pair in resolved}
    assert not any(set(g) < set(other) for g in groups for other in groups)


def test_a_tie_that_skips_the_one_between_is_still_a_group() -> None:
    """Unequal scatter: first and third can't be told apart, the second can be told from both."""
    assert tied(["a", "b", "c"], [("a", "b"), ("b", "c")]) == (("a", "c"),)
