"""What is said where there is nothing to rank: why, and never more than that."""

from __future__ import annotations

from pathlib import Path

from reportgen.prose import sentences
from tests.evaluation.bench import all_stages

TWO = "title: T\ncontenders: {corvane: Corvane, ostler: Ostler}\n"
TEST = "title: Burn\nreadings: {file: readings.csv, columns: {burn: {unit: s}}}\nquantities: {burn: {kind: timed, unit: s, better: lower}}\n"
BURNS = "contender,pass,burn\ncorvane,1,3.1\nostler,1,4.2\n"


def said(place: Path, yaml_text: str, **files: str) -> str:
    declared, _, evaluation = all_stages(place, yaml_text, **files)
    return sentences.first_place(declared.campaign, evaluation, "burn")


def test_what_was_run_and_left_out_was_not_left_untested(tmp_path: Path) -> None:
    left_out = "exclude: [{contender: corvane, because: leaked, decided: during the test}, {contender: ostler, because: leaked, decided: during the test}]\n"
    line = said(tmp_path, TWO + "tests: [burn]\n", readings=BURNS, **{"tests/burn.yaml": TEST + left_out})
    assert line == "Corvane and Ostler have no result: every pass is left out."


def test_an_empty_table_is_not_yet_tested(tmp_path: Path) -> None:
    line = said(tmp_path, TWO + "tests: [burn]\n", readings="contender,pass,burn\n", **{"tests/burn.yaml": TEST})
    assert line == "Not yet tested."


def test_a_part_that_one_contender_lacks_was_not_read(tmp_path: Path) -> None:
    declared, _, evaluation = all_stages(
        tmp_path, TWO + "tests: [burn]\n",
        readings="contender,part,burn\ncorvane,cold,3.1\ncorvane,hot,2.2\nostler,cold,4.2\n",
        **{"tests/burn.yaml": TEST.replace("better: lower", "better: lower, over parts: each")},
    )  # fmt: skip
    line = sentences.first_place(declared.campaign, evaluation, "burn", "hot")
    assert "Ostler has no result: not read" in line
    assert "not yet tested" not in line


def test_zeros_under_a_relative_scatter_are_the_reason_given(tmp_path: Path) -> None:
    line = said(
        tmp_path, TWO + "tests: [burn]\n", readings=BURNS.replace("3.1", "0.0"),
        **{"tests/burn.yaml": TEST.replace("title: Burn\n", "title: Burn\nmethod: by-hand\n"),
           "methods/by-hand.1.yaml": "title: M\nscatter: relative\nsteps: [do it]\n"},
    )  # fmt: skip
    assert "needs readings above zero" in line
    assert "instrument" not in line
