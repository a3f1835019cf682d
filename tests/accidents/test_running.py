"""Runs still going and contenders not yet tested: bounds and gaps that say so, everywhere."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.accidents.accident_bench import RUN, RUN_ROWS, caveats, compiled, page
from tests.campaigns import comparison_of, result_of

GOING = "running: {contender: tamsin, since: 2026-05-02}\n"


def test_what_was_read_so_far_counts_as_more_than_it(tmp_path: Path) -> None:
    """The witness is the same campaign with `over 118` in its table."""
    over = compiled(tmp_path / "over", RUN, run=RUN_ROWS.replace("tamsin,1,118", "tamsin,1,over 118"))
    told = compiled(tmp_path / "going", RUN + GOING, run=RUN_ROWS)
    ours, theirs = (result_of(t, "burn-time", "tamsin") for t in (told, over))
    assert (ours["value"], ours["limit"]) == (118, "above") == (theirs["value"], theirs["limit"])
    assert ours["rank"] == theirs["rank"]
    assert ours["printed"] == "more than 118 min so far"
    assert ours["running"] == "2 May 2026"
    for pair in ("corvane", "ostler"):
        mine, witness = (comparison_of(t, "burn-time", pair, "tamsin") for t in (told, over))
        assert (mine["decision"], mine["resolved"]) == (witness["decision"], witness["resolved"])


def test_a_run_still_going_says_so_on_its_page_and_on_the_first(tmp_path: Path) -> None:
    told = compiled(tmp_path, RUN + GOING, run=RUN_ROWS)
    (caveat,) = caveats(told, "running")
    assert caveat["says"].replace("\u00a0", " ") == "Still running since 2 May 2026: more than 118 min so far"
    assert caveat["id"] in result_of(told, "burn-time", "tamsin")["caveats"]
    assert caveat["id"] not in result_of(told, "burn-time", "corvane")["caveats"]
    for address in ("index", "tests/burn-time"):
        text = page(tmp_path, address).text.replace("\u00a0", " ")
        assert "Still running since 2 May 2026: more than 118 min so far" in text
    assert (
        "Tamsin is still running (burn time), so what is said of it there is only so far."
        in page(tmp_path, "index").text
    )


def test_a_run_that_is_behind_so_far_is_not_ranked_behind(tmp_path: Path) -> None:
    """It may still overtake: more than 12 min is no less than 60."""
    told = compiled(tmp_path, RUN + GOING, run=RUN_ROWS.replace("118", "12"))
    tamsin = result_of(told, "burn-time", "tamsin")
    assert tamsin["rank"][0] == 1
    assert told["first"][0]["winner"] is None
    assert "tamsin" in told["first"][0]["may_be_first"]


def test_only_the_last_pass_of_a_run_is_still_going(tmp_path: Path) -> None:
    told = compiled(tmp_path, RUN + GOING, run=RUN_ROWS + "tamsin,2,30\n")
    passes = result_of(told, "burn-time", "tamsin")["by_pass"]
    assert [(p["value"], p["limit"]) for p in passes] == [(118, None), (30, "above")]


@pytest.mark.parametrize("row", ["", "tamsin,1,\n"])
def test_a_run_of_which_nothing_was_read_is_over_an_unknown_time(row: str, tmp_path: Path) -> None:
    told = compiled(tmp_path, RUN + GOING, run=RUN_ROWS.replace("tamsin,1,118\n", row))
    tamsin = result_of(told, "burn-time", "tamsin")
    assert (tamsin["value"], tamsin["limit"], tamsin["printed"]) == (
        None,
        "above",
        "still running, nothing read so far",
    )
    assert caveats(told, "running")[0]["says"] == "Still running since 2 May 2026: nothing was read so far"
    assert told["first"][0]["winner"] is None, "it may still outrun all others"
    text = page(tmp_path, "tests/burn-time").text
    assert "still running, nothing read so far" in text
    assert "more than the meter can show" not in text
    assert not [f for f in told["findings"] if f["rule"] == "empty-cell"]


def test_another_kind_is_only_told_to_be_so_far(tmp_path: Path) -> None:
    yaml = RUN.replace(
        "{kind: run to a limit, unit: min, better: higher}", "{kind: one reading, unit: g, better: higher}"
    )
    told = compiled(tmp_path, yaml + GOING, run=RUN_ROWS)
    assert result_of(told, "burn-time", "tamsin")["limit"] is None
    assert caveats(told, "running")[0]["says"] == "Still running since 2 May 2026: what is shown is so far"


def test_a_day_that_was_not_noted_is_not_made_up(tmp_path: Path) -> None:
    told = compiled(tmp_path, RUN + GOING.replace("2026-05-02", "not noted"), run=RUN_ROWS)
    assert caveats(told, "running")[0]["says"].startswith("Still running, since when wasn’t noted: more than 118")


def test_who_is_not_yet_tested_is_said_plainly_and_takes_no_place(tmp_path: Path) -> None:
    told = compiled(tmp_path, RUN + "not yet tested: [tamsin]\n", run=RUN_ROWS.replace("tamsin,1,118\n", ""))
    tamsin = result_of(told, "burn-time", "tamsin")
    assert (tamsin["missing"], tamsin["printed"], tamsin["rank"]) == ("not yet tested", "not yet tested", None)
    assert told["first"][0]["unranked"] == ["tamsin"]
    assert not [c for c in told["comparisons"] if "tamsin" in (c["first"], c["second"])]
    assert all("tamsin" not in v["dominated_by"] for v in told["verdict"]["value"])
    assert "Tamsin has no result: not yet tested." in page(tmp_path, "tests/burn-time").text
    first = page(tmp_path, "index").text
    assert "Tamsin hasn’t been tested yet." in first
    assert "not yet tested" in first
    assert "not yet tested" in page(tmp_path, "contenders/tamsin").text


def test_a_test_still_to_come_is_said_plainly(tmp_path: Path) -> None:
    yaml = RUN.replace("readings:", "  noise: level, dB, lower\nreadings:") + "not yet tested: [noise]\n"
    told = compiled(tmp_path, yaml, run=RUN_ROWS)
    assert {r["missing"] for r in told["results"] if r["quantity"] == "noise"} == {"not yet tested"}
    assert "Not yet tested" in page(tmp_path, "tests/noise").text
