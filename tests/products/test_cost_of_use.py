"""What a stated use costs: lines, break-evens with Fieller's limits, who is cheapest where; and what can't be told."""

from __future__ import annotations

import html
import re
from math import sqrt
from pathlib import Path
from typing import Any

import pytest
from scipy.stats import t as student

from tests.campaigns import compile_campaign, refusal, results_of

YAML = """\
title: Which lamp for the money?
contenders:
  harl: {title: Harl One, HARL}
  tolk: {title: Tolk Beam, TOLK}
measure: {oil: "one reading, g, lower"}
constants: {oil price: {value: 0.012 EUR/g, source: receipt}}
readings: readings.csv
verdict: {use: {per: evening, cost: COST, times: TIMES}}
"""
HARL, TOLK = (20.0, 21.0, 20.5, 20.9), (30.1, 29.4, 31.0, 30.3)


def table(harl: tuple[object, ...] = HARL, tolk: tuple[object, ...] = TOLK) -> str:
    rows = [("harl", n, x) for n, x in enumerate(harl, 1)] + [("tolk", n, x) for n, x in enumerate(tolk, 1)]
    return "contender,pass,oil\n" + "".join(f"{c},{n},{x}\n" for c, n, x in rows)


def yaml(harl: str = "paid: 90 EUR", tolk: str = "paid: 60 EUR", cost: str = "oil * oil_price",
         times: str = "0 to 500") -> str:  # fmt: skip
    return YAML.replace("HARL", harl).replace("TOLK", tolk).replace("COST", cost).replace("TIMES", times)


def verdict(place: Path, text: str, readings: str = "") -> dict[str, Any]:
    told = results_of(place, text, readings=readings or table())["verdict"]
    assert isinstance(told, dict)
    return told


def shown(place: Path, text: str, readings: str = "") -> tuple[dict[str, Any], str]:
    """The verdict, and the words of the page."""
    told = compile_campaign(place, text, readings=readings or table())["verdict"]
    page = (place / "stoves/.site/stoves/index.html").read_text(encoding="utf-8")
    return told, " ".join(html.unescape(re.sub(r"<[^>]+>", " ", page)).replace("\u2019", "'").split())


def of_two_means(price: float) -> tuple[float, float]:
    """Fieller's limits of (90 − 60) / (price · (mean Tolk − mean Harl)) by the roots of the quadratic (Fieller 1954, as
    in Finney, Probit Analysis; from memory): (b² − t²v_b) r² − 2ab r + a² ≤ 0 where the numerator a has no variance."""
    mean_harl, mean_tolk = sum(HARL) / 4, sum(TOLK) / 4
    squares = sum((x - mean_harl) ** 2 for x in HARL) + sum((x - mean_tolk) ** 2 for x in TOLK)
    a, b = 90.0 - 60.0, price * (mean_tolk - mean_harl)
    step = 0.1**2 / 12  # one decimal written: inside the scatter here, as s ≥ δ/2
    assert squares / 6 > step
    variance = price**2 * squares / 6 * (1 / 4 + 1 / 4)
    t2 = float(student.ppf(0.975, 6)) ** 2
    root = sqrt(a * a * b * b - (b * b - t2 * variance) * a * a)
    return (a * b - root) / (b * b - t2 * variance), (a * b + root) / (b * b - t2 * variance)


@pytest.fixture(scope="module")
def crossing(tmp_path_factory: pytest.TempPathFactory) -> tuple[dict[str, Any], str]:
    return shown(tmp_path_factory.mktemp("crossing"), yaml())


def test_a_break_even_has_fiellers_limits(crossing: tuple[dict[str, Any], str]) -> None:
    told, text = crossing
    (found,) = told["break_even"]
    assert found["why"] == "crosses"
    assert (found["sooner"], found["later"]) == ("tolk", "harl")
    assert found["at"] == pytest.approx(30 / (0.012 * (sum(TOLK) - sum(HARL)) / 4), rel=1e-9)
    assert (found["low"], found["high"]) == pytest.approx(of_two_means(0.012), rel=1e-6)
    stretches = [(s["from"], s["to"], s["may_be"]) for s in told["cost"]["cheapest"]]
    assert [s[2] for s in stretches] == [["tolk"], ["harl", "tolk"], ["harl"]]
    assert stretches[0][1] == pytest.approx(found["low"], rel=1e-9)
    assert stretches[1][1] == pytest.approx(found["high"], rel=1e-9)
    saves, least, most = 0.012 * (sum(TOLK) - sum(HARL)) / 4, *(30 / n for n in reversed(of_two_means(0.012)))
    assert (
        "Harl One costs more to buy than Tolk Beam and less to use: what it saves, "
        f"{saves:.3f} EUR ({least:.3f} to {most:.3f}) a use, has paid back the dearer price after about 260 uses, "
        "at the earliest "
    ) in text
    assert "makes up for rounds" not in text  # both ran in every round: the gap is that of the costs in the table
    assert "is the cheapest" in text


