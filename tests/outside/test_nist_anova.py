"""Certified one-way analyses of variance against the scatter and the means that the program works out.

Source: NIST StRD, Analysis of Variance, https://www.itl.nist.gov/div898/strd/anova/anova.shtml: data and certified
values of each of the 11 sets, as files in the SciPy wheel. F and both sums of squares follow from the means and the pooled
standard deviation, so they are put together here from what the program says.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from importlib.resources import files
from math import fsum, log10
from pathlib import Path

import pytest

from reportgen.judgement.judging import judge
from reportgen.judgement.measured import Rules
from tests.campaigns import result_of, results_of
from tests.judgement.bench import result

# Digits certified are 15. What of them doubles can hold depends on how many leading digits the data have in common:
# a number of n such digits is held to 16 − n of those that differ, and a sum of squares to about as many.
HELD = {
    "AtmWtAg": 8, "SiRstv": 12, "SmLs01": 13, "SmLs02": 12, "SmLs03": 12, "SmLs04": 9, "SmLs05": 9, "SmLs06": 9,
}  # fmt: skip
ALIKE = ("SmLs07", "SmLs08", "SmLs09")  # 13 digits in common


@dataclass(frozen=True)
class Certified:
    groups: dict[str, list[str]]  # as written
    between: float
    within: float
    f: float
    sd: float


def certified(name: str) -> Certified:
    text = (files("scipy") / f"stats/tests/data/nist_anova/{name}.dat").read_text(encoding="ascii")
    lines = text.splitlines()
    between = next(line.split() for line in lines[40:50] if line.startswith("Between"))
    within = next(line.split() for line in lines[40:50] if line.startswith("Within"))
    sd = next(line.split()[-1] for line in lines[40:50] if "Standard Deviation" in line)
    groups: dict[str, list[str]] = {}
    for line in lines[60:]:
        if line.split():
            group, value = line.split()
            groups.setdefault(f"g{group}", []).append(value)
    return Certified(groups, float(between[-3]), float(within[-2]), float(between[-1]), float(sd))


def digits(found: float, expected: float) -> float:
    """How many decimal digits agree (log relative error)."""
    return 15.0 if found == expected else min(15.0, -log10(abs(found - expected) / abs(expected)))


def means_of(known: Certified) -> list[float]:
    """In exact fractions of what is written, rounded once."""
    return [float(sum(map(Fraction, values)) / len(values)) for values in known.groups.values()]


def agree(means: list[float], sd: float, name: str, known: Certified) -> None:
    sizes = [len(values) for values in known.groups.values()]
    grand = fsum(n * m for n, m in zip(sizes, means, strict=True)) / sum(sizes)
    between = fsum(n * (m - grand) ** 2 for n, m in zip(sizes, means, strict=True))
    within = sd**2 * (sum(sizes) - len(sizes))
    f = between / (len(sizes) - 1) / sd**2
    for found, expected in ((between, known.between), (within, known.within), (f, known.f), (sd, known.sd)):
        assert digits(found, expected) >= HELD[name], (found, expected)


@pytest.mark.parametrize("name", ["AtmWtAg", "SiRstv", "SmLs01", "SmLs04"])
def test_a_compiled_campaign_has_the_certified_scatter(tmp_path: Path, name: str) -> None:
    """Passes in turns, a contender a treatment; u of a mean is the residual standard deviation over the root of n."""
    known = certified(name)
    rows = [
        f"{group},{n + 1},{value}"
        for n, line in enumerate(zip(*known.groups.values(), strict=True))
        for group, value in zip(known.groups, line, strict=True)
    ]
    contenders = "".join(f"  {group}: Group {group[1:]}\n" for group in known.groups)
    yaml = (
        f"title: Certified\ncontenders:\n{contenders}measure:\n  it: {{kind: one reading, better: higher}}\n"
        "readings: readings.csv\n"
    )
    told = results_of(tmp_path, yaml, readings="contender,pass,it\n" + "\n".join(rows) + "\n")
    results = [result_of(told, "it", group) for group in known.groups]
    sizes = [len(values) for values in known.groups.values()]
    # The record holds 12 significant digits.
    assert all(digits(r["u"] * n**0.5, known.sd) >= min(HELD[name], 11) for r, n in zip(results, sizes, strict=True))
    assert all(digits(r["value"], m) >= 11 for r, m in zip(results, means_of(known), strict=True))


@pytest.mark.parametrize("name", sorted(HELD))
def test_the_judge_finds_the_certified_scatter(name: str) -> None:
    known = certified(name)
    values = {group: [float(x) for x in written] for group, written in known.groups.items()}
    found = judge([result(group, *passes) for group, passes in values.items()], Rules("higher"))
    assert found.scatter.sd is not None
    assert found.scatter.degrees == sum(len(v) - 1 for v in values.values())
    agree([fsum(v) / len(v) for v in values.values()], found.scatter.sd, name, known)


@pytest.mark.parametrize("name", ALIKE)
def test_numbers_alike_in_thirteen_digits_are_equal_numbers(name: str) -> None:
    """Binary fractions hold 15 to 17 digits, and what formulas do costs some: below one part in 10¹² nothing is believed.

    The certified scatter is one part in 10¹³, so no winner is named, and no interval is feigned.
    """
    known = certified(name)
    values = {group: [float(x) for x in written[:5]] for group, written in known.groups.items()}
    found = judge([result(group, *passes) for group, passes in values.items()], Rules("higher"))
    assert found.first.winner is None
    assert found.scatter.sd == 0.0
    assert all(single.u is None for single in found.singles.values())
    assert all(not pair.resolved and pair.low is None for pair in found.pairs)
