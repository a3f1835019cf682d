"""First place in words: what may be said, and what must never be."""

from __future__ import annotations

from reportgen.judgement.measured import Settle
from reportgen.prose.finding_line import finding_line
from reportgen.prose.first_place import first_place
from tests.prose.builder import Asked, Told, told

NB = "\u00a0"


def said(t: Told, quantity: str = "gas-burned") -> str:
    return first_place(*t.both, quantity).replace(NB, " ")


def short(t: Told, quantity: str = "gas-burned") -> str:
    return finding_line(*t.both, quantity).replace(NB, " ")


def test_a_sole_winner_is_named_with_its_lead_and_what_it_was_held_against() -> None:
    t = told(corvane=14.0, ostler=17.0, brindle=19.0).pair("corvane", "ostler", "better", 1.2)
    t = t.pair("corvane", "brindle", "better", 1.2).pair("ostler", "brindle", "better", 1.2).first("corvane")
    assert said(t) == (
        "Corvane Sol is lowest: 14.00 g (13.40 to 14.60). Its lead of 3.0 g over Ostler Mk II, the nearest, is more than "
        "the 1.2 g that chance could make with four passes each: if all scatter alike, a repeat should agree."
    )
    assert short(t) == "Corvane Sol is lowest, by 3.0 g"


def test_with_own_scatter_nothing_is_assumed_about_the_others() -> None:
    t = told("gas burned", Asked(scatter="own"), corvane=14.0, ostler=17.0).pair("corvane", "ostler", "better", 1.2)
    assert "if all scatter alike" not in said(t.first("corvane"))


def test_a_shared_first_place_says_its_gap_what_it_needs_and_what_would_settle_it() -> None:
    settle = Settle(3.0, 47)
    t = told("boil time", Asked("s"), corvane=212.0, ostler=215.0, brindle=260.0, tamsin=270.0)
    t = t.pair("corvane", "ostler", "too close to call", 8.0, settle=settle)
    for first in ("corvane", "ostler"):
        for second in ("brindle", "tamsin"):
            t = t.pair(first, second, "better", 8.0)
    assert said(t.first("corvane", "ostler"), "boil-time") == (
        "Corvane Sol and Ostler Mk II share first place: the gap of 3.0 s is smaller than four passes each can tell "
        "(8.0 s). Both beat Brindle and Tamsin. About 50 passes each would settle a gap of 3.0 s."
    )
    assert short(t.first("corvane", "ostler"), "boil-time") == "Corvane Sol and Ostler Mk II share first place"


def test_those_who_share_first_place_beat_only_whom_all_of_them_beat() -> None:
    t = told(corvane=14.0, ostler=15.0, brindle=16.5).pair("corvane", "ostler", "too close to call", 2.0)
    t = t.pair("corvane", "brindle", "better", 2.0).pair("ostler", "brindle", "too close to call", 2.0)
    words = said(t.first("corvane", "ostler"))
    assert "Of these Corvane Sol alone beats Brindle." in words
    assert "Both beat" not in words


def test_where_each_of_the_rest_is_beaten_by_others_only_that_they_are_behind_is_said() -> None:
    t = told(corvane=14.0, ostler=15.0, brindle=16.5, tamsin=17.5).pair("corvane", "ostler", "too close to call", 2.0)
    t = t.pair("corvane", "brindle", "better", 2.0).pair("ostler", "brindle", "too close to call", 2.0)
    t = t.pair("corvane", "tamsin", "better", 2.0).pair("ostler", "tamsin", "better", 2.0)
    assert "Brindle and Tamsin are each behind at least one of them." in said(t.first("corvane", "ostler"))


def test_a_finer_instrument_is_named_where_passes_would_not_do() -> None:
    t = told(corvane=14.0, ostler=15.0)
    t = t.pair("corvane", "ostler", "too close to call", 2.0, settle=Settle(1.0, None, finer=True))
    words = said(t.first("corvane", "ostler"))
    assert "A finer instrument would settle it sooner than more passes." in words
    assert "passes each would" not in words


def test_equal_results_are_not_told_apart_and_no_gap_of_nothing_is_named() -> None:
    t = told(corvane=14.0, ostler=14.0).pair("corvane", "ostler", "too close to call", 2.0).first("corvane", "ostler")
    assert said(t) == (
        "Corvane Sol and Ostler Mk II can't be told apart: they came out alike, and four passes each can't tell gaps "
        "under 2.0 g."
    )


def test_two_equal_readings_of_one_pass_each_are_not_told_apart() -> None:
    t = told(corvane=71.2, ostler=71.2).pair("corvane", "ostler", "not enough to say", 1.0).once("corvane", "ostler")
    words = said(t)
    assert "can't be told apart even in this run" in words
    assert "lower in this run" not in words


def test_single_readings_speak_of_this_run_alone() -> None:
    t = told("noise", Asked("dB"), corvane=72.9, ostler=71.2).pair("corvane", "ostler", "not enough to say", 1.0)
    t = t.once("corvane", "ostler")
    assert said(t, "noise") == (
        "One reading each. Ostler Mk II read 1.7 dB lower than Corvane Sol in this run; that it would again isn't shown."
    )
    assert short(t, "noise") == ("Ostler Mk II read lowest in this run; whether a repeat would agree isn't known")


