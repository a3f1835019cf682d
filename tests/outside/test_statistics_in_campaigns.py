"""Worked examples of pairs, put through compiled campaigns: Tukey's method, Welch's interval, differences within blocks."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.campaigns import comparison_of
from tests.judgement.test_judging_handbooks import SHOES, SLEEP
from tests.outside.test_statistics import in_rounds

# NIST/SEMATECH e-Handbook of Statistical Methods, 7.4.2.4 and 7.4.7.1: four groups of five (data from memory; means 5.34,
# 7.72, 8.56, 5.50 and the six intervals are as printed there).
GROUPS = {
    "one": "6.9 5.4 5.8 4.6 4.0",
    "two": "8.3 6.8 7.8 9.2 6.5",
    "three": "8.0 10.5 8.1 6.9 9.3",
    "four": "5.8 3.8 6.1 5.6 6.2",
}
PRINTED = {
    ("two", "one"): (0.29, 4.47),
    ("three", "one"): (1.13, 5.31),
    ("one", "four"): (-2.25, 1.93),
    ("two", "three"): (-2.93, 1.25),
    ("two", "four"): (0.13, 4.31),
    ("three", "four"): (0.97, 5.15),
}
OWN = "title: As said\nscatter: own\n"
OWN_IN_ROUNDS = OWN + "order: rounds\n"


def test_the_e_handbooks_six_intervals_come_out(tmp_path: Path) -> None:
    """e-Handbook, 7.4.7.1: Tukey's simultaneous 95 % intervals, printed to two decimals."""
    told = in_rounds(tmp_path, {name: GROUPS[name] for name in ("three", "two", "one", "four")}, "Ω")
    for (one, other), (low, high) in PRINTED.items():
        turned = (one, other) == ("two", "three")  # printed as two less three; the campaign has three first
        found = comparison_of(told, "it", *((other, one) if turned else (one, other)))
        ends = (-high, -low) if turned else (low, high)
        assert (found["low"], found["high"]) == pytest.approx(ends, abs=0.006), (one, other)
        assert found["resolved"] is (low > 0 or high < 0), (one, other)


def test_the_e_handbooks_best_group_shares_first_place(tmp_path: Path) -> None:
    """Three is not told from two (−2.93 to 1.25), and one and four are told to be worse than three."""
    (first,) = in_rounds(tmp_path, GROUPS, "Ω")["first"]
    assert (first["winner"], first["may_be_first"]) == (None, ["two", "three"])


def test_sleep_by_itself_is_welchs_interval_with_truncated_degrees(tmp_path: Path) -> None:
    """R, t.test(extra ~ group, sleep): t −1.8608, ν 17.776, p .0794. t(17) for 95 %: 2.11 (JCGM 100, table G.2)."""
    told = in_rounds(tmp_path, _as_text(SLEEP), "h", **{"methods/as-said.1.yaml": OWN})
    found = comparison_of(told, "it", "drug-1", "drug-2")
    assert found["difference"] / found["u"] == pytest.approx(-1.8608, abs=0.00005)
    assert (found["high"] - found["low"]) / 2 / found["u"] == pytest.approx(2.11, abs=0.005)
    assert not found["resolved"]


def test_sleep_in_rounds_is_the_paired_interval(tmp_path: Path) -> None:
    """R, t.test(…, paired = TRUE): t −4.0621, p .00283, nine degrees of freedom: t for 95 % is 2.26 (table G.2)."""
    told = in_rounds(tmp_path, _as_text(SLEEP), "h", **{"methods/as-said.1.yaml": OWN_IN_ROUNDS})
    found = comparison_of(told, "it", "drug-1", "drug-2")
    assert found["difference"] / found["u"] == pytest.approx(-4.0621, abs=0.00005)
    assert (found["high"] - found["low"]) / 2 / found["u"] == pytest.approx(2.26, abs=0.005)
    assert told["first"][0]["winner"] == "drug-2"


def test_shoes_differ_in_rounds_and_not_without(tmp_path: Path) -> None:
    """MASS, shoes: paired mean 0.41, t 3.349, .133 to .687; unpaired t .369, p .716."""
    groups = {f"sole-{name.lower()}": " ".join(map(str, values)) for name, values in SHOES.items()}
    files = {"methods/as-said.1.yaml": OWN_IN_ROUNDS}
    paired = comparison_of(in_rounds(tmp_path / "in", groups, "mm", **files), "it", "sole-a", "sole-b")
    assert paired["difference"] / paired["u"] == pytest.approx(-3.349, abs=0.0005)
    assert (paired["low"], paired["high"]) == pytest.approx((-0.687, -0.133), abs=0.0006)
    files = {"methods/as-said.1.yaml": OWN}
    apart = comparison_of(in_rounds(tmp_path / "without", groups, "mm", **files), "it", "sole-a", "sole-b")
    assert apart["difference"] / apart["u"] == pytest.approx(-0.369, abs=0.0005)
    assert not apart["resolved"]


def _as_text(groups: dict[str, tuple[float, ...]]) -> dict[str, str]:
    return {f"drug-{name}": " ".join(map(str, values)) for name, values in groups.items()}
