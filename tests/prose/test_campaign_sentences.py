"""The campaign as a whole in words: its answer, how firm it is, the order of work."""

from __future__ import annotations

from dataclasses import replace

import pytest

from reportgen.evaluation.evaluated import Evaluation, FirstPlace, ScatterUsed
from reportgen.intake.reading import Readings
from reportgen.judgement.measured import Reason, ScatterFound
from reportgen.prose import sentences
from tests.prose.builder import Told, told


def campaign_of(*firsts: FirstPlace, known: tuple[str, ...] = ()) -> Told:
    """Contenders corvane, ostler, brindle with a quantity for each first place; `known` were repeated."""
    of_each = [told(f.quantity, corvane=1.0, ostler=2.0, brindle=3.0) for f in firsts]
    tests = [one.campaign.tests[0] for one in of_each]
    results = tuple(result for one in of_each for result in one.evaluation.results)
    used = tuple(
        ScatterUsed(f.quantity, "", ScatterFound(1.0, 4.0, "passes" if f.quantity in known else "none")) for f in firsts
    )
    evaluation = Evaluation("stoves", results, (), firsts, (), None, (), used)
    return Told(replace(of_each[0].campaign, tests=tuple(tests)), evaluation)


def first(quantity: str, *may_be: str, code: str = "") -> FirstPlace:
    winner = may_be[0] if len(may_be) == 1 else None
    code = code or ("lead-exceeds" if winner else "lead-within")
    return FirstPlace(quantity, quantity, "", winner, may_be, (), Reason(code), frozenset())


def test_the_answer_names_winners_and_says_where_there_is_none() -> None:
    everyone = ("corvane", "ostler", "brindle")
    t = campaign_of(
        first("gas", "corvane"), first("time", "corvane"), first("noise", *everyone, code="no-scatter-known")
    )
    assert sentences.campaign_answer(*t.both) == (
        "Of the three we bought, Corvane Sol did best on gas. "
        "It also did best on time; on noise nobody is shown to be best."
    )


def test_the_answer_names_nobody_where_nothing_is_resolved() -> None:
    everyone = ("corvane", "ostler", "brindle")
    t = campaign_of(first("gas", *everyone), first("time", *everyone))
    assert sentences.campaign_answer(*t.both) == (
        "The three we bought can't be told apart on gas. "
        "Nor is anybody shown to be best on the one other thing compared, time."
    )


def test_a_first_place_shared_ahead_of_others_is_an_answer() -> None:
    t = campaign_of(first("gas", "corvane", "ostler"))
    assert sentences.campaign_answer(*t.both) == (
        "Of the three we bought, Corvane Sol and Ostler Mk II share first place on gas."
    )


def test_the_answer_never_takes_more_than_two_sentences() -> None:
    everyone = ("corvane", "ostler", "brindle")
    t = campaign_of(*(first(f"q{n}", *(everyone if n % 2 else ("corvane",))) for n in range(8)))
    assert sentences.campaign_answer(*t.both).count(".") <= 2


def test_how_firm_counts_the_things_with_repeats() -> None:
    t = campaign_of(first("gas", "corvane"), first("time", "corvane"), first("noise", "ostler"), known=("gas", "time"))
    assert sentences.how_firm(*t.both).startswith("Two of the three things compared have repeats;")
    nothing = campaign_of(first("gas", "corvane", "ostler"))
    assert sentences.how_firm(*nothing.both).startswith("Nothing was repeated")
    assert "one of each" in sentences.how_firm(*nothing.both)


# ---- order of work


@pytest.mark.parametrize(
    ("declared", "rounds", "order", "words"),
    [
        ("rounds", True, True, "Every round ran each contender once."),
        ("random", True, True, "Every round ran each contender once, in random order."),
        ("random", False, True, "The readings stand in the order they were taken."),  # declared is not yet done
        ("rounds", False, False, "In what order they ran wasn't recorded."),
    ],
)
def test_the_order_of_work_is_said_as_it_was_recorded(declared: str, rounds: bool, order: bool, words: str) -> None:
    t = told(corvane=14.0, ostler=15.0)
    test = replace(t.campaign.tests[0], order=declared)  # type: ignore[arg-type]  # one of two words
    readings = Readings({}, order_recorded={test.id: order}, rounds_recorded={test.id: rounds})
    assert sentences.order_line(test, readings, t.evaluation) == words


def test_with_one_pass_each_there_is_no_order_to_speak_of() -> None:
    t = told(corvane=14.0, ostler=15.0).once("corvane", "ostler")
    assert sentences.order_line(t.campaign.tests[0], Readings({}), t.evaluation) == ""
