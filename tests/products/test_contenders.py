"""What was bought, unit by unit, and what was in the box: on the spec sheet, in the workings, in results.json."""

from __future__ import annotations

import html
import re
from pathlib import Path
from statistics import mean, stdev
from textwrap import dedent
from typing import Any

import pytest

from tests.campaigns import compile_campaign, refusal, result_of, results_of

LAMPS = """\
title: Which lamp lasts longest?
contenders:
  harl:
    title: Harl One
    specimens:
      A: H-1107
      B: {serial: H-1131, bought: {where: by post, date: 2026-04-11}, as received: Lens scratched.}
    in the box: [strap, charging lead: missing, pouch: there with a torn seam, spare band: two instead of one]
    claims:
      - {says: With a charging lead, source: box, included: charging lead}
      - {says: With a strap, source: box, included: strap}
      - {says: Two spare bands, source: box, included: spare band}
      - says: {box: 300 lm, sticker: 350 lm}
        quantity: run time
      - {says: Rubber seals, looked: "no, foam only"}
      - {says: Nobody makes a finer lamp, testable: no, why: Fineness isn't a number.}
      - {says: Runs eight hours at 5 °C, quantity: run time, at least: 8 h, under: 5 °C}
      - {says: Runs more than three hours, quantity: run time, at least: 3 h}
      - {says: Runs two hours at the most, quantity: run time, at most: 2 h}
  tolk: {title: Tolk Beam, specimens: [A, B]}
measure:
  run time: timed, min, higher, wall-watch
instruments: {wall-watch: "1 min, accuracy ±1 min"}
readings: readings.csv
"""
READINGS = """\
contender,specimen,pass,run time
harl,A,1,251
harl,a,2,249
harl,B,1,262
tolk,A,1,301
tolk,B,1,298
tolk,B,2,302
"""


@pytest.fixture(scope="module")
def lamps(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, dict[str, Any]]:
    place = tmp_path_factory.mktemp("lamps")
    return place / "stoves/.site/stoves", compile_campaign(place, LAMPS, readings=READINGS)


def text_of(page: Path) -> str:
    """A page's words, tags and folding aside."""
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", page.read_text(encoding="utf-8"))).replace("’", "'").split())


def claim(told: dict[str, Any], id: str) -> dict[str, Any]:
    (found,) = [c for c in told["claims"] if (c["contender"], c["id"]) == ("harl", id)]
    assert isinstance(found, dict)
    return found


def test_the_units_bought_stand_on_the_spec_sheet_with_their_serials(lamps: tuple[Path, dict[str, Any]]) -> None:
    sheet = text_of(lamps[0] / "contenders/harl.html")
    assert "The ones we bought" in sheet
    assert "Specimen A Serial H-1107." in sheet
    assert "Specimen B Serial H-1131, bought by post, 11 April 2026. Lens scratched." in sheet


def test_the_workings_say_which_unit_a_pass_was_run_on(lamps: tuple[Path, dict[str, Any]]) -> None:
    page = text_of(lamps[0] / "tests/run-time.html")
    assert re.search(r"H-1107.{0,40}[Pp]ass 1|[Pp]ass 1.{0,40}H-1107", page)
    assert re.search(r"H-1131.{0,40}[Pp]ass 1|[Pp]ass 1.{0,40}H-1131", page)


def test_the_record_holds_units_box_and_passes_by_unit(lamps: tuple[Path, dict[str, Any]]) -> None:
    harl = lamps[1]["contenders"][0]
    assert [(s["id"], s["serial"], s["bought_where"]) for s in harl["specimens"]] == [
        ("A", "H-1107", None),
        ("B", "H-1131", "by post"),
    ]
    assert harl["in_the_box"]["charging lead"] == "missing"
    assert harl["missing"] == ["charging lead"]
    passes = result_of(lamps[1], "run-time", "harl")["by_pass"]
    assert [(p["specimen"], p["pass"]) for p in passes] == [("A", "1"), ("A", "2"), ("B", "1")]


def test_each_unit_is_one_value_however_often_it_was_run(lamps: tuple[Path, dict[str, Any]]) -> None:
    """The mean of the means of its units (JCGM 100, H.5.2.1: the days' averages are averaged)."""
    assert result_of(lamps[1], "run-time", "harl")["value"] == pytest.approx(mean([mean([251, 249]), 262]))


def test_rows_that_name_no_specimen_are_of_the_usual_one(tmp_path: Path) -> None:
    told = results_of(
        tmp_path,
        """\
        title: Two of one
        contenders: {harl: {title: Harl, specimens: [A, B], usual specimen: a}, tolk: Tolk}
        measure: {run time: "timed, min, higher"}
        readings: readings.csv
        """,
        readings="contender,specimen,pass,run time\nharl,,1,251\ntolk,,1,300\nharl,B,1,249\n",
    )
    assert [p["specimen"] for p in result_of(told, "run-time", "harl")["by_pass"]] == ["A", "B"]


