"""What a reader without statistics is told beside the numbers, held against the numbers: every such sentence is true of
the page it stands on, and stands on no page where it would not be.

Sources: JCGM 100:2008, 4.2 and G.3 (pooled scatter, t), JCGM 100, 5.2 (an error in both results leaves their difference).
"""

from __future__ import annotations

import re
from math import sqrt
from pathlib import Path
from typing import Any

import pytest

from tests.campaigns import compile_campaign, result_of
from tests.pages.reading import Element, read

STOVES = ("corvane", "ostler", "brindle", "tamsin")
OVERLAP = "Ranges may overlap and the order still be sure: what the sound level meter may be off by"
MEASURED = (
    "title: T\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\nmeasure: {weight: 'one reading, g, lower, scale'}\n"
    "readings: readings.csv\n"
)


def page(site: Path, test: str) -> Element:
    return read((site / "demo-campaign" / "tests" / f"{test}.html").read_text(encoding="utf-8"))


def said(site: Path, test: str) -> str:
    return page(site, test).text.replace("\u00a0", " ")


def overlap(told: dict[str, Any], quantity: str) -> bool:
    """Whether two resolved results have ranges in common."""
    of = {c: result_of(told, quantity, c) for c in STOVES}
    pairs = [c for c in told["comparisons"] if c["quantity"] == quantity and c["resolved"]]
    ends = [(of[c["first"]], of[c["second"]]) for c in pairs]
    return any(max(a["low"], b["low"]) < min(a["high"], b["high"]) for a, b in ends)


def test_ranges_that_overlap_under_a_sure_order_are_explained_and_no_others(
    demo_told: dict[str, Any], demo_site: Path
) -> None:
    assert overlap(demo_told, "noise")
    assert OVERLAP in said(demo_site, "noise")
    assert not overlap(demo_told, "boil-time")
    assert "Ranges may overlap" not in said(demo_site, "boil-time")


def test_a_lead_of_single_runs_says_that_no_repeat_was_seen(demo_site: Path) -> None:
    sentence = "Each was run once: how far a repeat would differ was stated before testing, not seen here."
    assert sentence in said(demo_site, "noise")
    assert "Each was run once" not in said(demo_site, "boil-time")


@pytest.mark.parametrize(("test", "unit"), [("boil-time", "s"), ("gas-burned", "g")])
def test_the_scatter_for_a_range_is_what_its_sentence_makes_it_of(demo_site: Path, test: str, unit: str) -> None:
    text = said(demo_site, test)
    (gaps, single) = re.findall(
        rf"all of them taken out: ([\d.]+) {unit} \(\d+ degrees of freedom\)\. For the range of one by itself: "
        rf"([\d.]+) {unit} ",
        text,
    )[0]
    (listed,) = re.findall(rf"one time less than it has passes: ([^:]*? {unit} [^:]*?passes\))\.", text)[:1]
    counts = {"three": 3, "four": 4}
    each = [(float(s), counts[n] - 1) for s, n in re.findall(rf"([\d.]+) {unit} \((\w+) passes\)", listed)]
    assert len(each) == len(STOVES)
    pooled = sqrt(sum(s * s * n for s, n in each) / sum(n for _, n in each))
    assert pooled == pytest.approx(float(single), abs=0.6 * 10 ** -len(single.partition(".")[2]))
    assert float(gaps) < float(single)
    assert f"The scatter used is {single} {unit} for one" in text


def test_pairs_without_the_winner_are_said_to_have_wider_ranges_where_they_have(
    demo_told: dict[str, Any], demo_site: Path
) -> None:
    of = [c for c in demo_told["comparisons"] if c["quantity"] == "boil-time"]
    winners = [c["high"] - c["low"] for c in of if "brindle" in (c["first"], c["second"])]
    others = [c["high"] - c["low"] for c in of if "brindle" not in (c["first"], c["second"])]
    assert max(winners) < min(others)
    assert "Pairs without Brindle Dart are held to a wider range" in said(demo_site, "boil-time")
    assert "held to a wider range" not in said(demo_site, "gas-burned")  # nobody is alone in first place


