"""Yes and no, counts, grades and runs that did not finish, through compiled campaigns.

Expected probabilities are worked out by hand beside each; the tests behind them stand in `tests/judgement/test_exact_tests.py`.
"""

import re
from pathlib import Path

import pytest

from tests.campaigns import comparison_of, compile_campaign, result_of, results_of

HEAD = """\
title: Which stove lights?
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II, tamsin: Tamsin 3}
readings: readings.csv
measure:
"""


def yaml(measure: str) -> str:
    return HEAD + "".join(f"  {line}\n" for line in measure.splitlines())


def told_of(place: Path, measure: str, rows: str, methods: str = "") -> dict:
    return results_of(place, yaml(measure), readings=rows, **({"methods/run.1.yaml": methods} if methods else {}))


def compiled(place: Path, measure: str, rows: str, methods: str = "") -> dict:
    return compile_campaign(place, yaml(measure), readings=rows, **({"methods/run.1.yaml": methods} if methods else {}))


def first_of(told, quantity):
    return next(f for f in told["first"] if f["quantity"] == quantity)


def page(place: Path, test: str) -> str:
    """The words of a test's page, without markup and with plain spaces."""
    html = (place / "stoves" / ".site" / "stoves" / "tests" / f"{test}.html").read_text(encoding="utf-8")
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", "", html).replace("\u00a0", " "))


def table(column: str, **cells: str) -> str:
    rows = [f"contender,pass,{column}"]
    for contender, said in cells.items():
        rows += [f"{contender},{n},{one}" for n, one in enumerate(said.split(), 1)]
    return "\n".join(rows) + "\n"


def test_three_of_three_beat_none_of_three(tmp_path: Path) -> None:
    told = compiled(tmp_path, "lit: yes/no, higher", table("lit", corvane="yes yes yes", ostler="no no no"))
    pair = comparison_of(told, "lit", "corvane", "ostler")
    assert (pair["decision"], pair["favours"]) == ("better", "corvane")
    assert pair["reason"] == {"code": "chance-excluded", "numbers": {"allowed": 0.025, "p": pytest.approx(1 / 64)}}
    assert (pair["difference"], pair["u"], pair["low"]) == (None, None, None)
    assert first_of(told, "lit")["winner"] == "corvane"
    assert first_of(told, "lit")["unranked"] == ["tamsin"]
    assert "chance alone would give such a lead in up to 1.6 %" in page(tmp_path, "lit")


def test_two_tries_each_are_never_enough_and_the_page_says_what_would_be(tmp_path: Path) -> None:
    told = compiled(tmp_path, "lit: yes/no, higher", table("lit", corvane="yes yes", ostler="no no"))
    pair = comparison_of(told, "lit", "corvane", "ostler")
    assert (pair["decision"], pair["reason"]["code"]) == ("not enough to say", "never-enough")
    assert pair["reason"]["numbers"]["enough"] == 3
    assert pair["settle"]["passes"] == 3
    assert first_of(told, "lit")["winner"] is None
    assert result_of(told, "lit", "corvane")["rank"] == [1, 2]
    shown = page(tmp_path, "lit")
    assert "With two tries each no outcome could tell" in shown
    assert "About three tries each would settle a gap" in shown


def test_without_a_direction_nothing_is_ranked_and_the_limits_are_still_there(tmp_path: Path) -> None:
    told = compiled(tmp_path, "lit: yes/no", table("lit", corvane="yes", ostler="no"))
    assert told["first"] == told["comparisons"] == []
    one = result_of(told, "lit", "corvane")
    assert (one["value"], one["low"], one["high"]) == (1.0, pytest.approx(0.025), 1.0)
    assert (one["u"], one["coverage"], one["covers"], one["at_least"]) == (None, 0.95, "tries", True)
    assert "2.5 % to 100 %" in page(tmp_path, "lit")


def test_all_alike_nobody_is_ahead(tmp_path: Path) -> None:
    cells = table("lit", corvane="no yes no", ostler="no yes no", tamsin="yes no no")
    told = compiled(tmp_path, "lit: yes/no, higher", cells)
    assert first_of(told, "lit")["may_be_first"] == ["corvane", "ostler", "tamsin"]
    assert "came out alike (1 of 3 each), so nobody is ahead" in page(tmp_path, "lit")


GRIP = "grip: {kind: grade, grades: [poor, fair, good], better: higher}"


