"""Claims against what was found: conditions, parts, counts, shares, what would have shown them, and mistakes in them."""

from __future__ import annotations

import html
import re
from pathlib import Path
from typing import Any

import pytest

from tests.campaigns import compile_campaign, refusal, results_of

YAML = """\
title: Which kettle?
held the same: [one litre of tap water]
contenders:
  aven:
    title: Aven
    claims:
      - {says: as printed, source: box, CLAIM}
  brook: Brook
measure: MEASURE
readings: readings.csv
"""
BOIL = "boil time: timed, s, lower"
TIMES = (
    "contender,pass,boil time\naven,1,200.1\nbrook,1,221.0\nbrook,2,220.2\naven,2,201.3\naven,3,199.9\nbrook,3,222.1\n"
)


def yaml(claim: str, measure: str = 'boil time: "timed, s, lower"') -> str:
    return YAML.replace("MEASURE", f"{{{measure}}}").replace("CLAIM", claim)


def claimed(claim: str, measure: str) -> str:
    title, _, how = measure.partition(": ")
    return yaml(claim, measure if "{" in how else f'{title}: "{how}"')


def held(place: Path, claim: str, measure: str = BOIL, rows: str = TIMES) -> dict[str, Any]:
    """The claim's row of the record."""
    (row,) = results_of(place, claimed(claim, measure), readings=rows)["claims"]
    assert isinstance(row, dict)
    return row


def shown(place: Path, claim: str, measure: str = BOIL, rows: str = TIMES) -> tuple[dict[str, Any], str]:
    """The same, and the words of the contender's sheet."""
    (row,) = compile_campaign(place, claimed(claim, measure), readings=rows)["claims"]
    page = (place / "stoves/.site/stoves/contenders/aven.html").read_text(encoding="utf-8")
    text = html.unescape(re.sub(r"<[^>]+>", " ", page)).replace("\u2019", "'").replace("\u00a0", " ")
    return row, " ".join(text.split())


def test_a_claim_under_another_condition_is_not_tested_and_both_conditions_are_said(tmp_path: Path) -> None:
    row, text = shown(tmp_path, "quantity: boil time, at most: 210 s, under: sea level")
    assert (row["outcome"], row["reason"]["code"]) == ("not tested", "other-condition")
    assert "It is claimed under another condition (sea level); under ours (one litre of tap water) we measured" in text
    row, text = shown(
        tmp_path / "b", 'quantity: boil time, at most: 210 s, under: sea level, tested so: "no, the yard lies 900 m up"'
    )
    assert row["outcome"] == "not tested"
    assert "(sea level); under ours (the yard lies 900 m up) we measured" in text


def test_a_claim_whose_condition_the_test_met_is_tested(tmp_path: Path) -> None:
    for n, claim in enumerate(('under: "One litre of tap water"', "under: sea level, tested so: yes")):
        row, text = shown(tmp_path / str(n), f"quantity: boil time, at most: 210 s, {claim}")
        assert (row["outcome"], row["scope"]) == ("supported", "repeat")
        assert "It is claimed under this condition, and so it was tested:" in text


def test_what_would_have_shown_an_undecided_claim_is_printed_on_the_safe_side(tmp_path: Path) -> None:
    """Three passes each, pooled s, ν = 4: the acceptance limit lies t(.95, 4)·s/√3 inside (JCGM 106:2012, 8.3)."""
    from math import sqrt

    from scipy.stats import t as student

    row, text = shown(tmp_path, "quantity: boil time, at most: 200.5 s")
    aven, brook = (200.1, 201.3, 199.9), (221.0, 220.2, 222.1)
    squares = sum((x - sum(of) / 3) ** 2 for of in (aven, brook) for x in of)
    limit = 200.5 - float(student.ppf(0.95, 4)) * sqrt(squares / 4 / 3)
    assert row["outcome"] == "undecided"
    assert row["accept"][0] is None
    assert row["accept"][1] == pytest.approx(limit, rel=1e-6)
    (printed,) = re.findall(r"It would have to measure at most ([\d.]+) s to count as shown\.", text)
    assert limit - 0.1 < float(printed) <= limit


def test_a_range_has_two_acceptance_limits_or_is_too_narrow(tmp_path: Path) -> None:
    row, text = shown(tmp_path / "a", "quantity: boil time, at least: 203 s, at most: 230 s")
    assert row["outcome"] == "contradicted"
    low, high = row["accept"]
    assert 203 < low < high < 230
    assert low - 203 == pytest.approx(230 - high, rel=1e-6)
    row, text = shown(tmp_path / "b", "quantity: boil time, is: 200 s, within: 0.1 s")
    assert row["accept"] is None
    assert "measured like this, no value would count as shown" in text


LIT = "lit: yes/no"


