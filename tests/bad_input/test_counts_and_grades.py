"""What is wrong with counts, grades, yes and no, and runs that did not finish is told with its place."""

from pathlib import Path

import pytest

from tests.campaigns import refusal

HEAD = "title: Which stove lights?\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\nreadings: readings.csv\nmeasure:\n"


@pytest.mark.parametrize(
    ("measure", "column", "cell", "rule"),
    [
        ("lit: yes/no, higher", "lit", "maybe", "not-yes-or-no"),
        ("lit: yes/no, higher", "lit", "3", "not-yes-or-no"),
        ("grip: {kind: grade, grades: [poor, good], better: higher}", "grip", "fair", "not-a-grade"),
        ("sputters: {kind: count, better: lower, independent: yes}", "sputters", "-2", "not-a-count"),
        ("sputters: {kind: count, better: lower, independent: yes}", "sputters", "2.5", "not-a-count"),
        ("sputters: {kind: count, better: lower, independent: yes}", "sputters", "did not finish", "not-a-run"),
    ],
)
def test_a_cell_that_is_none_of_its_kind_is_refused(
    tmp_path: Path, measure: str, column: str, cell: str, rule: str
) -> None:
    (found,) = refusal(tmp_path, f"{HEAD}  {measure}\n", readings=f"contender,{column}\ncorvane,{cell}\n")
    assert (found.rule, found.place.line) == (rule, 2)
    assert found.do


@pytest.mark.parametrize(
    ("measure", "rule"),
    [
        ("lit: {kind: yes/no, better: higher, independent: yes}", "independent-of-another-kind"),
        ("weight: {kind: one reading, unit: g, counted over: lit}", "independent-of-another-kind"),
        ("sputters: {kind: count, counted over: burn}\n  burn: run to a limit, min", "counted-over-alone"),
        (
            "sputters: {kind: count, independent: yes, counted over: brun}\n  burn: run to a limit, min",
            "unknown-quantity",
        ),
        ("relights: {count of: relight, independent: yes}", "counted-over-nothing"),
        ("grip: {kind: grade, better: higher}", "grade-without-grades"),
    ],
)
def test_what_a_measure_can_not_say_of_itself_is_refused(tmp_path: Path, measure: str, rule: str) -> None:
    found = refusal(tmp_path, f"{HEAD}  {measure}\n", readings="contender,sputters,burn,lit\ncorvane,1,9,yes\n")
    assert rule in [f.rule for f in found]
    assert all(f.do and f.place.line for f in found if f.rule == rule)


def test_a_count_over_nothing_is_refused(tmp_path: Path) -> None:
    measure = (
        "sputters: {kind: count, better: lower, independent: yes, counted over: burn}\n  burn: run to a limit, min\n"
    )
    (found,) = refusal(tmp_path, f"{HEAD}  {measure}", readings="contender,sputters,burn\ncorvane,3,0\nostler,1,9\n")
    assert found.rule == "counted-over-nothing"
    assert "Corvane Sol" in found.says
    assert "Events over nothing have no rate" in found.why


def test_an_unknown_rule_for_runs_that_did_not_finish_is_refused(tmp_path: Path) -> None:
    files = {"methods/run.1.yaml": "title: Time a run\ndid not finish: best place\n"}
    text = f"{HEAD}  boil time: {{kind: timed, unit: s, better: lower, method: run}}\n"
    found = refusal(tmp_path, text, readings="contender,boil time\ncorvane,210\n", **files)
    assert any("best place" in f.says for f in found)