def test_the_page_speaks_of_specimens_where_specimens_were_compared(lamps: tuple[Path, dict[str, Any]]) -> None:
    """JUDGING 7 as the page tells it; two units of each of two products leave 2(2 - 1) = 2 degrees of freedom."""
    page = text_of(lamps[0] / "tests/run-time.html")
    assert "that chance could make with these specimens" in page
    assert re.search(r"Scatter between specimens of one product, the same for all: [\d.]+ min \(2 degrees", page)
    assert "the upright line is the mean of what each specimen gave" in page
    assert "What differs here is one specimen from another" in page
    assert "these passes" not in page


def test_what_the_box_lacked_is_said_once_and_shows_where_it_came_out(lamps: tuple[Path, dict[str, Any]]) -> None:
    sheet = text_of(lamps[0] / "contenders/harl.html")
    assert "Missing from the box: charging lead." in sheet
    assert "Spare band: two instead of one." in sheet
    assert "In the box strap, pouch (with a torn seam)" in sheet


@pytest.mark.parametrize(
    ("id", "outcome", "scope", "says"),
    [
        ("c1", "contradicted", "this run", "We opened the box and it was missing: charging lead."),
        ("c2", "supported", "this run", "We opened the box and found it there: strap."),
        ("c3", "undecided", "this run", "We opened the box and noted: spare band (two instead of one)."),
        ("c4", "not tested", None, "The maker contradicts itself: these can't both be true."),
        ("c5", "contradicted", "this run", "We looked: no, foam only."),
        ("c6", "not tested", None, "No number could test it. Fineness isn't a number."),
        ("c7", "not tested", None, "It is claimed under another condition (5 °C); under ours we measured"),
        ("c8", "supported", "repeat", "We measured"),
        (
            "c9",
            "contradicted",
            "repeat",
            "The maker contradicts itself: elsewhere it says “Runs more than three hours”.",
        ),
    ],
)
def test_a_claim_is_answered_by_what_bears_on_it(
    lamps: tuple[Path, dict[str, Any]], id: str, outcome: str, scope: str | None, says: str
) -> None:
    found = claim(lamps[1], id)
    assert (found["outcome"], found["scope"]) == (outcome, scope)
    assert says in text_of(lamps[0] / "contenders/harl.html")


def test_the_record_says_which_claims_are_at_odds(lamps: tuple[Path, dict[str, Any]]) -> None:
    odds = {c["id"]: c["at_odds"] for c in lamps[1]["claims"] if c["at_odds"]}
    assert odds == {"c4": ["c4"], "c8": ["c9"], "c9": ["c8"]}
    assert claim(lamps[1], "c4")["sources"] == {"box": "300 lm", "sticker": "350 lm"}
    assert claim(lamps[1], "c6")["reason"]["code"] == "not-testable"
    assert claim(lamps[1], "c7")["reason"]["code"] == "other-condition"


# JCGM 100:2008, H.5, table H.9 (from memory): ten days of five readings of a Zener standard. The table gives each
# day's mean and standard deviation, in microvolts above 10 V; the readings put here have just those.
DAYS = (172, 116, 13, 144, 106, 31, 60, 125, 163, 41)
WITHIN = (60, 77, 111, 101, 67, 93, 80, 73, 88, 86)


def test_days_of_a_voltage_standard_put_as_units_give_the_guides_uncertainty(tmp_path: Path) -> None:
    """s of the days' means is 57 µV and that of their mean 57/√10 = 18 µV, with 9 degrees of freedom (H.5.2.2)."""
    rows = ["contender,specimen,pass,voltage"]
    for day, (middle, s) in enumerate(zip(DAYS, WITHIN, strict=True), 1):
        of_day = [middle - s, middle - s, middle, middle + s, middle + s]
        assert (mean(of_day), stdev(of_day)) == (middle, s)
        rows += [f"zener,{day},{n},{v}" for n, v in enumerate(of_day, 1)]
    units = ", ".join(str(d) for d in range(1, 11))
    told = results_of(
        tmp_path,
        f"""\
title: A voltage standard, day by day
contenders: {{zener: {{title: Zener, specimens: [{units}]}}, other: Other}}
measure: {{voltage: "one reading, µV, lower"}}
not yet tested: [other]
instruments: {{}}
readings: readings.csv
""",
        readings="\n".join(rows) + "\n",
    )
    found = result_of(told, "voltage", "zener")
    assert found["value"] == pytest.approx(97.1)
    assert found["scatter"] == pytest.approx(57, abs=0.5)
    assert found["u"] == pytest.approx(18, abs=0.5)
    assert [(b["sort"], b["degrees"]) for b in found["budget"] if b["sort"] == "scatter"] == [("scatter", 9)]