def tries(aven: int, of: int) -> str:
    rows = [f"aven,{n},{'yes' if n <= aven else 'no'}" for n in range(1, of + 1)]
    return "contender,pass,lit\nbrook,1,yes\n" + "\n".join(rows) + "\n"


def test_never_failing_cannot_be_shown_and_one_failure_contradicts_it(tmp_path: Path) -> None:
    """Clopper and Pearson: ten of ten leave a share of 0.05^(1/10) = 0.741 with 95 % confidence (closed form)."""
    row, text = shown(tmp_path / "a", "quantity: lit, at least: 100 %", LIT, tries(10, 10))
    assert (row["outcome"], row["reason"]["code"]) == ("undecided", "counted-share")
    assert row["reason"]["numbers"]["lower"] == pytest.approx(0.05**0.1, rel=1e-9)
    assert "It did so in 10 of 10 where the claim has at least 100 %" in text
    assert "With 95 % confidence it does so at least 74 % of the time. No number of tries can show" in text
    row = held(tmp_path / "b", "quantity: lit, at least: 100 %", LIT, tries(9, 10))
    assert row["outcome"] == "contradicted"


def test_how_often_is_held_against_exact_limits(tmp_path: Path) -> None:
    """59 of 59 is the least that shows 95 % with 95 % confidence: 0.95⁵⁹ = 0.0485 (common practice, closed form)."""
    assert held(tmp_path / "a", "quantity: lit, at least: 95 %", LIT, tries(59, 59))["outcome"] == "supported"
    assert held(tmp_path / "b", "quantity: lit, at least: 95 %", LIT, tries(58, 58))["outcome"] == "undecided"
    row, text = shown(tmp_path / "c", "quantity: lit, at least: 90 %", LIT, tries(3, 8))
    assert row["outcome"] == "contradicted"
    assert "of the time, each limit with 95 % confidence" in text


def test_a_share_above_one_is_refused(tmp_path: Path) -> None:
    text = yaml("quantity: lit, at least: 9", 'lit: "yes/no"')
    (found,) = refusal(tmp_path, text, readings=tries(9, 10))
    assert found.rule == "claim-share"
    assert found.place.line == 7


COUNT = "relights: count"
COUNTED = "contender,pass,relights\naven,1,{}\naven,2,{}\nbrook,1,3\nbrook,2,1\n"


def test_a_count_decides_of_this_run_alone(tmp_path: Path) -> None:
    """Garwood: none in two runs leaves up to 2.996/2 a run."""
    row, text = shown(tmp_path / "a", "quantity: relights, at most: 0", COUNT, COUNTED.format(0, 0))
    assert (row["outcome"], row["scope"]) == ("supported", "this run")
    assert row["reason"]["numbers"]["upper"] == pytest.approx(2.9957 / 2, abs=1e-4)
    assert "none so far still leaves up to 1.50 a run" in text
    row, text = shown(tmp_path / "b", "quantity: relights, at most: 0", COUNT, COUNTED.format(0, 1))
    assert (row["outcome"], row["scope"]) == ("contradicted", "this run")
    assert "In this run we counted" in text


def test_a_number_claimed_of_what_was_graded_is_not_tested(tmp_path: Path) -> None:
    row, text = shown(
        tmp_path, "quantity: grip, at least: 3", "grip: {kind: grade, grades: [poor, fair, good]}",
        "contender,pass,grip\naven,1,good\nbrook,1,fair\n",
    )  # fmt: skip
    assert (row["outcome"], row["reason"]["code"]) == ("not tested", "no-number")
    assert "what was seen is no number: good" in text


PARTS = "use: {kind: one reading, unit: g, better: lower, over parts: each}"
BY_PART = "contender,part,pass,use\n" + "".join(
    f"{c},{part},{n},{x + n / 10}\n"
    for c, x in (("aven", 20), ("brook", 30))
    for part, x in (("first evening", x), ("second evening", x + 50))
    for n in (1, 2, 3)
)


def test_a_claim_about_one_part_is_held_against_that_part(tmp_path: Path) -> None:
    row = held(tmp_path / "a", "quantity: use, at most: 40 g, part: First evening", PARTS, BY_PART)
    assert (row["outcome"], row["part"]) == ("supported", "First evening")
    row, text = shown(tmp_path / "b", "quantity: use, at most: 40 g, part: second evening", PARTS, BY_PART)
    assert row["outcome"] == "contradicted"
    assert "We measured 70.200 g" in text
    row = held(tmp_path / "c", "quantity: use, at most: 40 g", PARTS, BY_PART)
    assert (row["outcome"], row["reason"]["code"]) == ("not tested", "parts-apart")


