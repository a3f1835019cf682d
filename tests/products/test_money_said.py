"""What is said of money beside conditions, other prices, and the author's own word; true whoever is out or dear."""

from __future__ import annotations

import html
import re
from pathlib import Path
from typing import Any

import pytest

from tests.campaigns import compile_campaign, results_of

YAML = """\
title: Which lamp for the money?
contenders:
  harl: {title: Harl One, HARL}
  tolk: {title: Tolk Beam, TOLK}
  wenn: {title: Wenn Duo, WENN}
measure:
  oil: one reading, g, lower
  soot: one reading, mg, lower
constants: {oil price: {value: 0.012 EUR/g, source: receipt}}
readings: readings.csv
"""
USE = "use: {per: evening, cost: oil * oil_price, times: 0 to 500}\n"
GROUPS = "groups: {thrift: {weight: 1, criteria: {oil: {worst: 60 g, best: 10 g}}}}\n"
MUST = "must: [{quantity: soot, at most: 50 mg}]\n"
BOTH_MUSTS = "must: [{quantity: soot, at most: 50 mg}, {quantity: oil, at most: 45 g}]\n"
OIL = {"harl": 20.0, "tolk": 30.0, "wenn": 50.0}
SOOT = {"harl": 10.0, "tolk": 12.0, "wenn": 90.0}


def yaml(harl: str = "paid: 90 EUR", tolk: str = "paid: 60 EUR", wenn: str = "paid: 30 EUR") -> str:
    return YAML.replace("HARL", harl).replace("TOLK", tolk).replace("WENN", wenn)


def readings(soot: dict[str, float] = SOOT) -> str:
    rows = [f"{c},{n},{OIL[c] + 0.1 * n},{soot[c] + 0.1 * n}" for c in OIL for n in range(1, 5)]
    return "\n".join(["contender,pass,oil,soot", *rows]) + "\n"


def built(place: Path, verdict: str, text: str = "", soot: dict[str, float] = SOOT) -> tuple[dict[str, Any], str]:
    """results.json's verdict, and the page's words."""
    told = compile_campaign(place, text or yaml(), readings=readings(soot), **{"verdict.yaml": verdict})["verdict"]
    page = (place / "stoves/.site/stoves/index.html").read_text(encoding="utf-8")
    words = " ".join(html.unescape(re.sub(r"<[^>]+>", " ", page)).replace("\u2019", "'").split())
    return told, words.replace(" .", ".")


def test_one_that_is_out_is_called_so_wherever_its_price_speaks(tmp_path: Path) -> None:
    told, text = built(tmp_path, MUST + USE)
    assert "C Wenn Duo out: soot 30 EUR" in text  # the table of prices
    assert "Wenn Duo (out: soot) costs least." in text
    assert "Of those that aren't out, Tolk Beam costs least." in text
    assert "costs more to buy than Wenn Duo (out: soot) and less to use" in text
    assert "uses Wenn Duo (out: soot) is the cheapest" in text
    assert "Of those that aren't out: from 0 to " in text
    assert text.count("Wenn Duo is out: soot.") == 2  # the keys of both pictures
    assert {c for s in told["cost"]["cheapest_in"] for c in s["may_be"]} == {"harl", "tolk"}


def test_of_several_reasons_all_are_named_and_one_left_alone_is_compared_with_nobody(tmp_path: Path) -> None:
    told, text = built(tmp_path, BOTH_MUSTS + USE, soot={"harl": 10.0, "tolk": 70.0, "wenn": 90.0})
    assert "Wenn Duo (out: soot and oil)" in text
    assert "Tolk Beam (out: soot)" in text
    assert told["cost"]["cheapest_in"] == []
    assert "Of those that aren't out" not in text


def test_where_nobody_is_out_nothing_says_so(tmp_path: Path) -> None:
    told, text = built(tmp_path, MUST + USE, soot={"harl": 10.0, "tolk": 12.0, "wenn": 14.0})
    assert told["cost"]["cheapest_in"] == []
    assert "out:" not in text
    assert "aren't out" not in text


TWO_PRICES = "prices: [{paid: 60 EUR, date: 2026-05-02}, {listed: 55 to 95 EUR, date: 2026-06-02}]"


def test_a_listed_price_that_would_change_what_is_said_is_told_with_what_it_changes(tmp_path: Path) -> None:
    _, text = built(tmp_path, MUST + USE, yaml(tolk=TWO_PRICES))
    assert "What counts is the price that was paid last" in text
    assert "At 95.00 EUR (listed, 2 June 2026), Tolk Beam would cost more than Harl One;" in text
    assert "Tolk Beam would be beaten by Harl One at no higher price on oil" in text
    assert "Then, of those that aren't out: Harl One is the cheapest" in text  # 90 against 95, and less oil
    assert "At 55.00 EUR" not in text  # it changes nothing: still between the two


