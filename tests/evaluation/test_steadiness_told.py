"""Passes that speak against what was assumed of them, through campaigns: told on the page and in the audit, and nothing
that is decided changes."""

from __future__ import annotations

import re
from html import unescape
from pathlib import Path
from typing import Any

import pytest

from reportgen.build.run import audit_path
from reportgen.finding import Finding
from tests.campaigns import comparison_of, compile_folder, results_in, write_campaign

YAML = """\
title: T
who pays: Readers.
contenders: {{corvane: Corvane, ostler: Ostler, brindle: Brindle, tamsin: Tamsin}}
measure:
  gas: {{kind: one reading, unit: g, better: lower, instrument: scale{more}}}
readings: readings.csv
"""
SCALE = "scale: {resolution: 0.001 g, range: up to 500 g, accuracy: unknown}\n"
Passes = dict[str, tuple[float, ...]]


def rows_of(passes: Passes, rounds: bool = False) -> str:
    """Round after round, every contender in each."""
    most = max(map(len, passes.values()))
    found = [f"{c},{n + 1},{n + 1},{v[n]:.3f}" for n in range(most) for c, v in passes.items() if n < len(v)]
    if rounds:
        return "\n".join(["contender,pass,round,gas", *found]) + "\n"
    return "\n".join(["contender,pass,gas", *(re.sub(r",(\d+),\1,", r",\1,", row) for row in found)]) + "\n"


def folder_of(place: Path, passes: Passes, method: str = "", more: str = "", rounds: bool = False) -> Path:
    named = ", method: weigh-it" if method else ""
    files = {"methods/weigh-it.1.yaml": method} if method else {}
    yaml = YAML.format(more=named) + more
    return write_campaign(place, yaml, readings=rows_of(passes, rounds), **{"instruments.yaml": SCALE, **files})


def audited(folder: Path) -> dict[str, Finding]:
    """The audit by rule."""
    return {f.rule: f for f in audit_path(folder)}


def told(
    place: Path, passes: Passes, method: str = "", more: str = "", rounds: bool = False
) -> tuple[dict[str, Any], dict[str, Finding], str]:
    """results.json, the audit by rule, and the words of the test's page."""
    folder = folder_of(place, passes, method, more, rounds)
    record = compile_folder(folder)
    page = next((folder / ".site").glob("*/tests/gas.html")).read_text(encoding="utf-8")
    return record, audited(folder), re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", "", page)))


STEADY = {"corvane": (10.0, 10.4, 10.1), "ostler": (12.3, 12.0, 12.5), "brindle": (14.2, 14.0, 14.5)}


def test_steady_passes_leave_nothing_to_say(tmp_path: Path) -> None:
    folder = folder_of(tmp_path, STEADY)
    record, audit = results_in(folder), audited(folder)
    seen = record["scatters"][0]["seen"]
    assert (seen["uneven"], seen["apart"], seen["trend"], seen["at_odds"]) == (None, None, None, None)
    assert not {"scatter-uneven", "passes-drift", "pass-apart", "repeatability-contradicted", "past-campaigns"} & set(
        audit
    )


def test_passes_that_all_rise_are_told_as_trend_and_count_as_scatter_still(tmp_path: Path) -> None:
    rising = {name: tuple(values[0] + n + 0.01 * (n == 1) for n in range(4)) for name, values in STEADY.items()}
    record, audit, text = told(tmp_path, rising)
    trend = record["scatters"][0]["seen"]["trend"]
    assert trend["slope"] == pytest.approx(1.0, abs=0.01)
    assert trend["p"] < 0.01
    assert "the values of all rise, by about 1.0" in text
    assert audit["passes-drift"].severity == "warning"
    turned = {name: tuple(values[n] for n in (2, 0, 3, 1)) for name, values in rising.items()}
    other = results_in(folder_of(tmp_path / "turned", turned))
    assert other["scatters"][0]["seen"]["trend"] is None
    pair, same = (comparison_of(r, "gas", "corvane", "ostler") for r in (record, other))
    assert (pair["u"], pair["low"], pair["high"]) == pytest.approx((same["u"], same["low"], same["high"]))


