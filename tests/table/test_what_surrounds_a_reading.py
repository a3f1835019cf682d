"""Temperatures that are steps, facts of one pass, prices, claims, photographs and moments: each said where it bears."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from reportgen.charts.intervals import band_of
from tests.campaigns import result_of
from tests.evaluation.bench import all_stages
from tests.pages.reading import Element
from tests.photographs import SECRETS, photograph
from tests.table.bench import row, row_of_sheet, site, stands_wherever_it_bears, working_of

STEP = 5 / 9  # K in an interval of 1 °F, exact: NIST SP 811 (2008), B.8; IEEE/ASTM SI 10
WARM = """\
title: Which pot warms its handle least?
who pays: us
show: [°F]
contenders:
  corvane:
    title: Corvane Sol
    says: Its handle got [90 °F](value:rise/corvane) warmer.
    claims:
      - {says: The handle gets no more than 99 °F warmer, source: box, quantity: rise, at most: 99 °F}
      - {says: The handle gets no more than 81 °F warmer, source: page, quantity: rise, at most: 81 °F}
  ostler: Ostler Mk II
tests:
  handle:
    title: Handle
    readings: {file: readings.csv, columns: {cold: {unit: °F, instrument: probe}, hot: {unit: °F, instrument: probe}}}
    quantities:
      rise: {title: Rise, formula: hot - cold + drift, unit: K, better: lower}
      top: {title: Hottest, formula: hot, unit: °C, better: lower}
    headline: rise
    assumed: {drift: {within: 1.8 °F, because: the room warmed while we boiled}}
instruments: {probe: "0.1 °F, accuracy ±0.9 °F"}
readings: readings.csv
verdict: {must: [{quantity: rise, at most: 99 °F}]}
"""


@row("a difference in temperature")
def test_ninety_degrees_fahrenheit_of_difference_are_fifty_kelvin_wherever_one_is_written(tmp_path: Path) -> None:
    """In a formula, a claim, an instrument's accuracy and an assumption's width; a point keeps its zero."""
    seen = site(tmp_path, WARM, readings="contender,cold,hot\ncorvane,68,158\nostler,68,162.5\n")
    rise, top = (result_of(seen.told, q, "corvane") for q in ("rise", "top"))
    assert (rise["value"], rise["unit"]) == (pytest.approx(90 * STEP), "K") == (pytest.approx(50), "K")
    assert top["value"] == pytest.approx((158 - 32) * 5 / 9)  # 70 °C
    # the probe's offset cancels between hot and cold; two steps of 0.1 °F and the drift of ±1.8 °F, uniform, remain
    witness = math.sqrt(2 * (0.1 * STEP) ** 2 / 12 + (1.8 * STEP) ** 2 / 3)
    assert rise["u"] == pytest.approx(witness, rel=1e-9)
    assert top["u"] == pytest.approx(math.sqrt((0.9 * STEP) ** 2 / 3 + (0.1 * STEP) ** 2 / 12), rel=1e-9)
    at = {c["claim"]: (c["outcome"], c["reason"]["numbers"]["at_most"]) for c in seen.told["claims"]}
    assert at == {  # 50 K against 99 °F = 55 K and 81 °F = 45 K of difference, never 37.2 °C and 27.2 °C
        "The handle gets no more than 99 °F warmer": ("supported", pytest.approx(55)),
        "The handle gets no more than 81 °F warmer": ("contradicted", pytest.approx(45)),
    }
    stands_wherever_it_bears(
        seen, "drift is taken as 0 °F, give or take 1.8 °F", "handle", on=("corvane", "ostler"), quantity="rise"
    )
    assert "50" in row_of_sheet(seen, "corvane", "Rise")
    assert "70" in row_of_sheet(seen, "corvane", "Hottest")
    sheet = seen.text("contenders/corvane")
    assert "at most 99 °F (55 K)" in sheet
    assert "at most 81 °F (45 K)" in sheet
    assert "rise at most 99 °F, and it" not in sheet
    for who in ("corvane", "ostler"):
        assert "meets the condition: rise at most 99 °F (55 K)." in seen.text("index"), who
    (also,) = rise["also"]
    assert (also["unit"], also["value"]) == ("°F", pytest.approx(90))
    assert not [f for f in seen.told["findings"] if f["rule"] == "drifted-number"], "90 °F of difference are 50 K"
    assert "Its handle got 90.0 °F warmer." in sheet
    assert "158 °F" in working_of(seen, "handle", "rise", "corvane")


@row("a difference in temperature")
def test_a_difference_read_against_another_is_a_step(tmp_path: Path) -> None:
    yaml = (
        "title: T\nwho pays: us\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\n"
        "measure: {heat: 'one reading, °C, lower'}\nreadings: readings.csv\n"
    )
    seen = site(tmp_path, yaml, readings="contender,heat\nostler,55.2\ncorvane,ostler + 90 °F\n")
    assert result_of(seen.told, "heat", "corvane")["value"] == pytest.approx(55.2 + 50)
    assert "ostler + 90 °F" in working_of(seen, "heat", "heat", "corvane")
    assert "105" in row_of_sheet(seen, "corvane", "Heat")


@row("a difference in temperature")
def test_what_matters_of_a_temperature_is_a_step_in_the_chart_too(tmp_path: Path) -> None:
    """The band behind the leader reaches as far as 9 °F of difference, which are 5 °C of it, and not −12.8 °C."""
    yaml = (
        "title: T\nwho pays: us\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\n"
        "measure: {heat: {kind: one reading, unit: °C, better: lower, matters: 9 °F}}\nreadings: readings.csv\n"
    )
    declared, _, told = all_stages(tmp_path, yaml, readings="contender,heat\ncorvane,50.2\nostler,62.4\n")
    band = band_of(declared.campaign.quantity("heat"), told.results)
    assert band == pytest.approx((50.2, 55.2))


@row("facts of one pass")
def test_wind_and_who_held_the_watch_stand_beside_the_pass(tmp_path: Path) -> None:
    yaml = (
        "title: T\nwho pays: us\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\n"
        "held the same: [water, pot]\nconditions: [wind, watch]\n"
        "measure: {boil time: 'timed, s, lower'}\nreadings: readings.csv\n"
    )
    rows = "contender,pass,boil time,wind,watch\ncorvane,1,212.4,1.5 m/s,Ann\nostler,1,230.1,1.0 m/s,Bo\n"
    seen = site(tmp_path, yaml, readings=rows + "ostler,2,226.4,2.0 m/s,Bo\ncorvane,2,214.9,0.5 m/s,Ann\n")
    told = [[p["conditions"] for p in result_of(seen.told, "boil-time", c)["by_pass"]] for c in ("corvane", "ostler")]
    assert told == [
        [{"wind": "1.5 m/s", "watch": "Ann"}, {"wind": "0.5 m/s", "watch": "Ann"}],
        [{"wind": "1.0 m/s", "watch": "Bo"}, {"wind": "2.0 m/s", "watch": "Bo"}],
    ]
    text = seen.text("tests/boil-time")
    rows_shown = [[cell.text for cell in r.children] for r in seen.page("tests/boil-time").all("tr")]
    for line in (["A Corvane Sol", "Pass 1", "1.5 m/s", "Ann"], ["B Ostler Mk II", "Pass 2", "2.0 m/s", "Bo"]):
        assert line in rows_shown
    assert "Watch was not the same for all contenders, which may have moved what was measured." in text
    assert "Wind varied from pass to pass; what the contenders met overlaps." in text
    assert "The same for every contender: water and pot." in text


@row("a price range, listed or paid, with date and currency")
def test_a_price_is_shown_as_paid_or_listed_on_its_day_and_a_range_stays_one(tmp_path: Path) -> None:
    yaml = """\
