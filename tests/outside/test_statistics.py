"""Open datasets and textbook examples put through compiled campaigns; what is expected was published elsewhere."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tests.campaigns import comparison_of, result_of, results_of

# R's `morley` (Michelson 1879, as given by Stigler, Annals of Statistics 5 (1977) 1055): km/s above 299 000, 20 runs a row.
MORLEY = {
    "first": "850 740 900 1070 930 850 950 980 980 880 1000 980 930 650 760 810 1000 1000 960 960",
    "second": "960 940 960 940 880 800 850 880 900 840 830 790 810 880 880 830 800 790 760 800",
    "third": "880 880 880 860 720 720 620 860 970 950 880 910 850 870 840 840 850 840 840 840",
    "fourth": "890 810 810 820 800 770 760 740 750 760 910 920 890 860 880 720 840 850 850 780",
    "fifth": "890 840 780 810 760 810 790 810 820 850 870 870 810 740 810 940 950 800 810 870",
}
# Montgomery, Design and Analysis of Experiments: tensile strength of paper, psi, by hardwood content (from memory).
HARDWOOD = {
    "five": "7 8 15 11 9 10",
    "ten": "12 17 13 18 19 15",
    "fifteen": "14 18 19 17 16 18",
    "twenty": "19 25 22 23 18 20",
}
# R's `PlantGrowth` (Dobson 1983, table 7.1): dried weight of plants, g.
PLANTS = {
    "ctrl": "4.17 5.58 5.18 6.11 4.50 4.61 5.17 4.53 5.33 5.14",
    "trt1": "4.81 4.17 4.41 3.59 5.87 3.83 6.03 4.89 4.32 4.69",
    "trt2": "6.31 5.12 5.54 5.50 5.37 5.29 4.92 6.15 5.80 5.26",
}


def in_rounds(place: Path, groups: dict[str, str], unit: str, **files: str) -> dict[str, Any]:
    """A campaign with one quantity `it`, a contender a group, a pass a value, run in turns."""
    contenders = "".join(f"  {name}: The {name} group\n" for name in groups)
    columns = {name: values.split() for name, values in groups.items()}
    passes = range(max(map(len, columns.values())))
    rows = [f"{name},{n + 1},{columns[name][n]}" for n in passes for name in groups if n < len(columns[name])]
    method = "    method: as-said\n" if files else ""
    yaml = (
        f"title: From a book\ncontenders:\n{contenders}measure:\n  it:\n    kind: one reading\n    unit: {unit}\n"
        f"    better: higher\n{method}readings: readings.csv\n"
    )
    return results_of(place, yaml, readings="contender,pass,it\n" + "\n".join(rows) + "\n", **files)


def test_michelsons_means_come_out_as_published(tmp_path: Path) -> None:
    """Means by experiment: R documentation of `morley`; 852.4 and 79.01 over all 100 runs, Stigler 1977."""
    told = in_rounds(tmp_path, MORLEY, "km/s")
    means = [result_of(told, "it", name)["value"] for name in MORLEY]
    assert means == pytest.approx([909.0, 856.0, 845.0, 820.5, 831.5], abs=1e-9)
    assert sum(means) / 5 == pytest.approx(852.4, abs=0.05)


def test_hardwood_means_and_pooled_scatter_as_in_the_textbook(tmp_path: Path) -> None:
    told = in_rounds(tmp_path, HARDWOOD, "psi")
    results = [result_of(told, "it", name) for name in HARDWOOD]
    assert [round(r["value"], 3) for r in results] == [10.000, 15.667, 17.000, 21.167]
    assert [r["u"] * 6**0.5 for r in results] == pytest.approx([2.551] * 4, abs=0.0005)


def test_hardwood_pairs_differ_as_tukeys_method_says(tmp_path: Path) -> None:
    """All pairs differ but 10 % and 15 % (Montgomery; q = 3.96 with 4 and 20)."""
    told = in_rounds(tmp_path, HARDWOOD, "psi")
    alike = {(c["first"], c["second"]) for c in told["comparisons"] if not c["resolved"]}
    assert alike == {("ten", "fifteen")}
    adjusted = comparison_of(told, "it", "five", "ten")  # no pair of the winner's: the simultaneous interval
    half = (adjusted["high"] - adjusted["low"]) / 2
    assert half == pytest.approx(3.96 * 2.551 / 6**0.5, abs=0.005)


@pytest.mark.parametrize(
    ("first", "second", "difference", "low", "high"),
    [
        ("ctrl", "trt1", 0.371, -0.320, 1.062),
        ("ctrl", "trt2", -0.494, -1.185, 0.197),
        ("trt1", "trt2", -0.865, -1.556, -0.174),
    ],
)
def test_plant_growth_intervals_are_those_of_tukeys_method(
    tmp_path: Path, first: str, second: str, difference: float, low: float, high: float
) -> None:
    """R: TukeyHSD(aov(weight ~ group, PlantGrowth))."""
    found = comparison_of(in_rounds(tmp_path, PLANTS, "g"), "it", first, second)
    assert [found[k] for k in ("difference", "low", "high")] == pytest.approx([difference, low, high], abs=0.0006)
    assert found["resolved"] is (low > 0 or high < 0)


def test_plant_growth_has_no_sole_winner(tmp_path: Path) -> None:
    """The leader is not told from the control (p .198), so first place is shared."""
    (first,) = in_rounds(tmp_path, PLANTS, "g")["first"]
    assert first["winner"] is None
    assert first["may_be_first"] == ["ctrl", "trt2"]


@pytest.mark.parametrize(("passes", "t95"), [(2, 12.71), (3, 4.30), (4, 3.18), (6, 2.57), (11, 2.23)])
def test_intervals_use_the_quantiles_of_table_g2(tmp_path: Path, passes: int, t95: float) -> None:
    """JCGM 100:2008, table G.2, for 1, 2, 3, 5 and 10 degrees of freedom: each contender's own scatter."""
    values = [100.013, 100.871, 99.402, 100.334, 99.117, 101.250, 98.804, 100.615, 99.733, 100.092, 99.950][:passes]
    rows = " ".join(map(str, values))
    told = in_rounds(
        tmp_path, {"a": rows, "b": rows}, "g", **{"methods/as-said.1.yaml": "title: As said\nscatter: own\n"}
    )
    found = result_of(told, "it", "a")
    assert (found["high"] - found["value"]) / found["u"] == pytest.approx(t95, abs=0.005)


def test_passes_that_do_not_overlap_by_luck_make_no_winner(tmp_path: Path) -> None:
    """Of two equal contenders with two passes each, one lies wholly below the other in 2·2!·2!/4! = 1 of 3 campaigns."""
    told = in_rounds(tmp_path, {"a": "10.1 10.4", "b": "10.6 10.9"}, "g")
    (first,) = told["first"]
    assert first["winner"] is None
    assert not comparison_of(told, "it", "a", "b")["resolved"]
