"""Passes of several specimens: each specimen is one value, wherever passes are joined."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from html import unescape
from pathlib import Path
from typing import Any

import pytest

from reportgen.build.run import audit_path
from tests.campaigns import comparison_of, compile_campaign, refusal, result_of, results_of, write_campaign


def text_of(page: str) -> str:
    return re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", "", page)))


LEVELS = """\
title: How loud?
contenders:
  harl: {title: Harl, specimens: [A, B]}
  tolk: {title: Tolk, specimens: [A, B]}
instruments:
  meter: {accuracy: unknown}
measure:
  noise: {kind: one reading, unit: dB, instrument: meter, over passes: energy mean, better: lower}
readings: readings.csv
"""


def test_levels_of_specimens_are_joined_by_energy_as_those_of_passes_are(tmp_path: Path) -> None:
    """ISO 3745, equation of the mean level; by hand: A gives 80, B 90 and 90; (10⁸ + 10⁹)/2 is 87.4 dB, and the plain
    mean of 80 and 90 would be 85, that of all energies 88.4."""
    table = "contender,specimen,pass,noise\nharl,A,1,80.0\nharl,B,1,90.0\nharl,B,2,90.0\ntolk,A,1,70.0\ntolk,B,1,71.0\n"
    told = results_of(tmp_path, LEVELS, readings=table)
    assert result_of(told, "noise", "harl")["value"] == pytest.approx(10 * math.log10((10**8 + 10**9) / 2), abs=1e-9)


SHARE = """\
title: How much of the gas is left?
contenders:
  harl: {title: Harl, specimens: [A, B]}
instruments:
  scale: {accuracy: unknown}
measure:
  gas: {kind: one reading, unit: g, instrument: scale, better: lower}
  share: {formula: gas / mean_of_passes(gas), unit: "%"}
  bent: {formula: gas * gas / mean_of_passes(gas), unit: g}
readings: readings.csv
"""
# A ran three times: its mean is 20, that of B 30, and theirs 25; all four readings together would give 22.5
UNEQUAL = "contender,specimen,pass,gas\nharl,A,1,19\nharl,A,2,20\nharl,A,3,21\nharl,B,1,30\n"


def test_a_mean_of_passes_counts_each_specimen_once_however_often_it_ran(tmp_path: Path) -> None:
    told = results_of(tmp_path, SHARE, readings=UNEQUAL)
    passes = result_of(told, "share", "harl")["by_pass"]
    assert [p["value"] for p in passes] == pytest.approx([76, 80, 84, 120])


def test_what_is_drawn_is_what_was_worked_out(tmp_path: Path) -> None:
    """A formula that bends is worked out anew on draws; with passes that weigh unevenly the middle stays where it was."""
    told = results_of(tmp_path, SHARE, readings=UNEQUAL)
    bent = result_of(told, "bent", "harl")
    assert bent["value"] == pytest.approx(((19**2 + 20**2 + 21**2) / 3 + 30**2) / 2 / 25)


def test_a_quantity_taken_as_a_whole_has_the_scatter_of_its_specimens(tmp_path: Path) -> None:
    """By hand: specimens give 20 and 30, so 25 ± 5 with one degree of freedom, not the 22.5 ± 2.5 of four passes."""
    yaml = """\
title: What a fill costs
contenders:
  harl: {title: Harl, specimens: [A, B]}
instruments:
  scale: {resolution: 0.001 g, accuracy: unknown}
constants:
  price: {value: 2 EUR/g, source: the shelf}