def test_what_ranges_allow_for_is_what_is_in_their_budgets(demo_told: dict[str, Any], demo_site: Path) -> None:
    about = "Of 100 such ranges about 95 hold the true value, with "
    for test, quantity, allowed in (
        ("noise", "noise", "the instrument and a scatter between passes that was stated beforehand"),
        ("boil-time", "boil-time", "the scatter between passes"),
        ("gas-burned", "heat-in-the-gas", "the constants and the scatter between passes"),
    ):
        assert f"{about}{allowed} allowed for." in said(demo_site, test)
        sorts = {b["sort"] for c in STOVES for b in result_of(demo_told, quantity, c)["budget"]}
        assert bool(sorts & {"offset", "gain", "accuracy", "step"}) == ("instrument" in allowed)
        assert ("constant" in sorts) == ("constants" in allowed)


def test_first_place_says_where_what_was_left_out_would_change_places(
    demo_told: dict[str, Any], demo_site: Path
) -> None:
    firsts = {f["quantity"]: f["order_changes_without"] for f in demo_told["first"]}
    assert firsts["gas-burned"]
    assert not firsts["boil-time"]
    assert "If what was left out counted, Tamsin Lee might be first too." in said(demo_site, "gas-burned")
    assert "what was left out counted" not in said(demo_site, "boil-time")


def test_a_total_rounded_once_more_is_the_uncertainty_that_is_printed(demo_site: Path) -> None:
    """1.4497 is printed as 1.4; with three decimals it would be 1.450, which a reader rounds to 1.5."""
    text = said(demo_site, "boil-time")
    assert "Standard uncertainty 1.4 s." in text
    (total,) = set(re.findall(r"take the root\s*([\d.]+) s", text))
    assert f"{float(total):.1f}" == "1.4"
    assert total == "1.4497"


def test_how_a_range_is_reckoned_is_folded_for_specialists(demo_site: Path) -> None:
    found = 0
    for working in page(demo_site, "noise").all("div", class_="worked"):
        (folded,) = working.all("details", class_="specialists")
        assert "Student’s t with" in folded.text
        outside = [p.text for p in working.all("p") if p.text not in [q.text for q in folded.all("p")]]
        assert not any("Student’s t" in p or "Monte" in p for p in outside)
        found += 1
    assert found == len(STOVES)


def test_each_step_of_a_display_moves_a_pass_by_half_its_size(tmp_path: Path) -> None:
    compile_campaign(
        tmp_path,
        MEASURED.replace("one reading, g, lower, scale", "weighed before and after, g, lower, scale"),
        readings="contender,pass,weight before,weight after\n"
        + "".join(
            f"{c},{n},{300 + n}.2,{280 + n * k}.{2 + 2 * n}\n"
            for k, c in ((2, "corvane"), (3, "ostler"))
            for n in (1, 2)
        ),
        **{"instruments.yaml": "scale: 0.2 g\n"},
    )
    text = read((tmp_path / "stoves/.site/stoves/tests/weight.html").read_text(encoding="utf-8")).text
    assert "can move a pass by 0.10 g at most for each reading" in text.replace("\u00a0", " ")


def test_every_pair_and_budget_says_on_a_phone_what_its_numbers_are(demo_site: Path) -> None:
    """The heads of those tables are not shown there; their words stand with each number instead."""
    for cell in page(demo_site, "noise").one("table", class_="versus").all("td", class_="gap"):
        assert cell.attrs["data-head"] == "First less second"
    for row in page(demo_site, "noise").all("table", class_="budget"):
        heads = [c.attrs.get("data-head", "") for r in row.one("tbody").all("tr") for c in r.all("td")[1:]]
        assert heads == ["Worked out", "In the result", "Share"] * (len(heads) // 3)
        assert heads


def test_why_there_is_no_result_may_break_on_a_sheet_as_it_is_many_words(demo_site: Path) -> None:
    sheet = read((demo_site / "demo-campaign/contenders/brindle.html").read_text(encoding="utf-8"))
    (cell,) = [td for td in sheet.all("td") if td.text.startswith("none of its runs finished")]
    assert cell.attrs["class"] == "value said"
