"""What is said of a weighed verdict: a winner only where there is one, and what was learned where there is none."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reportgen.campaign.declared import Campaign, Criterion, Group, VerdictPlan
from reportgen.evaluation.evaluated import MustOutcome, Verdict
from reportgen.judgement.verdict.overall import FIRM_FROM, Cell, Lead, Overall, Turn, WeightMap, WithoutCriterion
from reportgen.prose.leads import lead_at, lead_clause, strength
from reportgen.prose.overall import (
    how_shared,
    how_weighed,
    left_out,
    not_weighed,
    overall_answer,
    pair_firmness,
    said_against,
)
from reportgen.prose.rests import Repeats, repeats_of, rests_on
from reportgen.prose.turning import turn_intro, turn_lines, without_line
from reportgen.prose.weights import weights_in_words
from reportgen.wording.of_hundred import of_hundred
from tests.pages.weighing import overall, pairs
from tests.prose.builder import amount, told

GROUPS = ("thrift", "speed", "carrying")


def stoves() -> Campaign:
    campaign = told("gas burned", corvane=14.2, ostler=16.3, brindle=17.0).campaign
    criterion = Criterion("gas-burned", amount("25 g"), amount("10 g"))
    groups = tuple(Group(g, g.capitalize(), None, (criterion,)) for g in GROUPS)
    return replace(campaign, verdict=VerdictPlan(groups=groups))


def answer(of: Overall) -> str:
    return overall_answer(stoves(), of)


def firmly(**changes: object) -> Overall:
    """Corvane is ahead of both, in 99 and 98 of 100 draws."""
    return overall((0.985, 0.978, 0.5), Lead("corvane", 0.978, True), **{"winner": "corvane", **changes})


def test_a_winner_is_named_with_how_firm_it_is_against_each() -> None:
    said = answer(firmly())
    assert said == (
        "Over all ways to weigh the criteria, Corvane Sol is worth more than Ostler Mk II or Brindle, and firmly: "
        "in 98 or more of 100 draws against each."
    )


def test_with_the_authors_weights_the_sentence_says_that_they_are_ours() -> None:
    said = answer(firmly(weights="given", given=(0.5, 0.3, 0.2)))
    assert said.startswith("With our weights, Corvane Sol is worth more")


@pytest.mark.parametrize(
    ("index", "says"),
    [
        (0.96, "is probably, but not firmly, worth more than Ostler Mk II, the nearest: in 96 of 100 draws"),
        (0.80, "the nearest, more often than not: in 80 of 100 draws"),
        (0.60, "only slightly more often than the other way round: in 60 of 100 draws"),
        (0.52, "each worth more than the other about equally often"),
    ],
)
def test_short_of_firm_nobody_is_called_ahead(index: float, says: str) -> None:
    said = answer(overall((index, 0.99, 0.9), Lead("corvane", index, False)))
    assert said.startswith(("Nobody is firmly ahead.", "Nobody is ahead.")) or "but not firmly" in said
    assert says in said
    assert "winner" not in said
    assert "Corvane Sol is worth more than Brindle, and firmly" in said  # what was learned all the same


def test_where_all_others_are_firmly_worth_more_than_one_it_is_said_of_each() -> None:
    said = answer(overall((0.92, 0.99, 0.98), Lead("corvane", 0.92, False)))
    assert said.endswith("Corvane Sol and Ostler Mk II are both worth more than Brindle, and firmly.")


def test_what_only_unrepeated_criteria_carry_is_said_with_what_the_rest_shows() -> None:
    said = answer(overall((0.99, 0.99, 0.5), Lead("corvane", 0.99, False), known=(0.71, 0.8, 0.5)))
    assert said.startswith("Nobody is called ahead.")
    assert "on the criteria with repeats alone in only 71 of 100" in said


def test_without_any_repeats_nobody_is_called_ahead() -> None:
    said = answer(overall((0.99, 0.99, 0.5), Lead("corvane", 0.99, False), known=(), with_repeats=0))
    assert "no criterion was repeated, so a repeat might come out differently" in said
    assert "Nobody is firmly behind another" in said


def test_on_one_criterion_the_verdict_does_not_go_beyond_its_first_place() -> None:
    one = overall((0.98, 0.99, 0.5), Lead("corvane", 0.98, False), criteria=1, with_repeats=1)
    assert "first place on the one criterion is open" in answer(one)
    assert rests_on(one) == "It rests on one criterion, with repeats."


def test_what_leads_firmly_by_itself_is_learned_where_nobody_is_ahead() -> None:
    cells = (Cell((0.0, 1.0), Lead("ostler", 0.99, True)), Cell((1.0, 0.0), Lead("corvane", 0.98, True)))
    of = overall((0.51, 0.6, 0.6), Lead("corvane", 0.51, False), groups=GROUPS[:2], map=WeightMap(GROUPS[:2], 1, cells))
    assert answer(of) == (
        "Nobody is ahead. Over all ways to weigh the criteria, Corvane Sol and Ostler Mk II are each worth more than "
        "the other about equally often. It depends on what counts: with only thrift, Corvane Sol leads firmly; with "
        "only speed, Ostler Mk II leads firmly."
    )
    one = replace(of, map=WeightMap(GROUPS[:2], 1, (cells[0], replace(cells[1], lead=Lead("corvane", 0.9, False)))))
    assert "depends" not in answer(one)


def test_three_that_are_level_are_all_named() -> None:
    said = answer(overall((0.5, 0.51, 0.5), Lead("corvane", 0.5, False)))
    assert "Corvane Sol, Ostler Mk II and Brindle are each worth more than the others about equally often" in said


def test_exact_equals_tie() -> None:
    said = answer(overall((0.5, 0.5, 0.5), Lead(None, 0.5, False)))
    assert said.startswith("Nobody is ahead.")
    assert strength(Lead(None, 0.5, False)) == "level"
    assert lead_clause(stoves(), Lead(None, 0.5, False)) == "nobody is ahead"


def test_nothing_to_weigh_is_said() -> None:
    assert answer(overall((0.5, 0.5, 0.5), Lead(None, 0.0, False))).startswith("Nobody has a value on every criterion")


@pytest.mark.parametrize(
    ("out", "says"),
    [
        (("corvane", "ostler", "brindle"), "Nobody is left to weigh."),
        (("corvane", "ostler"), "Only Brindle is left to weigh"),
        ((), "Fewer than two contenders have a value on every criterion"),
    ],
)
def test_conditions_that_leave_nobody_to_weigh_are_said(out: tuple[str, ...], says: str) -> None:
    missed = tuple(MustOutcome(c, "gas-burned", "contradicted", 0.0, frozenset()) for c in out)
    said = not_weighed(stoves(), Verdict(missed, (), (), (), None, frozenset()))
    assert said.startswith(says)
    assert ("miss a condition" in said) == bool(out)


def test_who_is_left_out_and_why() -> None:
    said = left_out(stoves(), {"corvane": "must", "ostler": "bound", "brindle": "blocked"})
    assert "Corvane Sol misses a condition" in said
    assert "Ostler Mk II isn’t weighed: on one criterion or more only a bound is known" in said
    assert "Brindle isn’t weighed: a result of it isn’t to be ranked" in said


@pytest.mark.parametrize(
    ("known", "n", "says"),
    [
        (2, 7, "It rests on seven criteria: two with repeats and five on which a repeat might come out differently."),
        (1, 2, "It rests on two criteria: one with repeats and one on which a repeat might come out differently."),
        (3, 3, "It rests on three criteria, all with repeats."),
        (0, 3, "It rests on three criteria, none with repeats."),
    ],
)
def test_it_says_on_what_it_rests(known: int, n: int, says: str) -> None:
    assert rests_on(firmly(with_repeats=known, criteria=n)) == says


@pytest.mark.parametrize(
    ("known", "n", "says"),
    [
        (["every", "stated"], 2, "one with repeats and one whose scatter was known before the test, not seen in it."),
        (["every", "some"], 2, "one with repeats and one on which only some were repeated."),
        (["stated"], 2, "one whose scatter was known before the test, not seen in it and one on which a repeat might"),
        (["stated"], 1, "It rests on one criterion; how much it varies was known before the test, not seen in it."),
        (["stated"] * 2, 2, "two criteria; how much they vary was known before the test, not seen in it."),
        (["some"] * 2, 2, "two criteria; on each some contenders were repeated, others not."),
    ],
)
def test_a_scatter_stated_beforehand_is_never_called_repeats(known: list[Repeats], n: int, says: str) -> None:
    said = rests_on(firmly(with_repeats=len(known), criteria=n), known)
    assert says in said
    assert "all with repeats" not in said


def test_where_a_scatter_is_known_from_is_told_apart() -> None:
    def of(scatter: str, **passes: int) -> str:
        found = told("wait", corvane=3.1, ostler=4.0).first("corvane", scatter=scatter)
        return repeats_of(found.with_results(**{c: {"passes": n} for c, n in passes.items()}).evaluation, "wait")

    assert of("passes", corvane=3, ostler=3) == "every"
    assert of("passes", corvane=3, ostler=1) == "some"
    assert of("declared", corvane=1, ostler=1) == "stated"
    assert of("none", corvane=1, ostler=1) == "none"


@pytest.mark.parametrize(
    ("covers", "tries", "found"), [("events", 1, "stated"), ("events", 2, "every"), ("instrument", 1, "none")]
)
def test_a_count_of_one_run_rests_on_what_was_said_of_its_events(covers: str, tries: int, found: str) -> None:
    counted = {"kind": "count", "covers": covers, "passes": tries, "of": None}
    shown = told("relights", corvane=3.0, ostler=4.0).with_results(corvane=counted, ostler=counted)
    assert repeats_of(shown.evaluation, "relights") == found


def test_a_pair_is_firm_only_where_the_repeated_criteria_say_so_too() -> None:
    of = overall((0.99, 0.8, 0.52), Lead("corvane", 0.8, False), known=(0.9, 0.8, 0.52))
    assert [pair_firmness(of, p) for p in of.index] == [
        "only by what wasn’t repeated", "more often than not", "about equally often",
    ]  # fmt: skip
    assert pair_firmness(firmly(), firmly().index[0]) == "firmly"


@given(st.floats(0, 1))
def test_a_share_reads_98_or_more_exactly_where_it_is_firm(share: float) -> None:
    """The number that is printed never crosses the limit of the decision."""
    said = of_hundred(share)
    number = {"under 1 of 100": 0, "over 99 of 100": 100}.get(said)
    n = int(said.partition(" ")[0]) if number is None else number
    assert (n >= 98) == (Decimal(repr(share)) >= Decimal(repr(FIRM_FROM))) or abs(share - FIRM_FROM) < 1e-11


def test_all_and_none_are_never_promised() -> None:
    assert (of_hundred(1.0), of_hundred(0.0)) == ("over 99 of 100", "under 1 of 100")


@pytest.mark.parametrize(
    ("weights", "says"),
    [
        ((0.1, 0.6, 0.3), "mostly speed (60 %), some carrying (30 %), a little thrift (10 %)"),
        ((0.0, 1.0, 0.0), "only speed"),
        ((0.5, 0.5, 0.0), "half thrift (50 %), half speed (50 %), no carrying"),
        ((1 / 3, 1 / 3, 1 / 3), "thrift, speed and carrying alike"),
        ((0.4, 0.4, 0.2), "some thrift (40 %), some speed (40 %), some carrying (20 %)"),
    ],
)
def test_weights_in_words(weights: tuple[float, ...], says: str) -> None:
    assert weights_in_words(GROUPS, weights).replace("\u00a0", " ") == says


def test_a_choice_of_weights_and_who_leads_there_make_one_sentence() -> None:
    weights, lead = lead_at(stoves(), GROUPS, (0.3, 0.6, 0.1), Lead("brindle", 0.99, True))
    assert f"{weights} {lead}".replace("\u00a0", " ") == (
        "Mostly speed (60 %), some thrift (30 %), a little carrying (10 %): Brindle leads, and firmly."
    )


def test_an_index_of_sixty_is_slightly_more_often_and_left_open() -> None:
    assert lead_clause(stoves(), Lead("brindle", 0.6, False)) == (
        "Brindle leads slightly more often than the nearest (60 of 100): that is open"
    )


def test_where_the_leader_turns_and_where_it_never_does() -> None:
    of = firmly(turns=(Turn("thrift", 0.43, "brindle", "corvane"),))
    (line,) = turn_lines(stoves(), of)
    assert line.replace("\u00a0", " ") == "Thrift: Brindle leads up to 43 % of the weight, Corvane Sol beyond that."
    twice = firmly(
        turns=(Turn("thrift", 0.87, "corvane", "ostler"), Turn("thrift", 0.31, "brindle", "corvane")),
        weights="given", given=(0.5, 0.3, 0.2),
    )  # fmt: skip
    said = [line.replace("\u00a0", " ") for line in turn_lines(stoves(), twice)]
    assert said[0] == (
        "Thrift: Brindle leads up to 31 % of the weight, Corvane Sol from there to 87 %, Ostler Mk II beyond that."
    )
    assert said[1] == "Speed: Corvane Sol leads whatever its weight."
    assert turn_intro(of) == "If one group counts more or less, and the others alike:"
    assert turn_lines(stoves(), firmly()) == ("No change in the weight of one group alone changes who leads.",)
    assert turn_intro(firmly()) == ""


def test_leaving_a_criterion_out_is_told_where_it_changes_who_leads_or_whether_firmly() -> None:
    same = WithoutCriterion("gas-burned", Lead("corvane", 0.99, True))
    assert without_line(stoves(), firmly(without=(same, same))) == (
        "Leaving out any one criterion changes neither who leads nor whether that is firm."
    )
    looser = replace(same, lead=Lead("corvane", 0.9, False))
    assert without_line(stoves(), firmly(without=(same, looser))).startswith(
        "Leave out gas burned, and Corvane Sol leads, but not firmly."
    )
    assert without_line(stoves(), firmly(without=(looser, looser))).startswith(
        "Leave out either one of gas burned and gas"
    )
    assert without_line(stoves(), firmly(without=(looser,) * 3)).startswith("Leave out any one of gas burned, gas")
    assert without_line(stoves(), firmly(without=(same,))) == ""  # nothing is left without it


@pytest.mark.parametrize(
    ("before", "after", "says"),
    [
        (Lead("corvane", 0.91, False), Lead("corvane", 0.66, False), "Corvane Sol leads still, but in only 66 of 100 draws against the nearest, no longer in 91 of 100."),
        (Lead("corvane", 0.995, True), Lead("corvane", 0.8, False), "Corvane Sol leads still, but in only 80 of 100 draws against the nearest, no longer in over 99 of 100."),
        (Lead("corvane", 0.91, False), Lead("corvane", 0.51, False), "nobody is ahead."),
        (Lead("corvane", 0.57, False), Lead("corvane", 0.53, False), "nobody is ahead."),
        (Lead(None, 0.5, False), Lead("corvane", 0.7, False), "Corvane Sol leads, but not firmly."),
    ],
)  # fmt: skip
def test_a_lead_that_drops_much_without_a_criterion_is_told(before: Lead, after: Lead, says: str) -> None:
    left = (WithoutCriterion("gas-burned", before), WithoutCriterion("gas-burned", after))
    said = without_line(stoves(), replace(firmly(without=left), lead=before))
    before_rest, _, rest = said.partition(" Leaving out the one that remains")
    assert before_rest == f"Leave out gas burned, and {says}"
    assert rest


def test_a_lead_that_drops_a_little_or_stays_level_is_no_change() -> None:
    for before, after in ((0.91, 0.85), (0.52, 0.5)):
        left = (WithoutCriterion("gas-burned", Lead("corvane", after, False)),) * 2
        said = without_line(stoves(), replace(firmly(without=left), lead=Lead("corvane", before, False)))
        assert said == "Leaving out any one criterion changes neither who leads nor whether that is firm."


def test_equal_shares_are_told_once_and_unequal_ones_from_to() -> None:
    each = {"corvane": 0.33, "ostler": 0.33, "brindle": 0.34}
    assert how_shared(replace(firmly(), equal_first=each)).endswith("each would come first in about 33 of 100 draws.")
    apart = {**each, "corvane": 0.2, "brindle": 0.47}
    assert "in 20 of 100 to 47 of 100 draws" in how_shared(replace(firmly(), equal_first=apart))


@pytest.mark.parametrize(
    ("best", "winner", "index", "says"),
    [
        ("corvane", "corvane", (0.985, 0.978, 0.5), "That bears out Corvane Sol as best."),
        ("corvane", None, (0.7, 0.8, 0.5), "That leans towards Corvane Sol, and leaves open whether it is best."),
        ("ostler", None, (0.91, 0.8, 0.5), "That doesn’t bear out Ostler Mk II as best: it is worth more than Corvane Sol in 9 of 100 draws."),
        ("", None, (0.7, 0.8, 0.5), ""),
    ],
)  # fmt: skip
def test_the_authors_best_is_held_against_what_is_weighed(
    best: str, winner: str | None, index: tuple[float, ...], says: str
) -> None:
    assert said_against(stoves(), replace(firmly(), index=pairs(*index), winner=winner), best) == says


def test_an_author_s_best_that_is_out_is_not_borne_out() -> None:
    of = replace(firmly(), contenders=("corvane", "ostler"), index=pairs(0.99, of=("corvane", "ostler")))
    assert "isn’t among those weighed" in said_against(stoves(), of, "brindle")


def test_a_draw_is_explained_and_so_is_firm() -> None:
    for of in (firmly(), firmly(weights="given", given=(0.5, 0.3, 0.2)), firmly(with_repeats=3)):
        said = how_weighed(stoves(), of)
        assert "draws were made" in said
        assert "moves every result at random as far as its uncertainty reaches" in said
        assert "Firm is what holds in 98 of 100 draws or more" in said
        assert ("criteria that nobody repeated" in said) == (of.with_repeats < of.criteria)
        assert ("only the instrument’s part is known" in said) == (of.with_repeats < of.criteria)
