"""Price ranges stay ranges, and two currencies are never held against each other."""

from __future__ import annotations

import html
import re
from pathlib import Path

from tests.campaigns import compile_campaign, results_of

YAML = """\
title: Which lamp for the money?
contenders:
  harl: {title: Harl One, HARL}
  tolk: {title: Tolk Beam, TOLK}
measure: {run time: "timed, min, higher"}
readings: readings.csv
"""
READINGS = "contender,pass,run time\n" + "".join(
    f"harl,{n},{100 + n}\ntolk,{n},{200 + n}\n" for n in range(1, 6)
)  # Tolk runs twice as long in every pass: nobody needs a test of significance to see it


def built(place: Path, harl: str, tolk: str) -> tuple[dict[str, list[str]], str]:
    """Who dominates whom, and the words of the campaign's page."""
    told = compile_campaign(place, YAML.replace("HARL", harl).replace("TOLK", tolk), readings=READINGS)
    page = (place / "stoves/.site/stoves/index.html").read_text(encoding="utf-8")
    text = " ".join(html.unescape(re.sub(r"<[^>]+>", " ", page)).split())
    return {v["contender"]: v["dominated_by"] for v in told["verdict"]["value"]}, text


def test_a_range_that_lies_above_is_dearer(tmp_path: Path) -> None:
    beaten, text = built(tmp_path, "listed: 60 to 75 EUR", "listed: 40 to 60 EUR")
    assert beaten == {"harl": ["tolk"], "tolk": []}
    assert "60 to 75 EUR" in text
    assert "lying line is a price range" in text


def test_ranges_that_overlap_settle_nothing(tmp_path: Path) -> None:
    beaten, _ = built(tmp_path, "listed: 60 to 75 EUR", "listed: 40 to 61 EUR")
    assert beaten == {"harl": [], "tolk": []}


def test_what_was_paid_counts_before_what_is_listed(tmp_path: Path) -> None:
    beaten, text = built(
        tmp_path, "listed: 20 EUR, paid: 70 EUR", "prices: [{listed: 90 EUR, date: 2026-05-02}, {paid: 60 EUR}]"
    )
    assert beaten == {"harl": ["tolk"], "tolk": []}
    assert "70 EUR" in text


def test_two_currencies_are_not_compared_and_the_page_says_so(tmp_path: Path) -> None:
    beaten, text = built(tmp_path, "paid: 70 EUR", "paid: 60 USD")
    assert beaten == {"harl": [], "tolk": []}
    assert "Prices are in EUR and USD, and no rate is assumed: only prices in one currency are compared." in text
    assert "No other is priced in EUR." in text
    assert "No other is priced in USD." in text


def test_one_without_a_price_is_left_out_of_the_money_and_named(tmp_path: Path) -> None:
    beaten, text = built(tmp_path, "paid: 70 EUR", "maker: Tolk")
    assert beaten == {"harl": []}
    assert "No price is noted for Tolk Beam." in text


TWO_THINGS = """\
title: Which kettle for the money?
contenders:
  harl: {title: Harl One, paid: 25 EUR}
  tolk: {title: Tolk Beam, paid: 42 EUR}
  wenn: {title: Wenn Duo, paid: 50 EUR}
  ruske: {title: Ruske, maker: Ruske}
measure:
  left: one reading, g, lower
  heat: one reading, °C, lower
readings: readings.csv
"""
OF_TWO = "contender,pass,left,heat\n" + "".join(
    f"harl,{n},10.{n},80.{n}\ntolk,{n},15.{n},40.{n}\nwenn,{n},over 30,60.{n}\nruske,{n},12.{n},70.{n}\n"
    for n in range(1, 5)
)  # Harl leaves 5 g less, Tolk stays 40 degrees cooler, in every pass


def test_the_chart_tells_of_the_one_thing_it_draws_and_the_table_of_all(tmp_path: Path) -> None:
    """Beaten on the drawn quantity by a cheaper one, yet better on the other: beaten in the chart, not in the table."""
    told = compile_campaign(tmp_path, TWO_THINGS, readings=OF_TWO)
    assert {v["contender"]: v["dominated_by"] for v in told["verdict"]["value"]}["tolk"] == []
    page = (tmp_path / "stoves/.site/stoves/index.html").read_text(encoding="utf-8")
    text = " ".join(html.unescape(re.sub(r"<[^>]+>", " ", page)).split())
    assert "On left alone, Tolk Beam is beaten by Harl One at no higher price." in text
    assert "an open mark is beaten on this by one that costs no more" in text
    assert "Not drawn: Wenn Duo (more than 30" in text
    assert "Ruske (no price is noted)." in text
    assert "Harl One costs least." in text
    assert "Nothing that costs no more is better all round than Tolk Beam." in text
    assert "“All round” means: shown to be better on one or more of the two things compared, and worse on none." in text