title: T
who pays: us
contenders:
  corvane: {title: Corvane Sol, prices: [{paid: 89.00 EUR, date: 2026-05-02, where: a shop in town}]}
  ostler: {title: Ostler Mk II, prices: [{listed: 90 to 120 EUR, date: 2026-05-20}]}
  tamsin: {title: Tamsin, prices: [{listed: 80 to 95 EUR, date: 2026-05-21}]}
  brindle: {title: Brindle, prices: [{listed: 60 to 70 USD, date: 2026-05-22}]}
measure: {boil time: "timed, s, lower"}
readings: readings.csv
"""
    rows = "contender,pass,boil time\n" + "".join(
        f"{who},{n},{start + n % 2}\n" for n in range(1, 6) for who, start in
        (("corvane", 200), ("ostler", 300), ("tamsin", 300), ("brindle", 400))
    )  # Corvane is faster by a hundred seconds in every pass, and scatters by one  # fmt: skip
    seen = site(tmp_path, yaml, readings=rows)
    beaten = {v["contender"]: v["dominated_by"] for v in seen.told["verdict"]["value"]}
    assert beaten["ostler"] == ["corvane"], "faster, and at 89 EUR cheaper than the lowest of 90 to 120 EUR"
    assert beaten["tamsin"] == [], "faster, but 80 to 95 EUR may be less than 89 EUR"
    assert beaten["brindle"] == [], "slower than all, and priced in another currency"
    index = seen.text("index")
    for price in ("89.00 EUR", "90 to 120 EUR", "80 to 95 EUR", "60 to 70 USD"):
        assert price in index
    assert "no rate is assumed: only prices in one currency are compared" in index
    sheets = {c: seen.text(f"contenders/{c}") for c in ("corvane", "ostler")}
    assert "89.00 EUR (a shop in town, 2 May 2026)" in sheets["corvane"].split("Price paid", 1)[1]
    assert "90 to 120 EUR (20 May 2026)" in sheets["ostler"].split("listed", 1)[1]


CLAIMS = """\
title: T
who pays: us
contenders:
  corvane:
    title: Corvane Sol
    claims:
      - {says: {box: 6 kW, sticker: 7 kW}, quantity: power}
      - {says: Made of steel throughout, source: the page, looked: "no, the feet are plastic"}
      - {says: The lightest in its class, source: the page, testable: no, why: The class is not said.}
  ostler: Ostler Mk II
