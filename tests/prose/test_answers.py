"""The answer a campaign's page opens with, one test an outcome: read by a maker's lawyer and by a maker's marketing.

Invented readings, compiled as a whole; what is held is which sentence goes with which decision.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from reportgen.evaluation.evaluated import Verdict
from reportgen.judgement.verdict.overall import Lead, Overall
from reportgen.prose import sentences
from tests.evaluation.bench import all_stages

HEAD = """\
title: Which?
contenders: {corvane: Corvane, ostler: Ostler, brindle: Brindle}
instruments: {scale: "0.1 g, up to 2000 g, accuracy ±0.3 g"}
"""
ALONE = HEAD.replace(", ostler: Ostler, brindle: Brindle", "")
GAS = "  gas: {kind: one reading, unit: g, better: lower, instrument: scale}\n"
WAIT = "  wait: {kind: one reading, unit: s, better: lower}\n"


def said(place: Path, measure: str, rows: str, more: str = "", head: str = HEAD) -> tuple[str, str]:
    """The answer and how firm it is."""
    text = f"{head}measure:\n{measure}readings: readings.csv\n{more}"
    declared, _, evaluation = all_stages(place, text, readings=rows)
    both = declared.campaign, evaluation
    answer, firm = sentences.campaign_answer(*both), sentences.how_firm(*both)
    assert answer.count(". ") <= 1
    return answer.replace("\u00a0", " "), firm.replace("\u00a0", " ")


def table(**passes: str) -> str:
    """`gas="14.1 16.2 19.0; 14.3 16.1 18.8"`: a row a pass, a column a contender."""
    lines = ["what,pass,corvane,ostler,brindle"]
    for what, rows in passes.items():
        lines += [f"{what},{n},{','.join(row.split())}" for n, row in enumerate(rows.split(";"), 1)]
    return "\n".join(lines) + "\n"


FIRST = "14.1 17.2 19.9; 14.3 17.1 20.2; 14.2 17.3 20.1"
SHARED = "14.1 14.2 19.9; 14.3 14.1 20.2; 14.2 14.3 20.1"
TIED = "14.1 14.9 14.5; 15.3 14.1 15.2; 14.8 15.2 14.1"
SECOND = "240 212 290; 243 215 288; 239 211 293"


def test_a_clear_winner_is_named_with_its_lead_over_the_nearest_that_we_bought(tmp_path: Path) -> None:
    answer, firm = said(tmp_path, GAS, table(gas=FIRST))
    assert answer == "Of the three we bought, Corvane did best on gas, 3.00 g below Ostler, the nearest."
    assert "On any one thing where nobody is truly ahead, we would wrongly name a winner at most 1 time in 20" in firm
    assert firm.startswith("Every comparison rests on repeats.")
    assert "the ones we bought, one of each" in firm


def test_of_one_contender_alone_nothing_is_said_of_comparisons(tmp_path: Path) -> None:
    answer, firm = said(tmp_path, GAS, "what,pass,corvane\ngas,1,14.1\ngas,2,14.3\n", head=ALONE)
    assert (answer, firm) == ("On gas only Corvane could be ranked, so there is nothing to hold it against.", "")


def test_a_winner_on_everything_is_said_to_be(tmp_path: Path) -> None:
    answer, _ = said(tmp_path, GAS + WAIT, table(gas=FIRST, wait="212 240 290; 215 243 288; 211 239 293"))
    assert answer == "Of the three we bought, Corvane did best on gas and wait."


def test_a_lead_too_small_to_matter_is_named_and_said_to_be_small(tmp_path: Path) -> None:
    gas = GAS.replace("better: lower", "better: lower, matters: 5 g")
    answer, _ = said(tmp_path, gas, table(gas=FIRST))
    assert answer.endswith("3.00 g below Ostler, the nearest; that is less than the 5 g that would matter.")


def test_another_winner_on_another_thing_is_named_too(tmp_path: Path) -> None:
    answer, _ = said(tmp_path, GAS + WAIT, table(gas=FIRST, wait=SECOND))
    assert answer.startswith("Of the three we bought, Corvane did best on gas, ")
    assert answer.endswith("Ostler did best on wait.")


def test_a_shared_first_place_says_who_is_behind_it(tmp_path: Path) -> None:
    answer, _ = said(tmp_path, GAS, table(gas=SHARED))
    assert answer == "Of the three we bought, Corvane and Ostler share first place on gas, ahead of Brindle."


def test_a_shared_first_place_does_not_hide_a_winner_elsewhere(tmp_path: Path) -> None:
    answer, _ = said(tmp_path, GAS + WAIT, table(gas=SHARED, wait=SECOND))
    assert answer.startswith("Of the three we bought, Corvane and Ostler share first place on gas")
    assert answer.endswith("Ostler did best on wait.")


def test_where_all_tie_the_answer_says_how_large_a_gap_would_have_counted(tmp_path: Path) -> None:
    answer, _ = said(tmp_path, GAS, table(gas=TIED))
    assert answer.startswith("The three we bought can't be told apart on gas: any gap of more than ")
    assert answer.endswith(" g would have counted, and there was none.")
    assert "share first place" not in answer


def test_where_all_tie_within_what_matters_the_answer_says_that_nothing_matters(tmp_path: Path) -> None:
    gas = GAS.replace("better: lower", "better: lower, matters: 9 g")
    answer, _ = said(tmp_path, gas, table(gas=TIED))
    assert answer == (
        "The three we bought can't be told apart on gas, and whatever separates them is less than the 9 g that would "
        "matter."
    )


def test_what_is_known_of_a_tie_is_what_its_intervals_rule_out(tmp_path: Path) -> None:
    text = f"{HEAD}measure:\n{GAS}readings: readings.csv\n"
    declared, _, evaluation = all_stages(tmp_path, text, readings=table(gas=TIED))
    words = sentences.first_place(declared.campaign, evaluation, "gas").replace("\u00a0", " ")
    most = max(abs(end) for c in evaluation.comparisons for end in (c.low, c.high) if end is not None)
    assert f"No two of them truly differ by more than about {most:.1f} g" in words
    assert words.startswith("Corvane, Ostler and Brindle can't be told apart: even the widest gap, ")


def test_single_readings_are_spoken_of_as_this_run(tmp_path: Path) -> None:
    answer, firm = said(tmp_path, GAS + WAIT, table(gas="14.1 17.2 19.9", wait="240 212 290"))
    assert answer.startswith("In this run Corvane read lowest on gas, 3.1 g below Ostler; that it would again isn't")
    assert "did best" not in answer
    assert firm.startswith("Nothing was repeated, so what is said holds for these runs alone.")
    assert "1 time in 20" not in firm


def test_single_readings_that_are_not_told_apart_lead_nowhere(tmp_path: Path) -> None:
    answer, _ = said(tmp_path, GAS, table(gas="14.1 14.1 14.2"))
    assert answer == "On gas these runs don't say who is ahead."


def test_one_thing_with_repeats_and_one_without_are_counted(tmp_path: Path) -> None:
    answer, firm = said(tmp_path, GAS + WAIT, table(gas=FIRST, wait="240 212 290"))
    assert "did best on gas" in answer
    assert firm.startswith("One of the two things compared has repeats; on the other one a repeat might come out diff")


def test_a_stated_scatter_is_no_repeat(tmp_path: Path) -> None:
    method = "title: Weigh\nrepeatability: {gas: 0.2 g, passes: 24, products: 4}\n"
    text = f"{HEAD}measure:\n{GAS.replace('instrument', 'method: weigh, instrument')}readings: readings.csv\n"
    files = {"readings": table(gas="14.1 17.2 19.9"), "methods/weigh.1.yaml": method}
    declared, _, evaluation = all_stages(tmp_path, text, **files)
    assert evaluation.firsts[0].winner == "corvane"
    firm = sentences.how_firm(declared.campaign, evaluation)
    assert firm.startswith("Nothing was repeated here, but how much a run varies was known before the test.")


def test_repeats_of_one_contender_are_not_repeats_of_all(tmp_path: Path) -> None:
    some = "what,pass,corvane,ostler,brindle\ngas,1,14.1,17.2,19.9\ngas,2,14.3,,\ngas,3,14.2,,\n"
    _, firm = said(tmp_path, GAS, some)
    assert firm.startswith("Some contenders were repeated here, others not.")
    both = some + "wait,1,240,212,290\nwait,2,243,215,288\n"
    _, firm = said(tmp_path, GAS + WAIT, both)
    assert firm.startswith(
        "One of the two things compared has repeats of every contender ranked; one more of some contenders only."
    )


def test_under_own_scatter_the_guarantee_asks_nothing_of_the_others(tmp_path: Path) -> None:
    method = "title: Weigh\nscatter: own\n"
    text = f"{HEAD}measure:\n{GAS.replace('instrument', 'method: weigh, instrument')}readings: readings.csv\n"
    files = {"readings": table(gas=FIRST), "methods/weigh.1.yaml": method}
    declared, _, evaluation = all_stages(tmp_path, text, **files)
    firm = sentences.how_firm(declared.campaign, evaluation)
    assert "at most 1 time in 20." in firm
    assert "vary about equally" not in firm


def test_contenders_left_out_of_the_ranks_are_not_counted_among_those_beaten(tmp_path: Path) -> None:
    block = "caveats:\n  - {about: gas, contender: brindle, says: Its tap leaked., so: do not rank}\n"
    answer, _ = said(tmp_path, GAS, table(gas=FIRST), block)
    assert answer == "Of the two ranked there, Corvane did best on gas, 3.00 g below Ostler, the nearest."


def test_where_only_one_could_be_ranked_there_is_nothing_to_hold_it_against(tmp_path: Path) -> None:
    block = "caveats:\n" + "".join(
        f"  - {{about: gas, contender: {c}, says: Its tap leaked., so: do not rank}}\n" for c in ("ostler", "brindle")
    )
    answer, _ = said(tmp_path, GAS, table(gas=FIRST), block)
    assert answer == "On gas only Corvane could be ranked, so there is nothing to hold it against."


def test_where_every_result_is_held_back_nobody_is_named(tmp_path: Path) -> None:
    answer, _ = said(tmp_path, GAS, table(gas=FIRST), "caveats:\n  - {about: gas, says: It leaked., so: do not rank}\n")
    assert answer == "On gas nobody could be ranked."


def test_what_has_no_direction_is_shown_without_rank(tmp_path: Path) -> None:
    answer, firm = said(tmp_path, GAS.replace("better: lower", "better: neither"), table(gas=FIRST))
    assert (answer, firm) == ("The results are shown without rank.", "")


def test_a_supplied_contender_was_not_bought(tmp_path: Path) -> None:
    head = HEAD.replace("brindle: Brindle", "brindle: {title: Brindle, supplied by: the maker}")
    answer, firm = said(tmp_path, GAS, table(gas=FIRST), head=head)
    assert answer.startswith("Of the three we tested, Corvane did best")
    assert "bought" not in answer + firm


@pytest.mark.parametrize("rows", [FIRST, SHARED, TIED])
def test_the_led_answer_says_the_same_words(tmp_path: Path, rows: str) -> None:
    from reportgen.wording.lead import bare, pieces

    text = f"{HEAD}measure:\n{GAS}readings: readings.csv\n"
    declared, _, evaluation = all_stages(tmp_path, text, readings=table(gas=rows))
    led = sentences.campaign_answer_led(declared.campaign, evaluation)
    assert bare(led) == sentences.campaign_answer(declared.campaign, evaluation)
    assert any(p.to == "stoves/tests/gas.html#pairs-gas" for p in pieces(led))


@pytest.mark.parametrize(
    ("weights", "opening"),
    [
        ("given", "Weighed as we chose to, Ostler comes out first over all. "),
        ("all", "Ostler comes out first over all, for nearly every way of weighing what was compared. "),
    ],
)
def test_a_firm_verdict_comes_first_and_what_was_asked_first_follows(
    tmp_path: Path, weights: str, opening: str
) -> None:
    """Who is worth most over all needn't be best on what was asked first: both are said."""
    text = f"{HEAD}measure:\n{GAS}readings: readings.csv\n"
    declared, _, evaluation = all_stages(tmp_path, text, readings=table(gas=FIRST))
    overall = Overall(
        ("corvane", "ostler", "brindle"), {}, ("thrift",), weights, (), (), (), {}, {}, 1, 1,  # type: ignore[arg-type]
        Lead("ostler", 0.99, True), "ostler",
    )  # fmt: skip
    verdict = Verdict((), (), (), (), None, frozenset(), overall)
    answer = sentences.campaign_answer(declared.campaign, replace(evaluation, verdict=verdict))
    assert answer.startswith(f"{opening}Of the three we bought, Corvane did best on gas")
    open_ = replace(verdict, overall=replace(overall, winner=None))
    assert sentences.campaign_answer(declared.campaign, replace(evaluation, verdict=open_)).startswith("Of the three")