WEIGHED = """\
title: Which kettle for the money?
contenders:
  harl: {title: Harl One, paid: 25 EUR}
  tolk: {title: Tolk Beam, paid: 42 EUR}
measure:
  left: one reading, g, lower
  heat: one reading, °C, lower
readings: readings.csv
"""
THRIFT = "groups: {thrift: {weight: 1, criteria: {left: {worst: 30 g, best: 0 g}}}}\n"


def test_who_is_beaten_for_the_money_is_told_over_what_and_where_it_is_better_after_all(tmp_path: Path) -> None:
    """Tolk is cooler by 40 degrees in every pass: "better on nothing compared" would be untrue."""
    rows = "".join(f"{row}\n" for row in OF_TWO.splitlines() if not row.startswith(("wenn", "ruske")))
    compile_campaign(tmp_path, WEIGHED, readings=rows, **{"verdict.yaml": THRIFT})
    page = (tmp_path / "stoves/.site/stoves/index.html").read_text(encoding="utf-8")
    text = " ".join(html.unescape(re.sub(r"<[^>]+>", " ", page)).split())
    assert "is shown to be worse on left, the one thing the verdict weighs." in text
    assert "Outside these, Tolk Beam is shown to be better than Harl One on heat." in text.replace(" .", ".")
    assert "better on nothing" not in text


BOTH = """\
groups:
  thrift: {weight: 80, criteria: {left: {worst: 30 g, best: 0 g}}}
  touch: {weight: 20, criteria: {heat: {worst: 90 °C, best: 30 °C}}}
"""


def test_who_is_beaten_is_told_for_each_thing_and_over_all_that_is_weighed(tmp_path: Path) -> None:
    """Left: 0.67 against 0.5; heat: 0.17 against 0.83. At 80 to 20 Harl has 0.57 and Tolk 0.57; at 95 to 5 Harl is worth
    more beyond any scatter here (worked out by hand)."""
    rows = "".join(f"{row}\n" for row in OF_TWO.splitlines() if not row.startswith(("wenn", "ruske")))
    weights = BOTH.replace("80,", "95,").replace("20,", "5,")
    told = compile_campaign(tmp_path, WEIGHED, readings=rows, **{"verdict.yaml": weights})
    value = {v["contender"]: v for v in told["verdict"]["value"]}
    assert value["tolk"]["on"] == {"left": ["harl"], "heat": []}
    assert value["harl"]["on"] == {"left": [], "heat": []}  # Tolk is cooler, and dearer
    assert (value["tolk"]["dominated_by"], value["tolk"]["on_verdict"]) == ([], ["harl"])
    page = (tmp_path / "stoves/.site/stoves/index.html").read_text(encoding="utf-8")
    text = " ".join(html.unescape(re.sub(r"<[^>]+>", " ", page)).split())
    assert "Tolk Beam costs more than Harl One, and over all that is weighed is worth less, firmly." in text
    assert "By whom each is beaten at no higher price Contender Left Heat A Harl One not beaten not beaten" in text


def test_a_must_on_yes_or_no_is_held_against_exact_limits(tmp_path: Path) -> None:
    yaml = WEIGHED.replace("  heat: one reading, °C, lower\n", "  lit: yes/no\n")
    rows = "contender,pass,left,lit\n" + "".join(f"harl,{n},10.{n},yes\ntolk,{n},15.{n},no\n" for n in range(1, 5))
    told = results_of(tmp_path, yaml, readings=rows, **{"verdict.yaml": "must: [{quantity: lit, at least: 90 %}]\n"})
    outcomes = {c["contender"]: c["outcome"] for c in told["verdict"]["conditions"]}
    assert outcomes == {"harl": "undecided", "tolk": "contradicted"}  # 4 of 4 leave 47 %, 0 of 4 at most 53 %
