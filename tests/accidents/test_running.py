"""Runs still going and contenders not yet tested: bounds and gaps that say so, everywhere."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.accidents.accident_bench import RUN, RUN_ROWS, caveats, compiled, page, told_of
from tests.campaigns import comparison_of, refusal, result_of

GOING = "running: {contender: tamsin, since: 2026-05-02}\n"


def test_what_was_read_so_far_counts_as_more_than_it(tmp_path: Path) -> None:
    """The witness is the same campaign with `over 118` in its table."""
    over = told_of(tmp_path / "over", RUN, run=RUN_ROWS.replace("tamsin,1,118", "tamsin,1,over 118"))
    told = told_of(tmp_path / "going", RUN + GOING, run=RUN_ROWS)
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
    told = told_of(tmp_path, RUN + GOING, run=RUN_ROWS.replace("118", "12"))
    tamsin = result_of(told, "burn-time", "tamsin")
    assert tamsin["rank"][0] == 1
    assert told["first"][0]["winner"] is None
    assert "tamsin" in told["first"][0]["may_be_first"]


def test_only_the_last_pass_of_a_run_is_still_going(tmp_path: Path) -> None:
    told = told_of(tmp_path, RUN + GOING, run=RUN_ROWS + "tamsin,2,30\n")
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
    told = told_of(tmp_path, yaml + GOING, run=RUN_ROWS)
    assert result_of(told, "burn-time", "tamsin")["limit"] is None
    assert caveats(told, "running")[0]["says"] == "Still running since 2 May 2026: what is shown is so far"


def test_a_day_that_was_not_noted_is_not_made_up(tmp_path: Path) -> None:
    told = told_of(tmp_path, RUN + GOING.replace("2026-05-02", "not noted"), run=RUN_ROWS)
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


def test_so_far_says_of_which_day_it_is(tmp_path: Path) -> None:
    told = told_of(tmp_path, RUN + GOING.replace("02}", "02, as of: 2026-05-09}"), run=RUN_ROWS)
    says = caveats(told, "running")[0]["says"].replace("\u00a0", " ")
    assert says == "Still running since 2 May 2026: more than 118 min so far. That was on 9 May 2026."


def test_a_run_without_its_day_is_told_that_the_day_may_be_not_noted(tmp_path: Path) -> None:
    (found,) = refusal(tmp_path, RUN + "running: {contender: tamsin}\n", **{"run.csv": RUN_ROWS})
    assert found.rule == "missing-key"
    assert "not noted" in found.says + found.do


LATER = RUN.replace("readings:", "  noise: level, dB, lower\nreadings:")
BENCH = "contender,what,value,pass\ncorvane,burn time,60,1\nostler,burn time,50,1\ntamsin,burn time,118,1\n"
NOISE = "corvane,noise,60.1,1\nostler,noise,61.2,1\n"


@pytest.mark.parametrize("pair", ["{noise: [tamsin]}", "{noise: tamsin}", "{tamsin: [noise]}"])
def test_one_contender_of_one_test_is_written_as_a_pair(pair: str, tmp_path: Path) -> None:
    told = told_of(tmp_path, LATER + f"not yet tested: {pair}\n", run=BENCH + NOISE)
    assert result_of(told, "noise", "tamsin")["missing"] == "not yet tested"
    assert result_of(told, "noise", "corvane")["value"] == 60.1
    assert result_of(told, "burn-time", "tamsin")["value"] == 118
    assert not [f for f in told["findings"] if f["rule"] == "tested-after-all"]


def test_a_pair_written_as_a_list_is_told_where_the_readings_say_otherwise(tmp_path: Path) -> None:
    told = told_of(tmp_path, LATER + "not yet tested: [tamsin, noise]\n", run=BENCH + NOISE)
    found = {f["contender"]: f for f in told["findings"] if f["rule"] == "tested-after-all"}
    assert set(found) == {"corvane", "ostler", "tamsin"}
    assert found["tamsin"]["says"] == "Tamsin is under `not yet tested:` and has readings in “burn time”."
    assert "`not yet tested: {burn-time: [tamsin]}`" in found["tamsin"]["do"]
    assert found["tamsin"]["line"] == LATER.count("\n") + 1
    assert result_of(told, "burn-time", "tamsin")["value"] == 118, "what was read counts"


def test_a_pair_of_what_is_no_test_and_no_contender_is_refused(tmp_path: Path) -> None:
    found = refusal(tmp_path, LATER + "not yet tested: {nose: [tamsin]}\n", **{"run.csv": BENCH + NOISE})
    assert {f.rule for f in found} == {"unknown-contender"}
    assert "noise" in found[0].do


COUNTED = RUN.replace("unit: min", "unit: times")


def test_a_count_is_exact_and_leaves_nothing_open_but_its_repeat(tmp_path: Path) -> None:
    """Common practice, no source: a whole number that was counted right is exact; a step of one would add ±0.5."""
    told = compiled(tmp_path, COUNTED + GOING, run="contender,burn time\ncorvane,212\nostler,230\ntamsin,300\n")
    ours = result_of(told, "burn-time", "corvane")
    assert (ours["value"], ours["u"], ours["printed"], ours["budget"]) == (212, None, "212 times, counted", [])
    assert result_of(told, "burn-time", "tamsin")["printed"] == "more than 300 times so far"
    pair = comparison_of(told, "burn-time", "corvane", "ostler")
    assert (pair["differed"], pair["difference"], pair["decision"]) == (True, -18, "not enough to say")
    text = page(tmp_path, "tests/burn-time").text
    assert "how far the instrument may be off" not in text
    assert "−18 to −18" not in text
    assert not [f for f in told["findings"] if f["rule"] == "no-instrument"]


def test_counts_of_several_passes_scatter_and_have_no_step(tmp_path: Path) -> None:
    """Mean and standard deviation of 212 and 216: 214 and 2.83; nothing else stands in the budget."""
    rows = (
        "contender,pass,burn time\ncorvane,1,212\nostler,1,230\nostler,2,236\ncorvane,2,216\ntamsin,1,9\ntamsin,2,9\n"
    )
    told = told_of(tmp_path, COUNTED, run=rows)
    ours = result_of(told, "burn-time", "corvane")
    assert ours["value"] == 214
    assert {b["sort"] for b in ours["budget"]} == {"scatter"}


def test_what_runs_to_a_limit_without_a_unit_is_told_that_it_may_be_times(tmp_path: Path) -> None:
    found = refusal(tmp_path, RUN.replace("unit: min, ", ""), **{"run.csv": RUN_ROWS})
    assert "`unit: times` where it is counted" in found[0].do
