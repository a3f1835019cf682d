"""Sums, means and backgrounds of levels, through compiled campaigns."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tests.campaigns import compile_campaign, refusal, result_of, results_of

TWO = "title: T\nwho pays: Readers.\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\n"
METER = {"instruments.yaml": "meter: 0.1 dB, from 30 dB to 130 dB, accuracy ±1.5 dB\n"}


def formula_campaign(place: Path, formula: str, rows: str, unit: str = "dB") -> dict[str, Any]:
    it = "title: It\nreadings:\n  file: readings.csv\n  columns: {a: 'a, dB, meter', b: 'b, dB, meter'}\n"
    it += f"quantities:\n  x: {{formula: '{formula}', unit: {unit}, better: lower}}\n"
    return results_of(place, TWO + "tests: [it]\n", readings=rows, **{"tests/it.yaml": it, **METER})


def test_two_sources_together_by_their_energies(tmp_path: Path) -> None:
    """90 dB and 80 dB together are 90.41 dB, two equal sources add 3.01 dB (ISO 1683, ISO 3745)."""
    told = formula_campaign(tmp_path, "energy_sum(a, b)", "contender,a,b\ncorvane,90.0,80.0\nostler,70.3,70.3\n")
    assert f"{result_of(told, 'x', 'corvane')['value']:.2f}" == "90.41"
    assert f"{result_of(told, 'x', 'ostler')['value'] - 70.3:.2f}" == "3.01"


def test_the_meter_s_offset_stays_whole_in_a_sum_and_steps_count_by_energy(tmp_path: Path) -> None:
    """∂L/∂Lᵢ is each source's share of the energy: 10/11 and 1/11 for 90 dB and 80 dB (JCGM 100, 5.1.3)."""
    told = formula_campaign(tmp_path, "energy_sum(a, b)", "contender,a,b\ncorvane,90.1,80.1\nostler,70.3,70.3\n")
    sizes = {line["sort"]: line["size"] for line in result_of(told, "x", "corvane")["budget"]}
    assert sizes["offset"] == pytest.approx(1.5 / math.sqrt(3))
    assert sizes["step"] == pytest.approx(0.1 / math.sqrt(12) * math.hypot(10 / 11, 1 / 11))


def test_an_energy_sum_over_parts_is_of_all_of_them(tmp_path: Path) -> None:
    """Ten equal sources are 10 dB more than one (10·lg 10)."""
    rows = "".join(
        f"{who},{part},{level}\n" for who, level in (("corvane", 60.0), ("ostler", 65.5)) for part in range(10)
    )
    it = "title: It\nreadings: {file: readings.csv, columns: {a: 'a, dB, meter'}}\n"
    it += "quantities:\n  x: {formula: energy_sum(a), unit: dB, better: lower, over parts: mean}\n"
    told = results_of(
        tmp_path, TWO + "tests: [it]\n", readings="contender,part,a\n" + rows, **{"tests/it.yaml": it, **METER}
    )
    assert result_of(told, "x", "corvane")["value"] == pytest.approx(70.0)
    assert result_of(told, "x", "ostler")["value"] == pytest.approx(75.5)


NOISE = TWO + "measure: {noise: 'level over background, dB, lower, meter'}\nreadings: readings.csv\n"


def over_background(place: Path, rows: str, made: Callable[..., dict[str, Any]] = results_of) -> dict[str, Any]:
    return made(place, NOISE, readings="contender,noise,noise background\n" + rows, **METER)


def test_a_background_ten_decibels_down_takes_half_a_decibel_off(tmp_path: Path) -> None:
    """K₁ = −10·lg(1 − 10^(−0.1·ΔL)): 0.46 dB at 10 dB, 1.26 dB at 6 dB (ISO 3744:2010, 8.2.3, from memory)."""
    told = over_background(tmp_path, "corvane,70.1,60.1\nostler,66.3,60.3\n")
    one, other = result_of(told, "noise", "corvane"), result_of(told, "noise", "ostler")
    assert (f"{70.1 - one['value']:.2f}", one["limit"]) == ("0.46", None)
    assert (f"{66.3 - other['value']:.2f}", other["limit"]) == ("1.26", None)


def test_a_background_over_fifteen_decibels_down_takes_nothing_off(tmp_path: Path) -> None:
    """ISO 3744:2010, 8.2.3 (from memory): no correction above 15 dB."""
    told = over_background(tmp_path, "corvane,70.1,55.0\nostler,70.1,under 30\n")
    for who in ("corvane", "ostler"):
        found = result_of(told, "noise", who)
        assert (found["value"], found["limit"]) == (70.1, None)