def test_in_rounds_a_rise_stays_out_of_the_gaps_and_that_is_said(tmp_path: Path) -> None:
    rising = {
        name: tuple(values[0] + n + 0.01 * ((n + k) % 3) for n in range(4))
        for k, (name, values) in enumerate(STEADY.items())
    }
    _, _, text = told(tmp_path, rising, "title: Weigh it\norder: rounds\n", rounds=True)
    assert "From round to round the values of all rise" in text
    assert "it leaves them alone" in text


NOISY = {
    "corvane": (10.0, 10.1, 9.9), "ostler": (12.3, 12.2, 12.4), "brindle": (14.2, 14.3, 14.1),
    "tamsin": (16.0, 24.0, 32.0),
}  # fmt: skip


def test_one_that_scatters_further_is_a_warning_with_what_it_does_to_first_place(tmp_path: Path) -> None:
    """JUDGING 4: the guarantee holds if all scatter alike. By its own scatter corvane leads; all pooled, nobody does."""
    record, audit, text = told(tmp_path, NOISY)
    uneven = record["scatters"][0]["seen"]["uneven"]
    assert (uneven["contender"], uneven["sd"], uneven["others"]) == ("tamsin", pytest.approx(8.0), pytest.approx(0.1))
    assert record["first"][0]["winner"] is None
    assert uneven["winner_if_own"] is None  # tamsin's three passes by themselves leave its gap wide open
    found = audit["scatter-uneven"]
    assert (found.severity, found.place.line) == ("warning", 5)
    assert "all scatter alike" in found.says
    assert "nobody would be alone in first place either" in found.says
    assert "scatter: own" in found.do
    assert re.sub(r"\s", " ", found.says.split(": ", 1)[1]) in text


def test_where_scatter_is_its_own_nothing_was_assumed_that_passes_contradict(tmp_path: Path) -> None:
    folder = folder_of(tmp_path, NOISY, "title: Weigh it\nscatter: own\n")
    record, audit = results_in(folder), audited(folder)
    assert record["scatters"][0]["seen"]["uneven"] is None
    assert "scatter-uneven" not in audit


def test_a_pass_that_stands_apart_is_shown_and_kept(tmp_path: Path) -> None:
    passes = {
        "corvane": (10.0, 10.1, 9.9, 10.0, 10.1), "ostler": (12.3, 12.2, 12.4, 14.9, 12.3),
        "brindle": (14.2, 14.3, 14.1, 14.2, 14.3),
    }  # fmt: skip
    record, audit, text = told(tmp_path, passes)
    apart = record["scatters"][0]["seen"]["apart"]
    assert (apart["contender"], apart["at"], apart["value"]) == ("ostler", 4, 14.9)
    (ostler,) = [r for r in record["results"] if r["contender"] == "ostler"]
    assert (ostler["passes"], ostler["value"]) == (5, pytest.approx(12.82))
    assert audit["pass-apart"].severity == "note"
    assert re.search(r"Pass 4 of Ostler \(14\.9\d*\sg\) stands apart", text)


def test_a_stated_repeatability_that_passes_contradict_is_a_warning(tmp_path: Path) -> None:
    method = "title: Weigh it\nrepeatability: {gas: 0.02 g, passes: 30, products: 5}\n"
    record, audit, text = told(tmp_path, STEADY, method)
    odds = record["scatters"][0]["seen"]["at_odds"]
    assert (odds["declared"], odds["p"] < 0.01) == (pytest.approx(0.02), True)
    assert audit["repeatability-contradicted"].severity == "warning"
    assert "further than the 0.020" in text
    assert "Both count" in text
    agrees = "title: Weigh it\nrepeatability: {gas: 0.22 g, passes: 30, products: 5}\n"
    assert "repeatability-contradicted" not in audited(folder_of(tmp_path / "agrees", STEADY, agrees))


