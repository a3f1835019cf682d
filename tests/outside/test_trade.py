"""Units by published exact factors, and facts of the trade, put through compiled campaigns."""

from __future__ import annotations

import math
import re
from pathlib import Path

import pytest

from tests.campaigns import compile_campaign, result_of, results_of

TWO = "title: T\ncontenders: {a: The first one, b: The second one}\n"

# (measured as, reported in, factor): NIST SP 811 (2008), appendix B.8 and B.9; IEEE/ASTM SI 10. Exact where bold there.
FACTORS = {
    "lbf": ("N", 4.4482216152605, 1e-12),
    "kgf": ("N", 9.80665, 1e-12),
    "lb": ("kg", 0.45359237, 1e-12),
    "oz": ("g", 28.349523125, 1e-12),
    "fl oz": ("mL", 29.57353, 1e-7),
    "in": ("mm", 25.4, 1e-12),
    "ft": ("m", 0.3048, 1e-12),
    "mph": ("km/h", 1.609344, 1e-12),
    "psi": ("kPa", 6.894757, 1e-7),
    "inHg": ("kPa", 3.386389, 1e-6),
    "hp": ("W", 745.6999, 1e-7),
    "BTU": ("kJ", 1.05505585262, 1e-9),
    "kWh": ("MJ", 3.6, 1e-12),
    "cal": ("J", 4.184, 1e-12),
    "gal": ("L", 3.785412, 1e-7),
    "mi": ("km", 1.609344, 1e-12),
}


def test_units_convert_by_the_published_factors(tmp_path: Path) -> None:
    """One campaign, a measure a unit: what is read as 1 comes out as the factor."""
    measures = "".join(f"  in {unit}: one reading, {to}, lower\n" for unit, (to, _, _) in FACTORS.items())
    rows = "".join(f"a,in {unit},1,{unit}\nb,in {unit},2,{unit}\n" for unit in FACTORS)
    told = results_of(
        tmp_path, TWO + f"measure:\n{measures}readings: readings.csv\n", readings="contender,what,value,unit\n" + rows
    )
    for unit, (_, factor, precision) in FACTORS.items():
        found = result_of(told, "in-" + unit.lower().replace(" ", "-"), "a")
        assert found["value"] == pytest.approx(factor, rel=precision), unit


def test_a_difference_of_90_fahrenheit_degrees_is_50_kelvin(tmp_path: Path) -> None:
    """1 °F step = 5/9 K (NIST SP 811, B.8); a point on the scale converts with its zero: 212 °F is 100 °C."""
    told = results_of(
        tmp_path,
        TWO
        + """\
tests: [warm]
""",
        readings="contender,hot,cold\na,212,122\nb,200,122\n",
        **{
            "tests/warm.yaml": """\
                title: Warm
                readings:
                  file: readings.csv
                  columns:
                    hot: {column: hot, unit: °F}
                    cold: {column: cold, unit: °F}
                quantities:
                  rise: {formula: hot - cold, unit: K, better: lower}
                  top: {formula: hot, unit: °C}
                headline: rise
                """
        },
    )
    assert result_of(told, "rise", "a")["value"] == pytest.approx(50, abs=1e-9)
    assert result_of(told, "top", "a")["value"] == pytest.approx(100, abs=1e-9)


@pytest.mark.parametrize(("shown", "pounds"), [("16.5", 36), ("17.5", 39), ("23.5", 52)])
def test_a_pull_scale_that_shows_kilograms_reads_kilograms_force(tmp_path: Path, shown: str, pounds: int) -> None:
    """Just over 36, about 39 and about 52 lbf: common practice, no source."""
    told = results_of(
        tmp_path,
        TWO + "measure: {pull: 'peak, lbf, higher'}\nreadings: readings.csv\n",
        readings=f"contender,what,value,unit\na,pull,{shown},kgf\nb,pull,10.0,kgf\n",
    )
    assert round(result_of(told, "pull", "a")["value"]) == pounds


def test_178_grams_of_oil_are_just_over_six_ounces(tmp_path: Path) -> None:
    """Common practice, no source."""
    told = results_of(
        tmp_path,
        TWO + "measure: {oil: 'one reading, oz, lower'}\nreadings: readings.csv\n",
        readings="contender,what,value,unit\na,oil,178,g\nb,oil,180,g\n",
    )
    assert 6 < result_of(told, "oil", "a")["value"] < 6.5