tests: [weighing, paying]
"""
    told = results_of(
        tmp_path, yaml, **{
            "tests/weighing.yaml": "title: Weighing\nquantities:\n  gas: {kind: one reading, unit: g, instrument: scale, better: lower}\nreadings: readings/weighing.csv\n",
            "tests/paying.yaml": "title: Paying\nquantities:\n  fills: {kind: one reading, unit: points}\n  cost: {formula: gas * price * fills, unit: EUR*points, better: lower}\nheadline: cost\nreadings: readings/paying.csv\n",
            "readings/weighing.csv": UNEQUAL, "readings/paying.csv": "contender,specimen,pass,fills\nharl,A,1,0.9\nharl,A,2,1.1\n",
        },
    )  # fmt: skip
    cost = result_of(told, "cost", "harl")
    assert cost["value"] == pytest.approx(50.0)
    (scatter,) = [line for line in cost["budget"] if (line["sort"], line["of"]) == ("scatter", "gas")]
    assert (abs(scatter["size"]), scatter["degrees"]) == (pytest.approx(10.0), 1)


APART = """\
title: Which burns less?
contenders: {harl: Harl, tolk: Tolk}
instruments:
  scale: {resolution: 0.001 g, accuracy: unknown}
measure:
  gas: {kind: one reading, unit: g, instrument: scale, better: lower, method: by-hand}
