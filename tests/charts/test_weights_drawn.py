"""The picture of weights: every choice of weights one mark of whoever leads there, where barycentric coordinates put it."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from reportgen.campaign.declared import Campaign, Criterion, Group, VerdictPlan
from reportgen.charts.figure import Figure
from reportgen.charts.weight_space import corners, place
from reportgen.charts.weights_told import figure
from reportgen.evaluation.evaluated import Evaluation, Verdict
from reportgen.judgement.verdict.overall import Cell, Lead, Overall, WeightMap
from reportgen.marks import mark_of
from tests.charts.pictures import layer
from tests.pages.weighing import GROUPS, THREE, WORTH, overall, weight_map, whole
from tests.prose.builder import amount, told


def drawn(of: Overall) -> Figure | None:
    t = told("gas burned", corvane=14.2, ostler=16.3, brindle=17.0)
    criterion = Criterion("gas-burned", amount("25 g"), amount("10 g"))
    groups = tuple(Group(g, g.capitalize(), None, (criterion,)) for g in of.groups)
    campaign: Campaign = replace(t.campaign, verdict=VerdictPlan(groups=groups))
    verdict = Verdict((), (), (), (), None, frozenset(), of)
    evaluation: Evaluation = replace(t.evaluation, verdict=verdict)
    return figure(campaign, evaluation)


def shown(of: Overall) -> Figure:
    made = drawn(of)
    assert made is not None
    return made


def test_a_corner_is_one_group_alone_and_equal_weights_lie_in_the_middle() -> None:
    """The mean of the corners weighted by the weights (barycentric coordinates, Möbius 1827, from memory)."""
    ends = corners(3)
    for n, corner in enumerate(ends):
        assert place([float(n == k) for k in range(3)]) == pytest.approx(corner)
    middle = place((1 / 3, 1 / 3, 1 / 3))
    assert {round(math.dist(middle, end), 6) for end in ends} == {round(math.dist(middle, ends[0]), 6)}
    sides = [math.dist(a, b) for a, b in ((ends[0], ends[1]), (ends[1], ends[2]), (ends[2], ends[0]))]
    assert sides == pytest.approx([sides[0]] * 3)


def test_every_choice_of_weights_has_one_mark_filled_where_firm_and_open_where_not() -> None:
    of = whole()
    assert of.map is not None
    svg = shown(of).svg
    firm, open_, level = (layer(svg, name) for name in ("firm", "open", "level"))
    assert len(firm) + len(open_) + len(level) == len(of.map.cells) == 231
    assert len(firm) == sum(c.lead.firm for c in of.map.cells)
    top = max(of.map.cells, key=lambda c: c.weights[0])
    assert top.lead.leader == "corvane"
    highest = min((*firm, *open_), key=lambda mark: mark.y)
    assert (highest.x, highest.y) == pytest.approx(place(top.weights), abs=0.01)
    assert highest.said["fill"] == mark_of(THREE.index("corvane")).ink


def test_leaders_are_told_by_shape_as_well_as_by_colour() -> None:
    svg = shown(whole()).svg
    looks = {
        (m.said["fill"], m.said["d"].translate(str.maketrans("", "", "0123456789.-,"))) for m in layer(svg, "firm")
    }
    assert len(looks) == len({fill for fill, _ in looks}) == len({shape for _, shape in looks}) == 3


def test_the_finding_counts_the_weightings_each_leads_at() -> None:
    cells = (
        *(Cell((i / 10, 1 - i / 10), Lead("corvane", 0.99, True)) for i in range(4)),
        *(Cell((i / 10, 1 - i / 10), Lead("ostler", 0.7, False)) for i in range(4, 10)),
        Cell((1.0, 0.0), Lead(None, 0.5, False)),
    )
    of = overall((0.5, 0.5, 0.5), Lead("ostler", 0.6, False), groups=GROUPS[:2], map=WeightMap(GROUPS[:2], 10, cells))
    made = shown(of)
    assert made.found == (
        "Of 11 weightings tried: Corvane Sol leads at 4, firmly at 4; Ostler Mk II leads at 6, firmly at none; nobody "
        "is ahead at 1."
    )
    assert made.found in made.alt
    assert len(layer(made.svg, "level")) == 1
    assert [row[-2:] for row in made.rows][::10] == [("Corvane Sol", "firmly"), ("", "nobody ahead")]


def test_one_who_leads_everywhere_is_said_so() -> None:
    cells = tuple(Cell((i / 10, 1 - i / 10), Lead("corvane", 0.99, True)) for i in range(11))
    of = overall((0.5, 0.5, 0.5), Lead("corvane", 0.99, True), groups=GROUPS[:2], map=WeightMap(GROUPS[:2], 10, cells))
    assert shown(of).found == "Corvane Sol leads at each of 11 weightings tried, and firmly."


def test_named_weights_lie_where_they_are_and_the_key_names_them() -> None:
    of = replace(whole(), weights="given", given=(0.5, 0.3, 0.2))
    made = shown(of)
    discs = layer(made.svg, "wishes")
    wanted = [place(w) for w in (of.given, *(r.weights for r in of.readers))]
    assert [(d.x, d.y) for d in discs] == [pytest.approx(at, abs=0.01) for at in wanted]
    assert [t.text for t in layer(made.svg, "wish-signs")] == ["we", "1", "2"]
    assert "we: our own weights, 1: In a hurry, 2: On foot for a week" in made.key


def test_the_table_has_a_row_for_each_choice_in_fifths_and_each_row_adds_up() -> None:
    made = shown(whole())
    assert len(made.rows) == 21  # C(5 + 2, 2): ways to share five fifths among three (stars and bars)
    assert {sum(int(cell.split("\u00a0")[0]) for cell in row[:3]) for row in made.rows} == {100}
    assert made.headings == ("Thrift", "Speed", "Carrying", "Leads", "How firmly")


def test_a_finer_map_is_drawn_no_finer_than_can_be_seen() -> None:
    of = replace(whole(), map=weight_map(GROUPS, 40, WORTH))
    made = shown(of)
    assert sum(len(layer(made.svg, name)) for name in ("firm", "open", "level")) == 231
    assert "231 of the 861 are drawn" in made.key  # C(40 + 2, 2) choices
    assert "are drawn" not in shown(whole()).key


def test_one_group_or_four_have_no_picture() -> None:
    assert drawn(replace(whole(), map=None)) is None