def test_a_listed_price_that_would_make_it_the_cheaper_is_told_too(tmp_path: Path) -> None:
    _, text = built(tmp_path, MUST, yaml(harl="prices: [{paid: 90 EUR}, {listed: 58 EUR}]"))
    assert "At 58.00 EUR (listed), Harl One would cost less than Tolk Beam; " in text
    assert "Tolk Beam would be beaten by Harl One at no higher price on oil and soot" in text


def test_where_a_repeat_is_unknown_the_cheapest_stays_open_among_those_that_are_in(tmp_path: Path) -> None:
    once = "contender,pass,oil,soot\n" + "".join(f"{c},1,{OIL[c]},{SOOT[c]}\n" for c in OIL)
    told = results_of(tmp_path, yaml(), readings=once, **{"verdict.yaml": MUST + USE})["verdict"]
    assert {b["why"] for b in told["break_even"]} == {"not-known"}
    (stretch,) = told["cost"]["cheapest_in"]
    assert sorted(stretch["may_be"]) == ["harl", "tolk"]


def test_other_prices_that_change_nothing_are_said_to_change_nothing(tmp_path: Path) -> None:
    _, text = built(tmp_path, MUST, yaml(tolk=TWO_PRICES.replace("95 EUR", "62 EUR")))
    assert "At none of those others would anybody's place for the money be another." in text


def test_a_price_in_another_currency_is_no_other_price(tmp_path: Path) -> None:
    _, text = built(tmp_path, MUST, yaml(tolk=TWO_PRICES.replace("55 to 95 EUR", "95 USD")))
    assert "What counts is the price that was paid last" not in text


def we_say(best: str) -> str:
    return f"we say: {{best for the money: {best}}}\n"


@pytest.mark.parametrize(
    ("verdict", "text", "says"),
    [
        (GROUPS + MUST + we_say("wenn"), "", "Wenn Duo is out: soot. So nothing here bears it out as best for the money."),
        (GROUPS + MUST + we_say("harl"), "", "Harl One costs more than Tolk Beam, and is worth more in over 99 of 100 draws. Whether what another is worth more"),
        (GROUPS + MUST + we_say("tolk"), "", "Tolk Beam costs less than Harl One, and is worth more in under 1 of 100 draws. Whether what another is worth more"),
        (GROUPS + MUST + we_say("harl"), yaml(harl="paid: 60 EUR"), "That bears out Harl One as best for the money."),
        (GROUPS + we_say("harl"), yaml(harl="paid: 30 EUR"), "That bears out Harl One as best for the money."),
        (GROUPS + MUST + we_say("tolk"), yaml(harl="paid: 60 EUR"), "That isn't borne out: Tolk Beam costs as much as Harl One or more, and over all that is weighed is worth less, firmly."),
        (MUST + we_say("tolk"), yaml(harl="paid: 50 EUR"), "That isn't borne out: Tolk Beam costs more than Harl One, and is shown to be worse on one thing or more and better on none of the two things compared."),
        (MUST + we_say("harl"), "", "Nothing that costs no more, and isn't out, is better all round than Harl One. Whether what another is worth more"),
        (GROUPS + MUST + we_say("harl"), yaml(harl="maker: Harl"), "No price is noted for Harl One, so nothing here"),
        (GROUPS + MUST + we_say("harl"), yaml(harl="paid: 90 USD"), "No other price is noted in USD to hold Harl One against"),
    ],
)  # fmt: skip
def test_the_authors_best_for_the_money_has_an_answer_of_its_own(
    verdict: str, text: str, says: str, tmp_path: Path
) -> None:
    _, page = built(tmp_path, verdict, text)
    assert "For the money. " in page
    assert says in page


def test_prices_alone_are_no_verdict_and_it_is_said(tmp_path: Path) -> None:
    _, text = built(tmp_path, MUST, soot={"harl": 30.0, "tolk": 12.0, "wenn": 14.0})
    assert "No overall verdict was made: nothing was set to be weighed, and we name no best." in text


def test_where_one_is_first_on_all_it_is_named_beside_what_was_not_weighed(tmp_path: Path) -> None:
    told, text = built(tmp_path, MUST)
    assert told["winner"] == "harl"
    assert "and we name no best; Harl One is alone in first place on all that was ranked." in text


def test_an_authors_verdict_or_a_weighed_one_needs_no_such_sentence(tmp_path: Path) -> None:
    for n, verdict in enumerate((we_say("harl"), GROUPS)):
        _, text = built(tmp_path / str(n), verdict)
        assert "Nothing was set to be weighed" not in text
        assert "No overall verdict was made" not in text
