"""Formulas whose numbers run off, vanish or cancel: said in words, never as infinity, nothing or a wrong reason."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

from tests.campaigns import compile_campaign, result_of

HEAD = "title: T\ncontenders: {one: One, other: Other}\nreadings: readings.csv\nmeasure:\n"
READINGS = "contender,pass,a,b\none,1,10.1,0.1\nother,1,12.1,0.3\none,2,10.2,0.2\nother,2,11.7,0.2\n"


def compiled(place: Path, formula: str, unit: str = "", readings: str = READINGS) -> dict[str, Any]:
    of = f"unit: {unit}, " if unit else ""
    yaml = f"{HEAD}  y: {{formula: '{formula}', {of}better: lower, columns: {{a: 'a, g', b: 'b, g'}}}}\n"
    return compile_campaign(place, yaml, readings=readings)


def pages_of(place: Path) -> str:
    return " ".join(p.read_text(encoding="utf-8") for p in (place / "stoves/.site").glob("*/tests/*.html"))


def test_draws_that_run_off_to_infinity_leave_no_uncertainty(tmp_path: Path) -> None:
    # exp(100 ± 29) and more: draws are beyond what a number of 64 bits holds (IEEE 754: 1.8e308)
    told = compiled(tmp_path, "exp(10000 * b / a)")
    found = result_of(told, "y", "one")
    assert found["u"] is None or found["u"] < 1e75
    assert not re.search(r"\b(?:inf|nan)\b", pages_of(tmp_path), re.IGNORECASE)


@pytest.mark.parametrize("formula", ["a - a", "b / b - 1", "(a / b) ^ 0"])
def test_a_formula_in_which_everything_cancels_blames_no_instrument(formula: str, tmp_path: Path) -> None:
    told = compiled(tmp_path, formula, "g" if formula == "a - a" else "")
    found = result_of(told, "y", "one")
    assert found["u"] is None
    assert found["why_no_u"] == "everything uncertain cancels out of its formula"


@pytest.mark.parametrize("formula", ["a * 1e-200", "a * 1e-308 * 1e-308", "a * exp(-1000)", "a * (b / a) ^ 100"])
def test_what_is_too_small_to_hold_never_becomes_nothing(formula: str, tmp_path: Path) -> None:
    # the square of 1e-200, which its uncertainty asks for, is nothing in 64 bits (IEEE 754: 4.9e-324)
    found = result_of(compiled(tmp_path, formula, "g"), "y", "one")
    assert found["value"] is None
    assert found["missing"] == "a number too small to hold"