def test_four_grades_above_four_decide_and_ties_are_counted(tmp_path: Path) -> None:
    told = told_of(tmp_path, GRIP, table("grip", corvane="good good good good", ostler="fair poor poor fair"))
    assert comparison_of(told, "grip", "corvane", "ostler")["reason"]["numbers"]["p"] == pytest.approx(1 / 70)
    assert first_of(told, "grip")["winner"] == "corvane"


def test_three_grades_each_are_never_enough(tmp_path: Path) -> None:
    told = compiled(tmp_path, GRIP, table("grip", corvane="good good good", ostler="poor poor poor"))
    assert comparison_of(told, "grip", "corvane", "ostler")["reason"]["numbers"]["enough"] == 4
    assert "With three grades each no outcome could tell two of them apart; four grades each could" in page(
        tmp_path, "grip"
    )


def test_an_earlier_grade_can_be_the_better_one(tmp_path: Path) -> None:
    measure = "soot: {kind: grade, grades: [none, some, much], better: lower}"
    cells = table("soot", corvane="some some some some", ostler="much much much much")
    assert first_of(told_of(tmp_path, measure, cells), "soot")["winner"] == "corvane"


def test_counts_are_judged_only_where_each_comes_by_itself(tmp_path: Path) -> None:
    cells = table("sputters", corvane="0", ostler="6")
    told = compiled(tmp_path, "sputters: {kind: count, better: lower}", cells)
    assert told["first"] == []
    assert "Nothing says that each comes by itself" in page(tmp_path, "sputters")


def test_none_against_six_decides_and_none_against_five_does_not(tmp_path: Path) -> None:
    measure = "sputters: {kind: count, better: lower, independent: yes}"
    six = compiled(tmp_path / "six", measure, table("sputters", corvane="0", ostler="6"))
    assert comparison_of(six, "sputters", "corvane", "ostler")["reason"]["numbers"]["p"] == pytest.approx(1 / 64)
    assert first_of(six, "sputters")["winner"] == "corvane"
    words = page(tmp_path / "six", "sputters")
    assert words.count("a repeat should agree") == words.count("if each comes by itself, a repeat should agree") >= 2
    five = compiled(tmp_path / "five", measure, table("sputters", corvane="0", ostler="5"))
    assert first_of(five, "sputters")["winner"] is None
    assert comparison_of(five, "sputters", "corvane", "ostler")["decision"] == "too close to call"


OVER = "sputters: {kind: count, better: lower, independent: yes, counted over: burn}\nburn: run to a limit, min, higher"


def test_a_count_over_a_longer_time_is_held_to_it(tmp_path: Path) -> None:
    """6 in 120 min against 0 in 30 min: 0.8⁶ = .262."""
    rows = "contender,sputters,burn\ncorvane,6,120\nostler,0,30\n"
    told = told_of(tmp_path, OVER, rows)
    assert comparison_of(told, "sputters", "corvane", "ostler")["reason"]["numbers"]["p"] == pytest.approx(0.8**6)
    assert result_of(told, "sputters", "corvane")["low"] == pytest.approx(2.202, abs=5e-4)  # Garwood for 6
    assert result_of(told, "sputters", "corvane")["high"] == pytest.approx(13.059, abs=5e-4)


def test_a_count_over_nobody_knows_how_long_is_not_ranked(tmp_path: Path) -> None:
    rows = "contender,sputters,burn\ncorvane,6,120\nostler,0,30\ntamsin,2,none (clock stopped)\n"
    told = told_of(tmp_path, OVER, rows)
    one = result_of(told, "sputters", "tamsin")
    assert (one["rank"], one["blocked"]) == (None, "how long it was counted over isn't known")
    assert first_of(told, "sputters")["unranked"] == ["tamsin"]


def test_a_count_known_from_one_side_is_not_ranked(tmp_path: Path) -> None:
    measure = "sputters: {kind: count, better: lower, independent: yes}"
    told = told_of(tmp_path, measure, table("sputters", corvane="0", ostler=">5", tamsin="9"))
    assert result_of(told, "sputters", "ostler")["blocked"] == "it is known from one side only"
    assert first_of(told, "sputters")["winner"] == "corvane"


def test_counted_incidents_are_held_to_the_runs_they_are_counted_in(tmp_path: Path) -> None:
    """Eight relights in eight runs against none in four: (8/12)⁸ = .039, not enough."""
    measure = (
        "burn: run to a limit, min, higher\nrelights: {count of: relight, in: [burn], better: lower, independent: yes}"
    )
    rows = table("burn", corvane="9 9 9 9 9 9 9 9", ostler="8 8 8 8")
    incidents = "incidents:\n- {contender: corvane, event: relight, times: 8, about: burn, what: It went out.}\n"
    text = HEAD + "".join(f"  {line}\n" for line in measure.splitlines()) + incidents
    told = results_of(tmp_path, text, readings=rows)
    pair = comparison_of(told, "relights", "corvane", "ostler")
    assert pair["reason"]["numbers"]["p"] == pytest.approx((8 / 12) ** 8)
    assert pair["decision"] == "too close to call"


