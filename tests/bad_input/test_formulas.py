"""Formulas fed with what they can't bear: each time a finding in plain words, or a value that says why it has no
uncertainty. Never NaN, never a silent zero, never a stack trace."""

from __future__ import annotations

import json
import re
from math import sqrt
from pathlib import Path
from typing import Any

import pytest

from tests.campaigns import comparison_of, compile_campaign, refusal, result_of

TWO = "title: T\nwho pays: Readers.\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\ntests: [it]\n"
SCALE = "scale: 0.1 g, accuracy ±0.2 g\n"


def compiled(
    place: Path, formula: str, rows: str, unit: str = "", columns: str = "a: 'a, g, scale', b: 'b, g, scale'"
) -> dict[str, Any]:
    told = compile_campaign(place, TWO, **files(formula, rows, unit, columns))
    assert "NaN" not in json.dumps(told)
    return told


def files(formula: str, rows: str, unit: str, columns: str = "a: 'a, g, scale', b: 'b, g, scale'") -> dict[str, str]:
    it = f"title: It\nreadings:\n  file: readings.csv\n  columns: {{{columns}}}\n"
    in_unit = f"unit: {unit}, " if unit else ""
    it += f"quantities:\n  x: {{formula: {formula}, {in_unit}better: lower}}\n"
    return {"readings": rows, "tests/it.yaml": it, "instruments.yaml": SCALE}


def test_a_divisor_that_may_be_nothing_leaves_the_value_and_no_uncertainty(tmp_path: Path) -> None:
    """0.1 g ± 0.2 g below the stroke: 1/x has no bound there (JCGM 100, 5.1.2 note: the formula must be all but straight)."""
    told = compiled(tmp_path, "a / b", "contender,pass,a,b\ncorvane,1,10.3,0.1\nostler,1,10.1,20.2\n")
    found = result_of(told, "x", "corvane")
    assert found["value"] == pytest.approx(103)
    assert (found["u"], found["low"], found["high"], found["budget"]) == (None, None, None, [])
    assert found["why_no_u"] == "what it is divided by may be nothing, as far as its own uncertainty tells"
    assert found["blocked"] == "what it is divided by may be nothing"
    assert found["rank"] is None
    assert result_of(told, "x", "ostler")["u"] > 0


def test_passes_that_agree_don_t_mend_a_divisor_that_may_be_nothing(tmp_path: Path) -> None:
    rows = "contender,pass,a,b\ncorvane,1,10.3,0.1\nostler,1,10.1,20.2\nostler,2,10.1,20.3\ncorvane,2,10.4,0.1\n"
    told = compiled(tmp_path, "a / b", rows)
    found = result_of(told, "x", "corvane")
    assert (found["u"], found["low"], found["high"]) == (None, None, None)
    pair = comparison_of(told, "x", "corvane", "ostler")
    assert (pair["decision"], pair["resolved"], pair["percent"]) == ("not enough to say", False, None)
    (first,) = told["first"]
    assert (first["winner"], first["unranked"]) == (None, ["corvane"])


def test_the_reason_stands_on_the_page(tmp_path: Path) -> None:
    compiled(tmp_path, "a / b", "contender,pass,a,b\ncorvane,1,10.3,0.1\nostler,1,10.1,20.2\n")
    page = (tmp_path / "stoves/.site/stoves/tests/it.html").read_text(encoding="utf-8")
    assert "what it is divided by may be nothing" in re.sub(r"\s+", " ", page)


def test_a_quantity_made_of_such_a_value_says_so_too(tmp_path: Path) -> None:
    made = files("a / b", "contender,pass,a,b\ncorvane,1,10.3,0.1\nostler,1,10.1,20.2\n", "")
    made["tests/it.yaml"] += "  y: {formula: 2 * x + 1, better: lower}\nheadline: y\n"
    found = result_of(compile_campaign(tmp_path, TWO, **made), "y", "corvane")
    assert found["value"] == pytest.approx(207)
    assert found["u"] is None
    assert "may be nothing" in found["why_no_u"]