def test_two_passes_by_their_own_scatter_say_next_to_nothing_and_how_many_would(tmp_path: Path) -> None:
    """JUDGING 6: with one degree of freedom t is 12.7 (JCGM 100, table G.2)."""
    twice = {"corvane": (10.0, 10.6), "ostler": (12.3, 12.0)}
    record, _, text = told(tmp_path, twice, "title: Weigh it\nscatter: own\n")
    pair = comparison_of(record, "gas", "corvane", "ostler")
    assert (pair["high"] - pair["difference"]) / pair["u"] == pytest.approx(12.71, abs=0.005)
    assert "Two passes each say next to nothing of how far each scatters by itself" in text
    assert pair["settle"]["passes"] >= 3
    assert re.search(r"About \w+ passes each would settle", text)
    assert "next to nothing" not in told(tmp_path / "common", twice)[2]


def test_a_second_specimen_is_asked_for_where_specimens_stand_in_the_way(tmp_path: Path) -> None:
    """A scatter between specimens of 2 g against a gap of 2 g: no number of passes tells it."""
    method = "title: Weigh it\nbetween specimens: 2 g, a guess\n"
    record, _, text = told(tmp_path, STEADY, method)
    settle = comparison_of(record, "gas", "corvane", "ostler")["settle"]
    assert settle["passes"] is None
    # Cohen 1988: 17 of each tell one standard deviation by two groups; with three contenders' scatter a little fewer
    assert 15 <= settle["specimens"] <= 17 + 2
    assert "specimens of each might" in text


def test_another_calibration_is_asked_for_where_instruments_stand_in_the_way(tmp_path: Path) -> None:
    folder = write_campaign(
        tmp_path,
        YAML.format(more=""),
        readings=rows_of(STEADY),
        **{"instruments.yaml": "scale: {resolution: 0.001 g, accuracy: ±5 g, shared: nothing}\n"},
    )
    record = compile_folder(folder)
    settle = comparison_of(record, "gas", "corvane", "ostler")["settle"]
    assert (settle["passes"], settle["finer"], settle["specimens"], settle["calibration"]) == (None, False, None, True)
    page = next((folder / ".site").glob("*/tests/gas.html")).read_text(encoding="utf-8")
    assert "Calibrating them" in page


def test_the_promise_of_a_first_place_begins_with_if_all_scatter_alike(tmp_path: Path) -> None:
    folder = write_campaign(
        tmp_path, YAML.format(more=", method: weigh-it"), readings=rows_of(STEADY),
        **{"instruments.yaml": SCALE, "methods/weigh-it.1.yaml": "title: Weigh it\n"},
    )  # fmt: skip
    compile_folder(folder)
    page = next((folder / ".site").glob("*/method.html")).read_text(encoding="utf-8")
    assert page.count("If all scatter alike, a first place is given wrongly at most once in twenty") == 1
    test = next((folder / ".site").glob("*/tests/gas.html")).read_text(encoding="utf-8")
    assert re.sub(r"<[^>]+>", "", test).count("if all scatter alike, a repeat should agree") == 1


OUT = "exclude:\n  - {contender: corvane, pass: 3, because: the valve was left open, decided: during the test}\n"


def test_an_exclusion_says_which_comparisons_it_decides(tmp_path: Path) -> None:
    passes = {"corvane": (10.0, 10.1, 14.0), "ostler": (12.0, 12.1, 12.2), "brindle": (16.0, 16.1, 16.2)}
    record, _, text = told(tmp_path, passes, more=OUT)
    assert record["first"][0]["winner"] == "corvane"
    (turned,) = [p for p in record["first"][0]["pairs_without"] if p["second"] == "ostler"]
    assert (turned["first"], turned["decision"], turned["favours"]) == ("corvane", "too close to call", None)
    assert "With it, Corvane and Ostler couldn’t be told apart" in text


def test_with_its_only_pass_left_out_a_contender_is_counted_again_where_all_is_put_back(tmp_path: Path) -> None:
    passes = {"corvane": (8.0,), "ostler": (12.0, 12.1, 12.2), "brindle": (16.0, 16.1, 16.2)}
    record, _, text = told(tmp_path, passes, more=OUT.replace("pass: 3", "pass: 1"))
    first = record["first"][0]
    assert first["winner"] == "ostler"
    assert first["order_changes_without"] is True
    assert first["ranks_without"]["corvane"] == [1, 1]
    assert "Corvane would be in place 1" in text