readings: readings.csv
"""
METHOD = "title: By hand\nsteps: [Weigh it.]\nscatter: SCATTER\nbetween specimens: AMOUNT, a guess\n"
ONE_EACH = "contender,pass,gas\nharl,1,9.9\nharl,2,10.1\ntolk,1,20.0\ntolk,2,20.2\n"
S2 = 0.02  # of one pass: each contender's two differ by 0.2, and (0.2)²/2 is the variance


def declared(
    tmp_path: Path, amount: str = "3 g", scatter: str = "common", table: str = ONE_EACH,
    made: Callable[..., dict[str, Any]] = results_of,
) -> dict[str, Any]:  # fmt: skip
    method = METHOD.replace("AMOUNT", amount).replace("SCATTER", scatter)
    yaml = APART.replace(
        "harl: Harl, tolk: Tolk", "harl: {title: Harl, specimens: [A, B]}, tolk: {title: Tolk, specimens: [A, B]}"
    )
    return made(tmp_path, yaml if "specimen" in table else APART, readings=table, **{"methods/by-hand.1.yaml": method})


def test_a_declared_scatter_between_specimens_counts_once_a_result_and_twice_a_difference(tmp_path: Path) -> None:
    """Variances of independent causes add (JCGM 100, 5.1.2): s²/2 + σ² for one result, twice that for a difference."""
    told = declared(tmp_path)
    found = result_of(told, "gas", "harl")
    assert found["u"] == pytest.approx(math.sqrt(S2 / 2 + 9), rel=1e-6)
    assert comparison_of(told, "gas", "harl", "tolk")["u"] == pytest.approx(math.sqrt(S2 + 18), rel=1e-6)
    (line,) = [b for b in found["budget"] if b["of"] == "specimens"]
    assert (line["size"], line["sort"]) == (pytest.approx(3.0), "scatter")


def test_a_lead_within_what_specimens_may_differ_decides_nothing_about_products(tmp_path: Path) -> None:
    """10 g apart: far more than these two scatter, and less than 1.96·√2·σ with σ 4 g; by 3 g it still stands."""
    wide = comparison_of(declared(tmp_path / "wide", "4 g"), "gas", "harl", "tolk")
    assert (wide["decision"], wide["resolved"]) == ("too close to call", False)
    narrow = comparison_of(declared(tmp_path / "narrow"), "gas", "harl", "tolk")
    assert (narrow["decision"], narrow["resolved"]) == ("better", True)


def test_whether_these_two_differed_is_asked_without_it(tmp_path: Path) -> None:
    assert comparison_of(declared(tmp_path, "40 g"), "gas", "harl", "tolk")["differed"] is True


def test_specimens_that_were_tested_show_their_own_scatter(tmp_path: Path) -> None:
    """By hand: 9 and 11, 19 and 21, so s² 2 with two degrees of freedom; u² is 2/2 and nothing more."""
    table = "contender,specimen,pass,gas\nharl,A,1,9\nharl,B,1,11\ntolk,A,1,19\ntolk,B,1,21\n"
    assert result_of(declared(tmp_path, table=table), "gas", "harl")["u"] == pytest.approx(1.0, rel=1e-3)


def test_it_goes_with_the_value_where_the_scatter_is_relative(tmp_path: Path) -> None:
    told = declared(tmp_path, "30 %", "relative")
    sizes = [
        b["size"] for who in ("harl", "tolk") for b in result_of(told, "gas", who)["budget"] if b["of"] == "specimens"
    ]
    assert sizes == pytest.approx([3.0, 6.03], rel=1e-6)


def test_a_formula_that_bends_is_drawn_with_it(tmp_path: Path) -> None:
    """A quotient of a divisor known to a third: its draws are wide, and 30 more of σ make them wider."""
    yaml = APART.replace(
        "measure:", "constants:\n  water: {value: 1 kg, u: 0.2 kg, source: a guess}\nmeasure:"
    ).replace(
        "gas: {kind: one reading, unit: g, instrument: scale, better: lower, method: by-hand}",
        "gas: {kind: one reading, unit: g, instrument: scale}\n"
        "  per water: {formula: gas / water, unit: g/kg, better: lower, method: by-hand}",
    )
    widths = []
    for amount in ("0.0001 g/kg", "5 g/kg"):
        method = METHOD.replace("AMOUNT", amount).replace("SCATTER", "common")
        told = results_of(tmp_path / amount[:3], yaml, readings=ONE_EACH, **{"methods/by-hand.1.yaml": method})
        found = result_of(told, "per-water", "tolk")
        assert found["draws"]["used"]
        widths.append(found["high"] - found["low"])
    assert widths[1] > math.hypot(widths[0], 0.9 * 2 * 1.96 * 5)


def test_the_pages_say_so(tmp_path: Path) -> None:
    declared(tmp_path, made=compile_campaign)
    site = tmp_path / "stoves" / ".site"
    method = (site / "methods" / "by-hand.1.html").read_text(encoding="utf-8")
    assert "One unit of a product differs from another by about 3 g" in text_of(method)
    pages = [page.read_text(encoding="utf-8") for page in site.rglob("*.html")]
    assert any("how far one unit of a product may differ from another" in text_of(page).lower() for page in pages)
    assert any("how far another of its kind may differ is declared, and counted" in text_of(page) for page in pages)


@pytest.mark.parametrize(("amount", "told"), [("3 g", 0), ("", 1)])
def test_a_text_may_speak_of_the_product_where_specimens_are_accounted_for(
    tmp_path: Path, amount: str, told: int
) -> None:
    method = METHOD.replace(
        "between specimens: AMOUNT, a guess\n", f"between specimens: {amount}, a guess\n" if amount else ""
    )
    prose = "# Conclusions\n\nEvery Harl burns less gas.\n"
    yaml = APART
    files = {"methods/by-hand.1.yaml": method.replace("SCATTER", "common"), "conclusions.md": prose}
    folder = write_campaign(tmp_path, yaml, readings=ONE_EACH, **files)
    findings = audit_path(folder)
    assert len([f for f in findings if f.rule == "wide-prose"]) == told


@pytest.mark.parametrize(
    ("key", "amount", "says"),
    [
        ("between specimens", "3 min", "is in the unit of nothing that is measured by by-hand"),
        ("between sessions", "3 min", "is in the unit of nothing that is measured by by-hand"),
        ("between specimens", "3 flarn", "flarn"),
    ],
)
def test_a_scatter_in_the_unit_of_nothing_measured_is_told(tmp_path: Path, key: str, amount: str, says: str) -> None:
    method = f"title: By hand\nsteps: [Weigh it.]\n{key}: {amount}, a guess\n"
    told = refusal(tmp_path, APART, readings=ONE_EACH, **{"methods/by-hand.1.yaml": method})
    assert [f for f in told if says in f.says and f.place.file == "methods/by-hand.1.yaml"]


MIXED = """\
title: Which is quicker?
contenders:
  harl: {title: Harl, specimens: [A, B]}
  tolk: Tolk