def test_the_price_that_all_pay_for_oil_is_no_reason_to_doubt_which_costs_less(tmp_path: Path) -> None:
    """Its uncertainty moves both costs alike: a tenth more or less moves N* by a tenth, and the sign stays."""
    sure, unsure = (
        verdict(tmp_path / n, yaml().replace("EUR/g,", f"EUR/g{more},"))
        for n, more in (("a", ""), ("b", ", u: 0.0012 EUR/g"))
    )
    (one,), (other,) = sure["break_even"], unsure["break_even"]
    assert other["why"] == "crosses"
    assert other["at"] == pytest.approx(one["at"])
    assert other["low"] < one["low"] < one["high"] < other["high"]
    slope = 0.012 * (sum(TOLK) - sum(HARL)) / 4
    assert 30 / other["low"] - slope < 3 * 0.1 * slope  # and not some 0.3 EUR, as if each had a price of its own


def test_one_that_costs_no_more_to_buy_and_less_to_use_is_cheaper_throughout(tmp_path: Path) -> None:
    told, text = shown(tmp_path, yaml(harl="paid: 60 EUR"))
    (found,) = told["break_even"]
    assert (found["why"], found["later"], found["at"]) == ("cheaper-throughout", "harl", None)
    assert [s["may_be"] for s in told["cost"]["cheapest"]] == [["harl"]]
    assert "Harl One costs less to use than Tolk Beam, and no more to buy." in text


def test_costs_that_cannot_be_told_apart_have_no_break_even(tmp_path: Path) -> None:
    told, text = shown(tmp_path, yaml(), table((20.0, 31.0, 24.5, 28.9), (30.1, 21.4, 27.0, 24.3)))
    (found,) = told["break_even"]
    assert (found["why"], found["at"], found["low"], found["high"]) == ("not-resolved", None, None, None)
    assert "What a use costs with Harl One and Tolk Beam can't be told apart" in text
    assert told["cost"]["cheapest"][0]["may_be"] == ["tolk"]  # which costs 30 EUR less to buy


def test_a_single_run_each_has_no_break_even_and_says_why(tmp_path: Path) -> None:
    told, text = shown(tmp_path, yaml(), table((20.0,), (30.1,)))
    (found,) = told["break_even"]
    assert found["why"] == "not-known"
    assert "Whether another run would show the same cost of a use isn't known of Harl One and Tolk Beam" in text
    assert "What a use costs rests on one run each" in text


def test_a_repeatability_that_the_method_declares_stands_in_for_runs(tmp_path: Path) -> None:
    """0.5 g with 20 degrees of freedom: the slope is 0.012·10.1 ± t₂₀·0.012·0.5·√2, the step of 0.1 g within it."""
    method = (
        "title: Burn\nrepeatability: {oil: 0.5 g, passes: 24, products: 4, source: last year}\nsteps: [Light it.]\n"
    )
    test = "title: Oil\nmethod: burn\nreadings: {file: readings.csv}\nquantities: {oil: {kind: one reading, unit: g, better: lower}}\n"
    text = (
        yaml()
        .replace('measure: {oil: "one reading, g, lower"}\n', "tests: [burning]\n")
        .replace("readings: readings.csv\n", "")
    )
    told = results_of(
        tmp_path, text, readings=table((20.0,), (30.1,)), **{"methods/burn.1.yaml": method, "tests/burning.yaml": test}
    )
    (found,) = told["verdict"]["break_even"]
    half = float(student.ppf(0.975, 20)) * 0.012 * 0.5 * sqrt(2)
    assert (found["low"], found["high"]) == pytest.approx((30 / (0.1212 + half), 30 / (0.1212 - half)), rel=1e-6)


def test_a_break_even_outside_the_stated_use_is_none(tmp_path: Path) -> None:
    told, text = shown(tmp_path / "a", yaml(times="0 to 100"))
    assert told["break_even"][0]["why"] == "beyond-the-use"
    assert [s["may_be"] for s in told["cost"]["cheapest"]] == [["tolk"]]
    assert ": all beyond the 100 that we ask about." in text
    told, text = shown(tmp_path / "b", yaml(times="400 to 900"))
    assert told["break_even"][0]["why"] == "beyond-the-use"
    assert [s["may_be"] for s in told["cost"]["cheapest"]] == [["harl"]]
    assert ": all before the 400 that we begin with." in text