@pytest.mark.parametrize(
    ("formula", "words"),
    [("log(a / b)", "its logarithm is taken of"), ("sqrt(a / b)", "its root is taken of"),
     ("(a / b) ^ 0.25", "its root is taken of"), ("(a / b) ^ (0 - 2)", "divided by")],
)  # fmt: skip
def test_a_logarithm_or_root_of_what_may_be_nothing_has_no_uncertainty(
    tmp_path: Path, formula: str, words: str
) -> None:
    told = compiled(tmp_path, f'"{formula}"', "contender,pass,a,b\ncorvane,1,0.1,10.2\nostler,1,10.1,5.3\n")
    found = result_of(told, "x", "corvane")
    assert found["value"] is not None
    assert found["u"] is None
    assert words in found["why_no_u"]
    assert result_of(told, "x", "ostler")["u"] > 0


@pytest.mark.parametrize(
    ("formula", "says"),
    [("log((a - b) / a)", "a logarithm of a value that isn't above zero"), ("sqrt((a - b) / a)", "a root of a negative value"),
     ("((a - b) / a) ^ 1.5", "a root of a negative value"), ("a / (b - b)", "a division by zero")],
)  # fmt: skip
def test_what_has_no_value_says_why(tmp_path: Path, formula: str, says: str) -> None:
    told = compiled(tmp_path, f'"{formula}"', "contender,pass,a,b\ncorvane,1,10.3,11.2\nostler,1,10.1,5.3\n")
    found = result_of(told, "x", "corvane")
    assert (found["value"], found["u"]) == (None, None)
    assert found["missing"] == says
    assert found["printed"] != ""


def test_zero_times_zero_passes_says_so_and_isn_t_nothing(tmp_path: Path) -> None:
    told = compiled(tmp_path, "a / a", "contender,pass,a,b\ncorvane,1,0.0,1.2\nostler,1,10.1,5.3\n")
    assert result_of(told, "x", "corvane")["missing"] == "a division by zero"


def test_an_uncertainty_larger_than_the_value_is_a_finding_and_a_sentence(tmp_path: Path) -> None:
    """0.1 g left between two weighings on a scale of 0.1 g: u = √2·0.1/√12 = 0.041 g, 95 % nearly ± 0.1 g."""
    told = compiled(tmp_path, "a - b", "contender,pass,a,b\ncorvane,1,10.3,10.25\nostler,1,20.1,10.3\n", "g")
    found = result_of(told, "x", "corvane")
    assert found["low"] < 0 < found["high"]
    (told_of,) = [f for f in told["findings"] if f["rule"] == "uncertainty-exceeds-value"]
    assert "Corvane Sol" in told_of["says"]
    assert told_of["do"]
    page = (tmp_path / "stoves/.site/stoves/tests/it.html").read_text(encoding="utf-8")
    assert "larger than the value: whether it is more or less than nothing isn’t known" in page


def test_a_temperature_near_its_mark_of_zero_is_known_as_well_as_any(tmp_path: Path) -> None:
    """0.2 °C ± 0.5 °C is no more doubtful than 20.2 °C ± 0.5 °C: nothing on that scale isn't nothing."""
    told = compile_campaign(
        tmp_path, TWO,
        **{
            **files("a", "contender,pass,a\ncorvane,1,0.2\nostler,1,20.1\n", "°C", "a: 'a, °C, probe'"),
            "instruments.yaml": "probe: 0.1 °C, accuracy ±0.5 °C\n",
        },
    )  # fmt: skip
    assert result_of(told, "x", "corvane")["low"] < 0
    assert [f for f in told["findings"] if f["rule"] == "uncertainty-exceeds-value"] == []


@pytest.mark.parametrize(
    ("formula", "limit"), [("log(a / b)", "above"), ("sqrt(a / b)", "above"), ("b / a", "below"), ("0 - log(a / b)", "below")]
)  # fmt: skip
def test_a_logarithm_of_a_bound_is_a_bound(tmp_path: Path, formula: str, limit: str) -> None:
    told = compiled(tmp_path, f'"{formula}"', "contender,pass,a,b\ncorvane,1,over 100.3,10.2\nostler,1,10.1,5.3\n")
    found = result_of(told, "x", "corvane")
    assert found["limit"] == limit
    assert found["u"] is None
    assert found["value"] is not None