instruments:
  watch: {resolution: 0.1 s, accuracy: unknown}
measure:
  boil: {kind: timed, unit: s, instrument: watch, better: lower}
readings: readings.csv
"""
# specimens of harl give 60.4 and 59.9667, so s is 0.31 s with one degree; tolk is one specimen, run twice
MIXED_ROWS = "harl,A,1,60.1\nharl,A,2,60.7\nharl,B,1,59.8\nharl,B,2,60.0\nharl,B,3,60.1\ntolk,,1,60.2\ntolk,,2,60.6\n"


def test_a_page_speaks_of_specimens_wherever_they_are_what_scatters(tmp_path: Path) -> None:
    compile_campaign(tmp_path, MIXED, readings="contender,specimen,pass,boil\n" + MIXED_ROWS)
    (page,) = (tmp_path / "stoves" / ".site").glob("*/tests/boil.html")
    text = text_of(page.read_text(encoding="utf-8")).replace("\u00a0", " ")
    assert text.count("of the uncertainty that is known is the scatter between specimens") == 2, (
        "the watch isn’t vouched for"
    )
    assert "in place of one specimen would halve it" in text
    assert "in place of one pass" not in text
    assert "specimens of each would settle" in text
    assert "passes each would settle" not in text


@pytest.mark.parametrize(
    ("third", "said"), [("", "1 degree of freedom: t = 12.7"), ("harl,C,1,60.3\n", "2 degrees of freedom: t = 4.3")]
)
def test_so_few_specimens_are_noted(third: str, said: str, tmp_path: Path) -> None:
    """Student's t for 1 and 2 degrees of freedom, 95 %: 12.71 and 4.30 (JCGM 100, table G.2)."""
    yaml = MIXED.replace("[A, B]", "[A, B, C]" if third else "[A, B]")
    told = results_of(tmp_path, yaml, readings="contender,specimen,pass,boil\n" + MIXED_ROWS + third)
    (found,) = [f for f in told["findings"] if f["rule"] == "few-specimens"]
    assert found["severity"] == "note"
    assert found["says"] == f"boil: how far specimens differ is known from those of Harl alone ({said})."


def test_specimens_enough_and_passes_of_one_are_not_noted(tmp_path: Path) -> None:
    yaml = MIXED.replace("[A, B]", "[A, B, C, D]")
    more = MIXED_ROWS + "harl,C,1,60.3\nharl,D,1,60.2\n"
    one = "".join(row + "\n" for row in MIXED_ROWS.splitlines() if ",B," not in row)
    for where, rows in (("more", more), ("one", one)):
        told = results_of(tmp_path / where, yaml, readings="contender,specimen,pass,boil\n" + rows)
        assert not [f for f in told["findings"] if f["rule"] == "few-specimens"]


def test_the_mean_of_specimens_can_be_worked_out_again_from_what_is_printed(tmp_path: Path) -> None:
    compile_campaign(tmp_path, MIXED, readings="contender,specimen,pass,boil\n" + MIXED_ROWS)
    (page,) = (tmp_path / "stoves" / ".site").glob("*/tests/boil.html")
    text = text_of(page.read_text(encoding="utf-8")).replace("\u00a0", " ")
    of_one = re.search(r"Mean of the passes of specimen B: \(([^)]*)\) ÷ 3 = (\d+\.\d+)", text)
    of_both = re.search(r"Mean of two specimens, each the mean of its passes: \(([^)]*)\) ÷ 2 = (\d+\.\d+)", text)
    assert of_one
    assert of_both
    for found, n in ((of_one, 3), (of_both, 2)):
        terms = [float(x) for x in found[1].split("+")]
        assert sum(terms) / n == pytest.approx(float(found[2]), abs=0.6 * 10 ** -len(found[2].partition(".")[2]))
    assert of_one[2] in of_both[1]