def test_a_background_within_six_decibels_leaves_an_upper_bound_and_says_so(tmp_path: Path) -> None:
    """ISO 3744:2010, 8.2.3 (from memory): at most 1.3 dB are taken off, and the result is an upper bound."""
    told = over_background(tmp_path, "corvane,70.1,66.0\nostler,75.3,60.3\n", compile_campaign)
    found = result_of(told, "noise", "corvane")
    assert (found["value"], found["limit"]) == (pytest.approx(68.8), "below")
    assert " ".join(found["printed"].split()) == "less than 68.8 dB"
    (caveat,) = [c for c in told["caveat_list"] if c["id"].startswith("background/")]
    assert caveat["contender"] == "corvane"
    assert "upper bound (ISO 3744)" in caveat["says"]
    page = (tmp_path / "stoves/.site/stoves/tests/noise.html").read_text(encoding="utf-8")
    assert "upper bound (ISO 3744)" in re.sub(r"\s+", " ", page)


def test_a_background_louder_than_what_it_is_a_part_of_is_told_as_such(tmp_path: Path) -> None:
    # ISO 3744:2010, 8.2.3 (from memory): within 6 dB 1.3 dB is the most that is taken off, and the result an upper bound
    told = over_background(tmp_path, "corvane,60.1,64.0\nostler,70.3,66.3\n")
    assert [result_of(told, "noise", who)["high"] for who in ("corvane", "ostler")] == pytest.approx([58.8, 69.0])
    says = {c["says"].split(" some")[0]: c["contender"] for c in told["caveat_list"] if "background" in c["id"]}
    assert says == {"The background was louder than": "corvane", "The background was less than 6 dB below": "ostler"}


def test_a_bound_under_a_background_that_was_louder_wins_nothing_and_is_warned_of_at_its_cell(tmp_path: Path) -> None:
    told = over_background(tmp_path, "corvane,41.1,41.5\nostler,70.3,50.3\n")
    assert result_of(told, "noise", "corvane")["rank"] is None
    assert [f["winner"] for f in told["first"]] == [None]
    (found,) = [f for f in told["findings"] if f["rule"] == "background-louder"]
    assert (found["severity"], found["line"], found["contender"]) == ("warning", 2, "corvane")


def test_the_meter_s_offset_stays_whole_and_steps_grow_where_the_background_is_near(tmp_path: Path) -> None:
    """∂L′/∂L = 1/(1 − 10^(−0.1·ΔL)) = 10/9 and ∂L′/∂B = −1/9 at 10 dB: they add up to 1 (JCGM 100, 5.1.3)."""
    told = over_background(tmp_path, "corvane,70.1,60.1\nostler,66.3,60.3\n")
    sizes = {line["sort"]: line["size"] for line in result_of(told, "noise", "corvane")["budget"]}
    assert sizes["offset"] == pytest.approx(1.5 / math.sqrt(3))
    assert sizes["step"] == pytest.approx(0.1 / math.sqrt(12) * math.hypot(10 / 9, 1 / 9))


def test_levels_added_with_a_plus_are_refused_with_what_to_write(tmp_path: Path) -> None:
    it = "title: It\nreadings:\n  file: readings.csv\n  columns: {a: 'a, dB', b: 'b, dB'}\n"
    it += "quantities:\n  x: {formula: a + b, unit: dB, better: lower}\n"
    (found,) = refusal(
        tmp_path,
        TWO + "tests: [it]\n",
        readings="contender,a,b\ncorvane,90,80\nostler,70,70\n",
        **{"tests/it.yaml": it},
    )
    assert "energy_sum(a, b)" in found.do


def test_parts_may_be_joined_by_the_sum_of_their_energies(tmp_path: Path) -> None:
    """Two machines, read one at a time: 90 dB and 80 dB together are 90.41 dB (ISO 1683, ISO 3745)."""
    told = results_of(
        tmp_path,
        TWO
        + "measure: {noise: {kind: level, unit: dB, better: lower, over parts: energy sum}}\nreadings: readings.csv\n",
        readings="contender,pass,part,noise\ncorvane,1,fan,90.0\ncorvane,1,pump,80.0\nostler,1,fan,70.3\nostler,1,pump,70.3\n",
    )
    assert f"{result_of(told, 'noise', 'corvane')['value']:.2f}" == "90.41"
    assert f"{result_of(told, 'noise', 'ostler')['value']:.2f}" == "73.31"
