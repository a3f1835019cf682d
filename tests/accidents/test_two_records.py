"""Two records of one reading disagree: one counts, both are told, and what would change is worked out."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.accidents.accident_bench import GAS, GAS_ROWS, HEAD, caveats, compiled, page, told_of
from tests.campaigns import refusal, result_of

RECORDS = (
    "two records:\n  - {where: 'ostler, pass 2, gas burned after', said: [207.2 g, 206.2 g], used: 206.2 g, "
    "because: the photograph of the display shows it}\n"
)


def test_the_record_used_counts_and_the_other_says_what_would_change(tmp_path: Path) -> None:
    """Each way's witness is the campaign that has that record alone in its file."""
    alone = {
        said: result_of(told_of(tmp_path / said, GAS, gas=GAS_ROWS.replace("207.2", said)), "gas-burned", "ostler")
        for said in ("206.2", "207.2")
    }
    told = told_of(tmp_path / "both", GAS + RECORDS, gas=GAS_ROWS)
    ours = result_of(told, "gas-burned", "ostler")
    assert {k: ours[k] for k in ("value", "u", "low", "high", "rank")} == {
        k: alone["206.2"][k] for k in ("value", "u", "low", "high", "rank")
    }
    (caveat,) = caveats(told, "records")
    assert (caveat["said"], caveat["used"], caveat["contender"]) == (["207.2 g", "206.2 g"], "206.2 g", "ostler")
    (other,) = caveat["otherwise"]
    assert (other["said"], other["quantity"], other["contender"]) == ("207.2 g", "gas-burned", "ostler")
    assert other["value"] == alone["207.2"]["value"] != ours["value"]
    assert other["moves"] == (alone["207.2"]["rank"] != ours["rank"])


def test_both_records_are_told_wherever_the_reading_bears(tmp_path: Path) -> None:
    told = compiled(tmp_path, GAS + RECORDS, gas=GAS_ROWS)
    (caveat,) = caveats(told, "records")
    # (16.3 + 16.7) / 2 = 16.5 and (16.3 + 17.7) / 2 = 17.0
    said = (
        "There are two records of “gas burned after, pass 2”: 207.2 g and 206.2 g. "
        "The one that counts is 206.2 g. The photograph of the display shows it. "
        "With 207.2 g, gas burned of Ostler Mk II would be 16.50 g instead of 17.00 g."
    )
    assert caveat["says"].replace("\u00a0", " ").startswith(said)
    assert caveat["id"] in result_of(told, "gas-burned", "ostler")["caveats"]
    assert caveat["id"] not in result_of(told, "gas-burned", "corvane")["caveats"]
    assert caveat["id"] in told["comparisons"][0]["caveats"]
    text = page(tmp_path, "tests/gas-burned").text.replace("\u00a0", " ")
    assert said in text
    assert "would be 16.50 g" in page(tmp_path, "index").text.replace("\u00a0", " ")


def test_the_record_in_the_file_may_be_the_one_used(tmp_path: Path) -> None:
    told = told_of(tmp_path, GAS + RECORDS.replace("used: 206.2 g", "used: 207.2 g"), gas=GAS_ROWS)
    assert result_of(told, "gas-burned", "ostler")["value"] == pytest.approx(16.5)
    assert caveats(told, "records")[0]["otherwise"][0]["value"] == pytest.approx(17.0)


def test_a_record_may_be_a_bound_or_none(tmp_path: Path) -> None:
    records = RECORDS.replace("[207.2 g, 206.2 g]", "[207.2 g, none (the film shows no display)]")
    told = told_of(tmp_path, GAS + records.replace("used: 206.2 g", "used: 207.2 g"), gas=GAS_ROWS)
    (other,) = caveats(told, "records")[0]["otherwise"]
    assert other["value"] == pytest.approx(16.3)  # pass 1 alone


def test_records_of_a_test_name_the_reading_of_that_test(tmp_path: Path) -> None:
    yaml = HEAD + "measure:\n  gas burned:\n    kind: weighed before and after\n    unit: g\n    better: lower\n"
    yaml += "    readings: gas.csv\n" + "".join(f"    {line}\n" for line in RECORDS.splitlines())
    told = told_of(tmp_path, yaml, gas=GAS_ROWS)
    assert result_of(told, "gas-burned", "ostler")["value"] == pytest.approx(17.0)
    assert caveats(told, "records")[0]["id"] == "records-gas-burned-1"


OPEN = RECORDS.replace("used: 206.2 g", "used: not known")


def test_where_nobody_knows_which_is_right_both_stand_and_all_between_them(tmp_path: Path) -> None:
    """The witness is the campaign with the range itself in its file: 206.2 to 207.2."""
    told = compiled(tmp_path / "open", GAS + OPEN, gas=GAS_ROWS)
    witness = compiled(tmp_path / "range", GAS, gas=GAS_ROWS.replace("207.2", "206.2 to 207.2"))
    ours, theirs = (result_of(t, "gas-burned", "ostler") for t in (told, witness))
    assert {k: ours[k] for k in ("value", "u", "low", "high", "rank")} == {
        k: theirs[k] for k in ("value", "u", "low", "high", "rank")
    }
    (caveat,) = caveats(told, "records")
    assert "nobody knows which is right: both stand" in caveat["says"]
    assert caveat["used"] == "not known"
    assert [o["said"] for o in caveat["otherwise"]] == ["207.2 g", "206.2 g"]
    assert "Which is right isn’t known, so both stand" in page(tmp_path / "open", "tests/gas-burned").text


def test_between_records_that_are_no_plain_numbers_lies_no_range(tmp_path: Path) -> None:
    (found,) = refusal(tmp_path, GAS + OPEN.replace("206.2 g", "over 206 g"), **{"gas.csv": GAS_ROWS})
    assert found.rule == "records-without-range"
    assert "which one is used" in found.do


def test_a_claim_that_the_other_record_would_move_is_told(tmp_path: Path) -> None:
    """Ostler burned 16.5 g or 17.0 g, as either record has it, where its maker claims at most 16.8 g."""
    claims = "{title: Ostler Mk II, claims: [{says: Burns little, source: box, quantity: gas burned, at most: 16.8 g}]}"
    yaml = GAS.replace("ostler: Ostler Mk II", f"ostler: {claims}")
    assert yaml != GAS
    alone = {
        said: told_of(tmp_path / said, yaml, gas=GAS_ROWS.replace("207.2", said))["claims"][0]["probability"]
        for said in ("206.2", "207.2")
    }
    assert alone["206.2"] != alone["207.2"]
    told = told_of(tmp_path / "both", yaml + RECORDS, gas=GAS_ROWS)
    says = caveats(told, "records")[0]["says"].replace("\u00a0", " ")
    assert "“Burns little”, would be " in says
    assert f"{round(100 * alone['207.2'])} %" in says
