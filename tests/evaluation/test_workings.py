"""Formulas met with readings: what is worked out for a pass, a part, another quantity, a constant."""

from __future__ import annotations

from pathlib import Path

import pytest

from reportgen.finding import Refused
from tests.evaluation.bench import evaluated, result, value

TWO = "contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\n"


def test_an_offset_cancels_between_before_and_after(tmp_path: Path) -> None:
    """JCGM 100, 5.2.2: errors that two inputs share enter a difference with opposite signs."""
    found = evaluated(
        tmp_path,
        "title: T\n" + TWO + "measure: {gas: 'weighed before and after, g, lower, scale'}\nreadings: readings.csv\n",
        readings="contender,pass,gas before,gas after\ncorvane,1,20.0,10.0\ncorvane,2,20.2,10.1\nostler,1,30.0,15.0\nostler,2,30.1,15.4\n",
        **{"instruments.yaml": "scale: 0.1 g, accuracy ±5 g\n"},
    )
    estimate = result(found, "gas", "corvane").estimate
    assert estimate is not None
    assert estimate.value == pytest.approx(10.05)
    assert "offset" not in {c.source.sort for c in estimate.contributions if c.size}


def test_a_gain_leaves_its_share_of_the_difference(tmp_path: Path) -> None:
    """JCGM 100, 4.3.7: ±2 % of 10 g as a uniform half-width is 0.2/√3 g."""
    found = evaluated(
        tmp_path,
        "title: T\n" + TWO + "measure: {gas: 'weighed before and after, g, lower, scale'}\nreadings: readings.csv\n",
        readings="contender,pass,gas before,gas after\ncorvane,1,20.0,10.0\nostler,1,30.0,15.0\n",
        **{"instruments.yaml": "scale: 0.1 g, accuracy ±2 %\n"},
    )
    estimate = result(found, "gas", "corvane").estimate
    assert estimate is not None
    (gain,) = [c.size for c in estimate.contributions if c.source.sort == "gain"]
    assert abs(gain) == pytest.approx(0.2 / 3**0.5)


def test_a_quantity_in_anothers_formula_is_used_pass_by_pass(tmp_path: Path) -> None:
    found = evaluated(
        tmp_path,
        "title: T\n" + TWO + "tests: [burn]\n",
        **{
            "tests/burn.yaml": """\
                title: Burn
                readings:
                  file: r.csv
                  columns:
                    before: {column: b, unit: g}
                    after: {column: a, unit: g}
                quantities:
                  gas: {formula: before - after, unit: g, better: lower}
                  heat: {formula: gas * heating_value, unit: kJ}
                headline: gas
                """,
            "constants.yaml": "heating value: {value: 46.0 kJ/g, within: 0.6 kJ/g, source: a handbook}\n",
            "r.csv": "contender,pass,b,a\ncorvane,1,20.0,10.0\ncorvane,2,20.0,9.0\nostler,1,9.0,1.0\nostler,2,9.0,2.0\n",
        },
    )
    heat = result(found, "heat", "corvane")
    assert [round(p.value or 0, 6) for p in heat.by_pass] == [460.0, 506.0]
    assert heat.rank is None
    assert heat.estimate is not None
    (constant,) = [c.size for c in heat.estimate.contributions if c.source.sort == "constant"]
    assert constant == pytest.approx(10.5 * 0.6 / 3**0.5)


def test_parts_add_up_inside_a_pass(tmp_path: Path) -> None:
    found = evaluated(
        tmp_path,
        "title: T\n"
        + TWO
        + "measure: {gas: {kind: one reading, unit: g, better: lower, over parts: sum}}\nreadings: readings.csv\n",
        readings="contender,pass,part,gas\ncorvane,1,first evening,40\ncorvane,1,second evening,41\nostler,1,first evening,42\nostler,1,second evening,46\n",
    )
    assert value(found, "gas", "corvane") == 81
    assert value(found, "gas", "ostler") == 88