BAD = [
    ("specimens: [A, B]", "harl,C,1,5", "unknown-specimen", "Harl has no specimen “C”; there are “A”, “B”."),
    ("specimens: [A, B]", "harl,,1,5", "unknown-specimen", "This row doesn't say which specimen of Harl it is of"),
    (
        "specimens: [A, B]\n    usual specimen: C",
        "harl,A,1,5",
        "unknown-specimen",
        "there is no specimen “C” of this contender",
    ),
    ("specimens: [A, a]", "harl,A,1,5", "duplicate-name", "there are two specimens “a” of this contender"),
    ("in the box: [pouch, Pouch]", "harl,,1,5", "duplicate-name", "“Pouch” stands here twice"),
    (
        "in the box: [pouch]\n    claims: [{says: With lead, included: poutch}]",
        "harl,,1,5",
        "unknown-item",
        "nothing in the box is called “poutch”",
    ),
    (
        "claims: [{says: With lead, included: lead}]",
        "harl,,1,5",
        "unknown-item",
        "nothing says what was in this contender's box",
    ),
    (
        "in the box: lead\n    claims: [{says: With lead, included: lead, looked: 'yes'}]",
        "harl,,1,5",
        "claim-settled-twice",
        "this claim is settled in two ways",
    ),
]


@pytest.mark.parametrize(("keys", "row", "rule", "says"), BAD, ids=[f"{b[2]} {b[3][:24]}" for b in BAD])
def test_a_slip_is_one_message_with_place_and_remedy(tmp_path: Path, keys: str, row: str, rule: str, says: str) -> None:
    (found,) = refusal(
        tmp_path,
        f"""\
title: T
contenders:
  harl:
    title: Harl
    {keys}
  tolk: Tolk
measure: {{run time: "timed, min, higher"}}
readings: readings.csv
""",
        readings=f"contender,specimen,pass,run time\n{row}\ntolk,,1,6\n",
    )
    assert (found.rule, found.severity) == (rule, "error")
    assert says in found.says
    assert found.place.line
    assert found.why
    assert found.do


def test_a_remark_about_one_unit_bears_on_its_passes_alone(tmp_path: Path) -> None:
    told = results_of(
        tmp_path,
        """\
title: Two of one
contenders: {harl: {title: Harl, specimens: [Unit A, Unit B]}, tolk: Tolk}
measure: {run time: "timed, min, higher"}
readings: readings.csv
exclude: [{contender: harl, specimen: unit b, because: Dropped on the way., decided: before the test}]
""",
        readings="contender,specimen,pass,run time\nharl,Unit A,1,251\nharl,unit-a,2,249\nharl,Unit B,1,99\ntolk,,1,300\n",
    )
    harl = result_of(told, "run-time", "harl")
    assert [(p["specimen"], p["excluded"]) for p in harl["by_pass"]] == [
        ("Unit A", None), ("Unit A", None), ("Unit B", "exclusion-1"),
    ]  # fmt: skip
    assert harl["value"] == 250


def test_a_claimed_value_without_a_tolerance_is_shown_beside_the_measured_one_and_asks_for_one(tmp_path: Path) -> None:
    """JCGM 106:2012, 7: conformity is held against tolerance limits; a value alone sets none."""
    yaml = """\
    title: Kettles
    who pays: us
    contenders:
      corvane: {title: Corvane, claims: [{says: 1000 W, source: sticker, quantity: power, is: 1000 W}, {says: 0.8 l, why: We never filled it.}]}
      ostler: Ostler
    measure: {power: "one reading, W, neither"}
    readings: {table: [[contender, power], [corvane, 1120], [ostler, 900]]}
    """
    told = compile_campaign(tmp_path, dedent(yaml))
    (found,) = [f for f in told["findings"] if f["rule"] == "claim-without-tolerance"]
    assert (found["severity"], found["line"]) == ("warning", 4)
    assert "`within:`" in found["do"]
    assert "`at least: 1000 W`" in found["do"]
    (claim, size) = told["claims"]
    assert (claim["outcome"], size["outcome"]) == ("not tested", "not tested")
    page = (tmp_path / "stoves/.site/stoves/contenders/corvane.html").read_text(encoding="utf-8")
    assert "not how near to that is near enough" in page
    assert "1120" in page
    assert "We never filled it." in page
