"""Published limits and tests of what is counted, through compiled campaigns (`results.json`)."""

from pathlib import Path

import pytest

from tests.campaigns import comparison_of, result_of, results_of

HEAD = "title: Counted elsewhere\ncontenders: {first: A, second: B, third: C, fourth: D}\nreadings: readings.csv\nmeasure:\n"


def test_exact_limits_of_a_share_are_newcombes(tmp_path: Path) -> None:
    """R. G. Newcombe, Statistics in Medicine 17 (1998) 857, table I, method 5 (from memory): four places."""
    published = {"first": (81, 263), "second": (15, 148), "third": (0, 20), "fourth": (1, 29)}
    limits = {"first": (0.2527, 0.3676), "second": (0.0578, 0.1617), "third": (0, 0.1684), "fourth": (0.0009, 0.1776)}
    rows = [f"{c},{n},{'yes' if n <= yes else 'no'}" for c, (yes, of) in published.items() for n in range(1, of + 1)]
    told = results_of(tmp_path, HEAD + "  cured: yes/no\n", readings="\n".join(["contender,pass,cured", *rows]))
    for contender, (low, high) in limits.items():
        found = result_of(told, "cured", contender)
        assert (found["low"], found["high"]) == (pytest.approx(low, abs=5e-5), pytest.approx(high, abs=5e-5))


def test_three_of_three_against_none_of_three_is_one_in_32_by_boschloo(tmp_path: Path) -> None:
    """R. D. Boschloo, Statistica Neerlandica 24 (1970) 1; derived: twice the largest θ³(1 − θ)³. Fisher's test says .10."""
    rows = [f"first,{n},yes\nsecond,{n},no" for n in (1, 2, 3)]
    text = HEAD + "  cured: yes/no, higher\n"
    told = results_of(tmp_path, text, readings="\n".join(["contender,pass,cured", *rows]))
    pair = comparison_of(told, "cured", "first", "second")
    assert 2 * pair["reason"]["numbers"]["p"] == pytest.approx(1 / 32)
    assert pair["resolved"]


def test_exact_limits_of_a_count_are_garwoods(tmp_path: Path) -> None:
    """F. Garwood, Biometrika 28 (1936) 437, table, 95 %: 0 → 3.689; 10 → 4.795 to 18.390 (from memory): three places."""
    text = HEAD + "  cases: {kind: count, independent: yes}\n"
    told = results_of(tmp_path, text, readings="contender,cases\nfirst,0\nsecond,10\n")
    none, ten = result_of(told, "cases", "first"), result_of(told, "cases", "second")
    assert (none["low"], none["high"]) == (0, pytest.approx(3.689, abs=5e-4))
    assert (ten["low"], ten["high"]) == (pytest.approx(4.795, abs=5e-4), pytest.approx(18.390, abs=5e-4))


def test_four_grades_wholly_above_four_are_one_of_seventy(tmp_path: Path) -> None:
    """Combinatorics, exact: 8 choose 4 ways to deal them out. F. Wilcoxon, Biometrics Bulletin 1 (1945) 80."""
    rows = [f"first,{n},good\nsecond,{n},poor" for n in (1, 2, 3, 4)]
    text = HEAD + "  grip: {kind: grade, grades: [poor, fair, good], better: higher}\n"
    told = results_of(tmp_path, text, readings="\n".join(["contender,pass,grip", *rows]))
    assert comparison_of(told, "grip", "first", "second")["reason"]["numbers"]["p"] == pytest.approx(0.0143, abs=5e-5)