def test_what_was_left_out_is_put_back_and_told(tmp_path: Path) -> None:
    exclude = "exclude: [{contender: ostler, pass: 4, because: its lighter was wet}]"
    measure = f"lit:\n  kind: yes/no\n  better: higher\n  {exclude}"
    cells = table("lit", corvane="yes yes yes", ostler="no no no yes")
    told = told_of(tmp_path, measure, cells)
    place = first_of(told, "lit")
    assert place["winner"] == "corvane"
    assert place["order_changes_without"] is True
    assert [p["decision"] for p in place["pairs_without"]] == ["too close to call"]


BOIL = "boil time: {kind: timed, unit: s, better: lower}"


def test_no_mean_is_taken_of_the_runs_that_finished(tmp_path: Path) -> None:
    rows = (
        "contender,pass,boil time\n"
        "corvane,1,210\ncorvane,2,214\ncorvane,3,212\nostler,1,240\nostler,2,243\nostler,3,241\n"
        "tamsin,1,190\ntamsin,2,did not finish (blown out)\ntamsin,3,did not finish\n"
    )
    told = told_of(tmp_path, BOIL, rows)
    out = result_of(told, "boil-time", "tamsin")
    assert (out["value"], out["yes"], out["of"], out["rank"]) == (None, 1, 3, None)
    assert out["missing"] == "it finished 1 of 3 runs (blown out), and no mean is taken of those that did"
    assert first_of(told, "boil-time")["winner"] == "corvane"
    assert first_of(told, "boil-time")["unranked"] == ["tamsin"]
    assert any(r.get("unfinished") for p in out["by_pass"] for r in p["readings"])


LAST = "title: Time a run\ndid not finish: worst place\n"


def test_where_the_method_said_so_a_run_that_did_not_finish_is_the_worst(tmp_path: Path) -> None:
    """All four runs of one ahead of all four of another, of which two did not finish: one of 70 ways."""
    rows = table("boil time", corvane="210 214 212 209", ostler="240 243").replace("ostler,2,243", "ostler,2,243\n")
    rows = rows.rstrip() + "\nostler,3,did not finish\nostler,4,did not finish\n"
    told = compiled(tmp_path, BOIL.replace("}", ", method: run}"), rows, LAST)
    pair = comparison_of(told, "boil-time", "corvane", "ostler")
    assert (pair["decision"], pair["favours"]) == ("better", "corvane")
    assert pair["reason"]["numbers"]["p"] == pytest.approx(1 / 70)
    assert result_of(told, "boil-time", "ostler")["rank"] == [2, 2]
    assert "finished 2 of 4" in page(tmp_path, "boil-time")


def test_one_against_less_than_one_is_one_step_and_too_close(tmp_path: Path) -> None:
    text = HEAD.replace("measure:", "instruments: {meter: 1 ppm}\nmeasure:") + "  fumes: peak, ppm, lower, meter\n"
    told = results_of(tmp_path, text, readings=table("fumes", corvane="<1 <1 <1", ostler="1 1 1"))
    assert comparison_of(told, "fumes", "corvane", "ostler")["resolved"] is False
    assert first_of(told, "fumes")["winner"] is None
    below = result_of(told, "fumes", "corvane")
    assert (below["limit"], below["value"]) == ("below", 1.0)


def test_two_off_the_scale_are_too_close_to_call(tmp_path: Path) -> None:
    cells = table("fumes", corvane="120 130", ostler=">999 >999", tamsin=">999 >999")
    told = told_of(tmp_path, "fumes: peak, ppm, lower", cells)
    pair = comparison_of(told, "fumes", "ostler", "tamsin")
    assert (pair["decision"], pair["reason"]["code"]) == ("too close to call", "off-scale-both")


def test_contenders_never_compared_stay_uncompared(tmp_path: Path) -> None:
    rows = "contender,smell\ncorvane,less than ostler\n"
    told = told_of(tmp_path, "smell: order, lower", rows)
    assert comparison_of(told, "smell", "corvane", "tamsin")["observed"]["told"] == "never"
    assert told["first"] == []