def test_a_logarithm_of_a_bound_that_may_be_below_zero_is_no_value(tmp_path: Path) -> None:
    told = compiled(tmp_path, "log((a - b) / b)", "contender,pass,a,b\ncorvane,1,under 10.3,5.2\nostler,1,10.1,5.3\n")
    found = result_of(told, "x", "corvane")
    assert (found["limit"], found["value"]) == ("below", pytest.approx(-0.0194, abs=1e-4))  # ln(5.1/5.2)
    none = compiled(
        tmp_path / "none", "log((b - a) / b)", "contender,pass,a,b\ncorvane,1,over 10.3,5.2\nostler,1,10.1,15.3\n"
    )
    assert result_of(none, "x", "corvane")["missing"]


def test_one_reading_without_a_source_of_scatter_has_the_interval_of_the_instrument_and_says_so(tmp_path: Path) -> None:
    told = compiled(tmp_path, "a - b", "contender,pass,a,b\ncorvane,1,20.3,10.2\nostler,1,20.1,5.3\n", "g")
    found = result_of(told, "x", "corvane")
    assert found["covers"] == "instrument"
    assert found["u"] == pytest.approx(0.1 * sqrt(2 / 12), rel=1e-9)
    assert comparison_of(told, "x", "corvane", "ostler")["decision"] == "not enough to say"


@pytest.mark.parametrize(
    ("formula", "unit", "says"),
    [("a * b", "g", "g·g"), ("a / b", "g", ""), ("a + 1", "g", "plain number"), ("log(a)", "", "takes a plain number"),
     ("a - b", "s", "")],
)  # fmt: skip
def test_a_formula_whose_units_don_t_come_out_is_refused_at_its_place(
    tmp_path: Path, formula: str, unit: str, says: str
) -> None:
    rows = "contender,pass,a,b\ncorvane,1,20.3,10.2\nostler,1,20.1,5.3\n"
    found = refusal(tmp_path, TWO, **files(formula, rows, unit))
    assert {f.severity for f in found} == {"error"}
    (first, *_) = found
    assert first.place.file.endswith("tests/it.yaml")
    assert first.place.line == 6
    assert first.do


def test_a_claim_about_such_a_value_isn_t_tested_and_says_why(tmp_path: Path) -> None:
    yaml = TWO.replace(
        "{corvane: Corvane Sol,",
        "{corvane: {title: Corvane Sol, claims: [{says: at most 5, source: box, quantity: x, at most: 5}]},",
    )
    made = files("a / b", "contender,pass,a,b\ncorvane,1,10.3,0.1\nostler,1,10.1,20.2\n", "")
    told = compile_campaign(tmp_path, yaml, **made)
    (claim,) = told["claims"]
    assert (claim["outcome"], claim["probability"]) == ("not tested", None)
    page = (tmp_path / "stoves/.site/stoves/contenders/corvane.html").read_text(encoding="utf-8")
    assert "The result isn't used for it: what it is divided by may be nothing" in page.replace("’", "'").replace(
        "&#39;", "'"
    )


def test_a_repeatability_without_a_degree_of_freedom_is_refused_at_its_place(tmp_path: Path) -> None:
    """Degrees of freedom are passes less products, a mean each: three passes of three products leave none."""
    method = "title: M\nrepeatability: {x: 0.4 g, passes: 3, products: 3, source: last year}\nsteps: [Weigh.]\n"
    made = files("a - b", "contender,a,b\ncorvane,20.3,10.2\nostler,20.1,5.3\n", "g")
    made["tests/it.yaml"] += "method: weighing\n"
    (found,) = refusal(tmp_path, TWO, **made, **{"methods/weighing.1.yaml": method})
    assert (found.severity, found.place.file, found.place.line) == ("error", "methods/weighing.1.yaml", 2)
    assert "more passes than products" in found.do