def test_a_part_in_another_script_is_told_from_the_others(tmp_path: Path) -> None:
    readings = BY_PART.replace("first evening", "شعلة هادئة").replace("second evening", "شعلة قوية")
    row = held(tmp_path / "a", "quantity: use, at most: 40 g, part: شعلة هادئة", PARTS, readings)
    assert (row["outcome"], row["part"]) == ("supported", "شعلة هادئة")
    row = held(tmp_path / "b", "quantity: use, at most: 40 g, part: شعلة قوية", PARTS, readings)
    assert row["outcome"] == "contradicted"


@pytest.mark.parametrize(
    ("claim", "rule", "says"),
    [
        ("quantity: boil time, at least: 4 min, at most: 200 s", "claim-upside-down", "lies above"),
        ("quantity: boil time, at least: 240 s, at most: 200 s", "claim-upside-down", "lies above"),
        ("quantity: boil time, is: 200 s, within: -3 s", "wrong-value", "-3 s"),
        ("quantity: boil time, at most: 3 kg", "unit", "kg"),
        ("quantity: boil time, at most: 200 s, part: lid", "unknown-part", "lid"),
        ("quantity: boil time, at most: 200 s, tested so: yes", "claim-without-condition", "names no condition"),
        ("quantity: boil time, at most: 200 s, under: calm, tested so: perhaps", "claim-tested-how", "yes nor no"),
    ],
)
def test_a_claim_that_nothing_could_meet_is_refused_where_it_stands(
    tmp_path: Path, claim: str, rule: str, says: str
) -> None:
    found = refusal(tmp_path, yaml(claim, 'boil time: "timed, s, lower"'), readings=TIMES)
    assert found[0].rule == rule
    assert says in found[0].says
    assert found[0].place.line == 7


def test_what_is_shown_is_said_of_the_ones_that_were_bought(tmp_path: Path) -> None:
    _, text = shown(tmp_path / "a", "quantity: boil time, at most: 210 s")
    assert "Supported for the one we bought, under our conditions. We measured" in text
    several = yaml("quantity: boil time, at most: 260 s").replace("    claims:", "    specimens: [a, b]\n    claims:")
    rows = "contender,specimen,pass,boil time\naven,a,1,200.1\naven,b,1,200.6\nbrook,,1,221.0\n"
    compile_campaign(tmp_path / "b", several, readings=rows)
    page = (tmp_path / "b/stoves/.site/stoves/contenders/aven.html").read_text(encoding="utf-8")
    assert "Supported for the two we bought, under our conditions." in " ".join(re.sub(r"<[^>]+>", " ", page).split())


def test_of_several_bought_or_of_one_supplied_what_was_tested_is_spoken_of(tmp_path: Path) -> None:
    several = yaml("quantity: boil time, at most: 260 s")
    for n, more in enumerate(("specimens: [a, b]", "supplied by: the maker")):
        told = several.replace("    claims:", f"    {more}\n    claims:")
        specimen = "a" if n == 0 else ""
        rows = f"contender,specimen,pass,boil time\naven,{specimen},1,200.1\naven,{specimen},2,200.6\nbrook,,1,221.0\n"
        compile_campaign(tmp_path / str(n), told, readings=rows)
        page = (tmp_path / str(n) / "stoves/.site/stoves/contenders/aven.html").read_text(encoding="utf-8")
        text = " ".join(re.sub(r"<[^>]+>", " ", page).split())
        assert "Supported for the one we tested, under our conditions." in text
        assert "for the one we bought" not in text


def test_of_a_claim_that_contradicts_itself_the_outcome_says_which_figure_it_is_about(tmp_path: Path) -> None:
    """The box says 210 s, the sticker 190 s: 200 s supports one of them alone."""
    told = yaml("quantity: boil time, at most: 210 s").replace(
        "as printed, source: box", "{box: 210 s, sticker: 190 s}"
    )
    compile_campaign(tmp_path, told, readings=TIMES)
    page = (tmp_path / "stoves/.site/stoves/contenders/aven.html").read_text(encoding="utf-8")
    text = " ".join(re.sub(r"<[^>]+>", " ", page).split())
    assert "Supported for the one we bought, under our conditions. The maker contradicts itself" in text
    assert "Only at most 210 s is held against the readings." in text


def test_the_claim_leads_to_the_working_it_is_held_against(tmp_path: Path) -> None:
    shown(tmp_path, "quantity: boil time, at most: 210 s")
    page = (tmp_path / "stoves/.site/stoves/contenders/aven.html").read_text(encoding="utf-8")
    (claim,) = re.findall(r'<li class="claim.*?</li>', page, re.S)
    (href,) = re.findall(r'<a href="([^"]+)"', claim)
    file, _, anchor = href.partition("#")
    target = (tmp_path / "stoves/.site/stoves/contenders" / file).resolve().read_text(encoding="utf-8")
    assert f'id="{anchor}"' in target