measure: {power: "one reading, kW, higher"}
readings: readings.csv
"""


@row("the maker contradicts itself; a claim settled by looking; one that no number can test")
def test_claims_that_contradict_each_other_were_looked_at_or_cannot_be_tested(tmp_path: Path) -> None:
    seen = site(tmp_path, CLAIMS, readings="contender,power\ncorvane,5.9\nostler,5.1\n")
    outcomes = [(c["outcome"], c["sources"], c["looked"]) for c in seen.told["claims"]]
    assert outcomes == [
        ("not tested", {"box": "6 kW", "sticker": "7 kW"}, None),
        ("contradicted", {"the page": "Made of steel throughout"}, "no, the feet are plastic"),
        ("not tested", {"the page": "The lightest in its class"}, None),
    ]
    odds, looked, none = (seen.page("contenders/corvane").one(id=c["anchor"]) for c in seen.told["claims"])
    assert [q.text for q in odds.all("q")] == ["6 kW", "7 kW"]
    assert [s.text for s in odds.all(class_="source")] == ["box", "sticker"]
    assert "contradicts itself" in odds.text
    assert "5.9" in odds.text, "what was measured stands beside what can't be held against it"
    assert looked.one(class_="outcome").text.startswith("Contradicted for the one we bought.")
    assert "no, the feet are plastic" in looked.text
    assert none.one(class_="outcome").text.startswith("Not tested.")
    assert "No number could test it" in none.text or "no number could test it" in none.text
    assert "The class is not said." in none.text


FILMED = """\
title: T
who pays: us
contenders:
  corvane: {title: Corvane Sol, photo: box, film: main 12s}
  ostler: Ostler Mk II
films:
  main: {title: The whole afternoon, address: "https://example.org/films/a.mp4", length: 12m30s}
photos:
  box: A cardboard box, its upper left corner pushed in.
  display: The watch reads 212.4 s.
  tipped: The windscreen lies on its side.
measure: {boil time: "timed, s, lower"}
incidents:
  - {what: The windscreen fell over and was put back., contender: ostler, pass: 2, photo: tipped, film: main 4m20s}
readings: readings.csv
"""


def links(page: Element) -> dict[str, str]:
    """Address → words of every link."""
    return {a.attrs["href"]: a.text for a in page.all("a") if "href" in a.attrs}


@row("moments in the film, photographs")
def test_moments_open_the_film_at_their_second_and_photographs_say_what_they_show(tmp_path: Path) -> None:
    rows = "contender,pass,boil time,photo,film\ncorvane,1,212.4,display,2m10s\nostler,1,230.1,,\nostler,2,226.4,,\n"
    pictures = {f"attachments/{name}.jpg": photograph(600, 400) for name in ("box", "display", "tipped")}
    seen = site(tmp_path, FILMED, readings=rows + "corvane,2,214.9,,\n", **pictures)
    test, index, sheet = (seen.page(a) for a in ("tests/boil-time", "index", "contenders/corvane"))
    # W3C Media Fragments URI 1.0, 4.2.1: t=, seconds from the beginning; 4 min 20 s are 260
    film = "https://example.org/films/a.mp4#t="
    assert f"{film}130" in links(test), "the moment of the reading"
    assert f"{film}260" in links(test)
    assert f"{film}260" in links(index)
    assert f"{film}260" in links(seen.page("contenders/ostler"))
    assert f"{film}12" in links(sheet), "how it came"
    assert "4m20s" in links(test)[f"{film}260"] or "4 min 20 s" in links(test)[f"{film}260"]
    shown = {picture.attrs["alt"] for page in (test, index, sheet) for picture in page.all("img")}
    assert shown >= {
        "A cardboard box, its upper left corner pushed in.",
        "The watch reads 212.4 s.",
        "The windscreen lies on its side.",
    }
    assert "The watch reads 212.4 s." in {p.attrs["alt"] for p in test.all("img")}, "the display beside its reading"
    caveat = stands_wherever_it_bears(seen, "The windscreen fell over and was put back.", "boil-time", on=("ostler",))
    assert [caveat["photos"], caveat["film"]["seconds"]] == [["tipped"], 260]
    for made in (seen.folder / ".site").rglob("*"):
        if made.suffix in {".jpg", ".webp", ".png"}:
            assert not any(secret in made.read_bytes() for secret in SECRETS), made