def test_parts_that_stay_apart_give_one_result_each(tmp_path: Path) -> None:
    found = evaluated(
        tmp_path,
        "title: T\n"
        + TWO
        + "measure: {gas: {kind: one reading, unit: g, better: lower, over parts: each}}\nreadings: readings.csv\n",
        readings="contender,pass,part,gas\ncorvane,1,cold,40\ncorvane,1,hot,41\nostler,1,cold,42\nostler,1,hot,46\n",
    )
    assert {(r.contender, r.part, r.estimate.value) for r in found.results if r.estimate} == {
        ("corvane", "cold", 40), ("corvane", "hot", 41), ("ostler", "cold", 42), ("ostler", "hot", 46),
    }  # fmt: skip


def test_a_chained_weighing_is_one_reading(tmp_path: Path) -> None:
    """The step of an "after" that is the next "before" cancels in the sum of two passes (JCGM 100, 5.2.2)."""
    files = {
        "readings": "contender,pass,part,gas before,gas after\ncorvane,1,a,20.0,15.0\ncorvane,1,b,15.0,9.0\nostler,1,a,9.0,5.0\nostler,1,b,5.0,1.0\n",
        "instruments.yaml": "scale: 0.1 g, accuracy unknown\n",
    }
    yaml = (
        "title: T\n"
        + TWO
        + "measure: {gas: {kind: weighed before and after, unit: g, better: lower, instrument: scale, over parts: sum, method: M}}\nreadings: readings.csv\n"
    )
    steps = {}
    for chained in ("yes", "no"):
        place = tmp_path / chained
        method = {"methods/weigh.1.yaml": f"title: Weigh\nchained: {chained}\n"}
        estimate = result(evaluated(place, yaml.replace("M}", "weigh}"), **files, **method), "gas", "corvane").estimate
        assert estimate is not None
        steps[chained] = len(estimate.steps)
    assert steps == {"yes": 2, "no": 4}


@pytest.mark.parametrize(
    ("formula", "says"),
    [
        ("gas * heating_valu", "heating_valu"),
        ("gas.real", "."),
        ("gas ** ", ""),
        ("gas + wait", "wait"),
    ],
)
def test_a_mistake_in_a_formula_points_at_its_character(tmp_path: Path, formula: str, says: str) -> None:
    with pytest.raises(Refused) as refused:
        evaluated(
            tmp_path,
            "title: T\n"
            + TWO
            + f"""\
measure:
  gas: one reading, g, lower
  wait: one reading, s, lower
  heat:
    formula: {formula}
    unit: kJ
readings: readings.csv
""",
            readings="contender,gas,wait\ncorvane,1,2\nostler,2,3\n",
            **{"constants.yaml": "heating value: {value: 46.0 kJ/g, source: a handbook}\n"},
        )
    (finding,) = refused.value.findings
    assert finding.place.file == "campaign.yaml"
    assert finding.place.line == 7
    assert finding.place.column > len("    formula:")
    assert says in finding.says


def test_a_formula_that_comes_out_in_another_unit_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        evaluated(
            tmp_path,
            "title: T\n" + TWO + "measure: {pull: {kind: peak, unit: N, better: higher}}\nreadings: readings.csv\n",
            readings="contender,pull,unit\ncorvane,16.5,kg\nostler,17.5,kg\n",
        )
    assert any("kgf" in f.says + f.do for f in refused.value.findings)


def test_quantities_that_need_each_other_are_refused(tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        evaluated(
            tmp_path,
            "title: T\n"
            + TWO
            + "measure:\n  a: {formula: b + c, unit: g}\n  b: {formula: a - c, unit: g}\n  c: one reading, g\nreadings: readings.csv\n",
            readings="contender,c\ncorvane,1\nostler,2\n",
        )
    assert "each other" in refused.value.findings[0].says