def test_single_readings_within_the_instrument_say_how_large_a_gap_it_can_tell() -> None:
    t = told("gas burned", Asked(kind="weighed before and after"), corvane=81.0, ostler=82.0, brindle=88.0)
    t = t.pair("corvane", "ostler", "not enough to say", 2.0).pair("corvane", "brindle", "not enough to say", 2.0)
    words = said(t.pair("ostler", "brindle", "not enough to say", 2.0).once("corvane", "ostler", "brindle"))
    assert words.startswith("Each ran once: Corvane Sol 81.00 g, Ostler Mk II 82.00 g, Brindle 88.00 g.")
    assert (
        "Corvane Sol and Ostler Mk II read lowest in this run, below Brindle, and can't be told apart even in it."
        in words
    )
    assert "Gaps up to 2.0 g can't be told on this instrument." in words
    assert words.endswith("Whether that would repeat isn't known.")


def test_those_alike_are_ahead_of_the_rest_only_where_each_is_beyond_the_instrument() -> None:
    """Brindle is beyond the instrument from Corvane alone; a bound may hide a value on either side."""
    t = told("gas burned", corvane=81.0, ostler=82.0, brindle=83.5).pair("corvane", "ostler", "not enough to say", 2.0)
    near = t.pair("corvane", "brindle", "not enough to say", 2.0).pair("ostler", "brindle", "not enough to say", 2.0)
    assert "Corvane Sol and Ostler Mk II can't be told apart even in this run." in said(near.once("corvane", "ostler"))
    t = told("gas burned", corvane=81.0, ostler=82.0, brindle="over 90").pair(
        "corvane", "ostler", "not enough to say", 2
    )
    t = t.pair("corvane", "brindle", "not enough to say", differed=True)
    bound = t.pair("ostler", "brindle", "not enough to say", differed=True)
    assert "read lowest in this run, below" not in said(bound.once("corvane", "ostler", "brindle"))


def test_without_any_knowledge_of_the_instrument_that_is_said() -> None:
    t = told(corvane=14.0, ostler=15.0).pair("corvane", "ostler", "not enough to say", None).once("corvane", "ostler")
    assert "how far the instrument may be off isn't known" in said(t)


def test_a_contender_off_the_scale_is_last_by_an_unknown_amount() -> None:
    t = told("carbon monoxide", Asked("ppm"), corvane=40.0, ostler=60.0, brindle="over unknown")
    t = t.pair("corvane", "ostler", "better", 5.0).first("corvane").with_results(brindle={"rank": (3, 3)})
    words = said(t, "carbon-monoxide")
    assert "Brindle read more than the meter can show: last, but by how much is unknown." in words


def test_a_contender_off_the_scale_is_not_called_last_where_the_bound_does_not_decide() -> None:
    t = told("carbon monoxide", Asked("ppm"), corvane=998.0, ostler=60.0, brindle="over 999")
    t = t.pair("corvane", "ostler", "better", 5.0).first("ostler").with_results(brindle={"rank": (2, 3)})
    words = said(t, "carbon-monoxide")
    assert "Brindle read more than 999 ppm, so how far it stands from the others is unknown." in words
    assert "last" not in words


def test_a_lead_that_matters_little_is_said_to() -> None:
    t = told("gas burned", Asked(matters="5 g"), corvane=14.0, ostler=15.0)
    t = t.pair("corvane", "ostler", "no difference that matters", 0.5, resolved=True, favours="corvane", beyond=False)
    words = said(t.first("corvane"))
    assert "That is less than the 5 g that would matter." in words
    assert short(t.first("corvane")) == "Corvane Sol is lowest, but by less than would matter"


def test_contenders_alike_within_what_matters_share_first_place_for_that_reason() -> None:
    t = told("gas burned", Asked(matters="5 g"), corvane=14.0, ostler=15.0)
    t = t.pair("corvane", "ostler", "no difference that matters", 1.5).first("corvane", "ostler")
    assert "whatever separates them is less than the 5 g that would matter" in said(t)


def test_a_blocked_contender_stands_outside_with_its_reason() -> None:
    t = told(corvane=14.0, ostler=17.0, brindle=12.0).pair("corvane", "ostler", "better", 1.0).first("corvane")
    t = t.with_results(brindle={"rank": None, "blocked": "The sample was topped up and not weighed."})
    assert "Brindle isn't ranked: The sample was topped up and not weighed." in said(t)


def test_those_without_a_result_are_named_together() -> None:
    t = told(corvane=14.0, ostler=17.0, brindle="not yet tested", tamsin="not yet tested")
    t = t.pair("corvane", "ostler", "better", 1.0).first("corvane")
    assert "Brindle and Tamsin have no result: not yet tested." in said(t)


def test_nothing_is_ranked_where_no_direction_is_better() -> None:
    t = told("packed weight", Asked(better="neither"), corvane=412.0, ostler=388.0)
    words = said(t, "packed-weight")
    assert words == (
        "Shown without rank, since neither lower nor higher is better: Corvane Sol 412.00 g, Ostler Mk II 388.00 g."
    )


def test_sessions_that_cannot_be_compared_are_not_ranked() -> None:
    t = told(corvane=14.0, ostler=17.0).pair("corvane", "ostler", "not enough to say", 1.0)
    t = t.first("corvane", "ostler", code="sessions-apart")
    assert said(t).startswith("Not ranked: they were measured in different sessions")


def test_one_result_has_nothing_to_be_compared_with() -> None:
    t = told(corvane=14.0, ostler="not read").first("corvane", winner=None, code="one-contender")
    assert said(t).startswith("Only Corvane Sol has a result, so there is nothing to compare: 14.00 g")


def test_before_anything_is_tested_the_page_says_so() -> None:
    t = told(corvane="not yet tested", ostler="not yet tested")
    assert said(t) == "Not yet tested."
    assert short(t) == "Not yet tested"