def test_three_timed_passes_average_as_testers_say(tmp_path: Path) -> None:
    """4.15, 3.95, 3.95 s average 4.02 s; 3.39, 3.44, 3.59 s average 3.47 s: common practice, no source."""
    told = results_of(
        tmp_path,
        TWO + "measure: {pass time: 'timed, s, lower'}\nreadings: readings.csv\n",
        readings="contender,pass,pass time\na,1,4.15\nb,1,3.39\nb,2,3.44\na,2,3.95\na,3,3.95\nb,3,3.59\n",
    )
    assert round(result_of(told, "pass-time", "a")["value"], 2) == 4.02
    assert round(result_of(told, "pass-time", "b")["value"], 2) == 3.47


def test_a_jar_weighed_empty_and_full_gives_what_is_in_it(tmp_path: Path) -> None:
    """An empty jar of 430 g that weighs 704 g with its sample holds 274 g: common practice, no source."""
    told = results_of(
        tmp_path,
        TWO + "tests: [sample]\n",
        readings="contender,empty,full\na,430,704\nb,430,690\n",
        **{
            "tests/sample.yaml": """\
                title: Sample
                readings:
                  file: readings.csv
                  columns:
                    empty: {column: empty, unit: g}
                    full: {column: full, unit: g}
                quantities:
                  held: {formula: full - empty, unit: g, better: higher}
                """
        },
    )
    assert result_of(told, "held", "a")["value"] == 274


def test_levels_of_two_positions_join_by_their_energy(tmp_path: Path) -> None:
    """90 dB and 80 dB together are 90.41 dB and two equal sources add 3.01 dB (ISO 1683, ISO 3745): mean 87.40 dB."""
    told = results_of(
        tmp_path,
        TWO
        + "measure: {noise: {kind: level, unit: dB, better: lower, over parts: energy mean}}\nreadings: readings.csv\n",
        readings="contender,pass,part,noise\na,1,left,90.0\na,1,right,80.0\nb,1,left,70.0\nb,1,right,70.0\n",
    )
    assert result_of(told, "noise", "a")["value"] == pytest.approx(90.41 - 3.01, abs=0.006)
    assert result_of(told, "noise", "b")["value"] == pytest.approx(70.0, abs=1e-9)


def test_a_value_is_printed_to_the_place_of_its_uncertainty(tmp_path: Path) -> None:
    """JCGM 100, 7.2.6: y = 10.057 62 Ω with u_c(y) = 27 mΩ is rounded to 10.058 Ω."""
    rows = "contender,pass,r\na,1,10.03062\nb,1,10.03062\nb,2,10.08462\na,2,10.08462\n"
    told = results_of(
        tmp_path, TWO + "measure: {r: 'one reading, ohm, lower'}\nreadings: readings.csv\n", readings=rows
    )
    found = result_of(told, "r", "a")
    assert found["u"] == pytest.approx(0.027, abs=1e-9)
    assert found["printed"].startswith("10.058 ")


def test_a_result_is_shown_in_both_unit_families_each_rounded_for_itself(tmp_path: Path) -> None:
    """1 oz = 28.349 523 125 g (NIST SP 811, B.8); a rise of 45 °C is one of 81 °F, not 113 °F."""
    told = compile_campaign(
        tmp_path,
        TWO + "show: [oz, °F, lbf]\nmeasure:\n  oil: one reading, g, lower\ntests: [warm]\nreadings: readings.csv\n",
        readings="contender,pass,oil\na,1,28.3\nb,1,56.7\nb,2,56.9\na,2,28.5\n",
        **{
            "warm.csv": "contender,hot,cold\na,65,20\nb,70,20\n",
            "tests/warm.yaml": "title: Warm\nreadings: {file: warm.csv, columns: {hot: {column: hot, unit: °C}, cold: {column: cold, unit: °C}}}\nquantities:\n  rise: {formula: hot - cold, unit: °C, better: lower}\n",
        },
    )
    (ounces,) = result_of(told, "oil", "a")["also"]
    assert ounces["unit"] == "oz"
    assert ounces["value"] == pytest.approx(28.4 / 28.349523125, rel=1e-9)
    assert ounces["u"] == pytest.approx(result_of(told, "oil", "a")["u"] / 28.349523125, rel=1e-9)
    (rise,) = result_of(told, "rise", "a")["also"]
    assert rise["value"] == pytest.approx(81, abs=1e-9)
    page = (tmp_path / "stoves/.site/stoves/tests/oil.html").read_text(encoding="utf-8")
    text = " ".join(re.sub(r"<[^>]+>", "", page).split())
    for who in ("a", "b"):  # two significant digits of u in each unit for itself (JCGM 100, 7.2.6)
        found = result_of(told, "oil", who)
        for one in (found, *found["also"]):
            places = 1 - math.floor(math.log10(float(f"{one['u']:.1e}")))
            assert f"{one['value']:.{places}f}" in text, one["unit"]