def test_where_only_a_limit_or_the_middle_lies_outside_the_stated_use_it_is_said_the_same_way(tmp_path: Path) -> None:
    low, high = of_two_means(0.012)  # about 244 to 279, the middle 260
    for n, (times, says) in enumerate({
        f"0 to {high - 5:.0f}": "; the latest lies beyond the ",
        f"0 to {low + 5:.0f}": "; all but the earliest lies beyond the ",
        f"{low + 5:.0f} to 900": "; the earliest lies before the ",
        f"{high - 5:.0f} to 900": "; all but the latest lies before the ",
        f"{low + 5:.0f} to {high - 5:.0f}": "; the earliest lies before the ",
    }.items()):  # fmt: skip
        _, text = shown(tmp_path / str(n), yaml(times=times))
        assert "after about 260 uses, at the earliest " in text
        assert says in text
    assert "that we begin with; the latest lies beyond the " in text


def test_a_price_that_is_a_range_takes_its_ends(tmp_path: Path) -> None:
    exact, loose = verdict(tmp_path / "a", yaml()), verdict(tmp_path / "b", yaml(harl="listed: 80 to 100 EUR"))
    (one,), (other,) = exact["break_even"], loose["break_even"]
    assert other["at"] is None
    assert other["low"] == pytest.approx(one["low"] * 20 / 30, rel=1e-9)
    assert other["high"] == pytest.approx(one["high"] * 40 / 30, rel=1e-9)


def test_a_cost_that_is_only_a_bound_stays_one(tmp_path: Path) -> None:
    told, text = shown(tmp_path, yaml(), table(tolk=("over 30",) * 4))
    (found,) = told["break_even"]
    least = 0.012 * (30 - sum(HARL) / 4)
    assert (found["at"], found["low"]) == (None, 0.0)
    assert found["high"] > 30 / least
    assert {line["contender"]: line["limit"] for line in told["cost"]["lines"]} == {"harl": None, "tolk": "above"}
    assert "has paid back the dearer price after" in text  # 90 EUR is more than 60, whatever a use costs
    assert "uses at the latest" in text


def test_two_currencies_are_never_compared_by_use_either(tmp_path: Path) -> None:
    told, text = shown(tmp_path, yaml(tolk="paid: 60 USD"))
    assert told["cost"]["left_out"] == {"tolk": "other-currency"}
    assert (told["break_even"], told["cost"]["cheapest"]) == ([], [])
    assert "Tolk Beam has a price in another currency than EUR, and no rate is assumed." in text


def test_one_without_a_price_has_no_line_and_is_named(tmp_path: Path) -> None:
    told, text = shown(tmp_path, yaml(tolk="maker: Tolk"))
    assert told["cost"]["left_out"] == {"tolk": "no-price"}
    assert "No price is noted for Tolk Beam, so there is no line for it." in text


@pytest.mark.parametrize(
    ("cost", "rule", "says"),
    [
        ("oil", "cost-not-money", "comes to g"),
        ("oil_price", "cost-alike", "names no quantity"),
        ("oil * oil_price / oil", "cost-not-money", "comes to EUR/g"),
        ("oil * oil_prize", "formula", "called oil_prize"),
        ("oil *", "formula", "oil *"),
        ("oil + oil_price", "formula", "can't be worked out"),
    ],
)
def test_a_cost_that_is_no_money_is_refused_where_it_stands(tmp_path: Path, cost: str, rule: str, says: str) -> None:
    found = refusal(tmp_path, yaml(cost=f'"{cost}"'), readings=table())
    assert [f.rule for f in found] == [rule]
    assert says in found[0].says
    assert (found[0].place.file.rpartition("/")[2], found[0].place.line) == ("campaign.yaml", 8)


@pytest.mark.parametrize(("times", "says"), [("500 to 0", "upward"), ("500", "range"), ("-5 to 10", "upward")])
def test_uses_that_run_backwards_are_refused(tmp_path: Path, times: str, says: str) -> None:
    (found,) = refusal(tmp_path, yaml(times=f'"{times}"'), readings=table())
    assert says in found.says
    assert found.place.line == 8


def test_a_negative_price_is_refused(tmp_path: Path) -> None:
    (found,) = refusal(tmp_path, yaml(harl="paid: -90 EUR"), readings=table())
    assert "is not a price" in found.says


def test_no_merit_is_divided_by_a_price(crossing: tuple[dict[str, Any], str]) -> None:
    assert not re.search(r"per (euro|EUR)|(EUR|€)/g\b.*better", crossing[1])
