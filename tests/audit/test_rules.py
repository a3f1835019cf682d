"""Each rule of the audit finds what it is for, at its place, and stays silent on a clean campaign."""

from __future__ import annotations

from pathlib import Path

import pytest

from reportgen.audit.rules import RULES
from reportgen.audit.rules_fair import FAIR
from reportgen.audit.rules_measured import MEASURED
from reportgen.audit.rules_shown import SHOWN
from reportgen.build.run import audit_path
from reportgen.finding import Finding
from tests.audit.fairness_cases import CASES, ELSEWHERE
from tests.campaigns import write_campaign
from tests.photographs import photograph

HEAD = "title: T\nwho pays: Readers.\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\n"
MEASURE = "measure:\n  gas: one reading, g, lower, scale\nreadings: readings.csv\n"
SCALE = {"instruments.yaml": "scale: 0.1 g, up to 500 g, accuracy ±0.3 g\n"}
CLEAN = "contender,pass,gas\ncorvane,1,10.1\nostler,1,12.3\nostler,2,12.2\ncorvane,2,10.4\n"


def found(place: Path, yaml_text: str = HEAD + MEASURE, **files: str | bytes) -> list[Finding]:
    """What the audit says of a campaign whose scale and table may be replaced."""
    return list(audit_path(write_campaign(place, yaml_text, **{"readings": CLEAN, **SCALE, **files})))


def rules(findings: list[Finding]) -> set[str]:
    return {f.rule for f in findings}


def test_a_clean_campaign_leaves_nothing_to_say(tmp_path: Path) -> None:
    assert found(tmp_path) == []


# rule, YAML added at the end, files that differ, (file, line) of the finding
SEEN: dict[str, tuple[str, dict[str, str | bytes], tuple[str, int]]] = {
    "unread-column": ("", {"readings": CLEAN.replace("gas\n", "gas,wind\n").replace("0.1\n", "0.1,3\n").replace("2.3\n", "2.3,3\n").replace("2.2\n", "2.2,3\n").replace("0.4\n", "0.4,3\n")}, ("readings.csv", 1)),
    "empty-cell": ("", {"readings": CLEAN + "corvane,3,\nostler,3,12.1\n"}, ("readings.csv", 6)),
    "outside-range": ("", {"readings": CLEAN.replace("10.4", "510.4")}, ("readings.csv", 5)),
    "at-the-end-of-the-scale": ("", {"readings": CLEAN.replace("10.4", "500.0")}, ("readings.csv", 5)),
    "past-calibration": ("tested: 2026-05-02\n", {"instruments.yaml": "scale: {resolution: 0.1 g, calibration: {expires: 2026-04-30}}\n"}, ("readings.csv", 2)),
    "outside-calibrated-points": ("", {"instruments.yaml": "scale: {resolution: 0.1 g, calibration: {correction: {9 g: 0 g, 11 g: 0.1 g}}}\n"}, ("readings.csv", 3)),
    "calibrated-afterwards": ("tested: 2026-05-02\n", {"instruments.yaml": "scale: {resolution: 0.1 g, calibrated: 2026-05-03}\n"}, ("readings.csv", 2)),
    "percent-of-nothing": ("", {"instruments.yaml": "scale: 0.1 g, accuracy ±2 %\n", "readings": CLEAN.replace("10.4", "0.0")}, ("readings.csv", 5)),
    "correction-large": ("", {"instruments.yaml": "scale: {resolution: 0.1 g, range: up to 500 g, calibration: {\n  correction: -60 g, u: 0.02 g}}\n"}, ("instruments.yaml", 2)),
    "k-unusual": ("", {"instruments.yaml": "scale: {resolution: 0.1 g, calibration: {correction: 0.1 g, uncertainty: 0.02 g,\n  k: 20}}\n"}, ("instruments.yaml", 2)),
    "limits-beside-correction": ("", {"instruments.yaml": "scale: {resolution: 0.1 g, accuracy: ±0.3 g, calibration: {correction: 0.1 g, u: 0.02 g}}\n"}, ("instruments.yaml", 1)),
    "off-step": ("", {"readings": CLEAN.replace("10.4", "10.45")}, ("readings.csv", 5)),
    "coarser-grid": ("", {"readings": "contender,pass,gas\ncorvane,1,10\nostler,1,12\nostler,2,13\ncorvane,2,11\n"}, ("readings.csv", 2)),
    "unequal-passes": ("", {"readings": CLEAN + "corvane,3,10.2\n"}, ("campaign.yaml", 5)),
    "order-sequential": ("", {"readings": "contender,pass,gas\ncorvane,1,10.1\ncorvane,2,10.4\nostler,1,12.3\nostler,2,12.2\n"}, ("campaign.yaml", 5)),
    "order-not-recorded": ("", {"readings": "what,pass,corvane,ostler\ngas,1,10.1,12.3\ngas,2,10.4,12.2\n"}, ("campaign.yaml", 5)),
    "excluded-after-seeing": ("exclude:\n  - {contender: corvane, pass: 2, because: it looked wrong, decided: after seeing the value}\n", {}, ("campaign.yaml", 8)),
    "touches-nothing": ("incidents:\n  - {contender: corvane, pass: 9, what: spilled}\n", {}, ("campaign.yaml", 8)),
    "exclusion-undated": ("exclude:\n  - {contender: corvane, pass: 2, because: valve left open}\n", {}, ("campaign.yaml", 8)),
    "excluded-for-one": ("exclude:\n  - {contender: corvane, pass: 2, because: valve left open, decided: during the test}\n", {}, ("campaign.yaml", 8)),
    "unused-file": ("", {"raw/forgotten.csv": "a,b\n1,2\n"}, ("raw/forgotten.csv", 0)),
    "photo-not-shown": ("photos: {display: The display reads 12.3 g.}\n", {"attachments/display.png": photograph(kind="PNG")}, ("campaign.yaml", 7)),
    "wide-prose": ("", {"conclusions.md": "# So\n\nEvery Corvane Sol burns less gas.\n"}, ("conclusions.md", 3)),
    "dead-link": ("", {"conclusions.md": "# So\n\nSee [the photograph](attachments/none.jpg).\n"}, ("conclusions.md", 3)),
    "picture-without-words": ("", {"conclusions.md": "# So\n\n![](instruments.yaml)\n"}, ("conclusions.md", 3)),
    "uncertainty-exceeds-value": ("", {"readings": "contender,pass,gas\ncorvane,1,0.1\nostler,1,12.3\nostler,2,12.2\ncorvane,2,0.3\n"}, ("campaign.yaml", 5)),
    "parts-not-joined": ("", {"readings": "contender,pass,part,gas\ncorvane,1,a,10.1\ncorvane,1,b,10.4\nostler,1,a,12.3\nostler,1,b,12.2\n"}, ("campaign.yaml", 5)),
    "verdict-not-borne-out": ("verdict:\n  we say: {best: ostler, because: [gas]}\n", {}, ("campaign.yaml", 8)),
}  # fmt: skip


@pytest.mark.parametrize("rule", sorted(SEEN))
def test_a_rule_finds_what_it_is_for(rule: str, tmp_path: Path) -> None:
    added, files, (file, line) = SEEN[rule]
    mine = [f for f in found(tmp_path, HEAD + MEASURE + added, **files) if f.rule == rule]
    assert mine, rule
    assert (mine[0].place.file, mine[0].place.line) == (file, line)
    assert mine[0].says
    assert mine[0].why
    assert mine[0].do


@pytest.mark.parametrize("formula", ["100 * (a - b) / a", "(a - b) / a * 100", "-(b - a) * 100 / a"])
def test_percent_that_is_multiplied_by_a_hundred_is_asked_about(formula: str, tmp_path: Path) -> None:
    measure = f'measure:\n  lost: {{formula: {formula}, unit: "%", better: lower, columns: {{a: "a, g", b: "b, g"}}}}\n'
    rows = "contender,pass,a,b\ncorvane,1,10.1,9\nostler,1,12.3,10\n"
    told = found(tmp_path, HEAD + measure + "readings: readings.csv\n", readings=rows)
    (seen,) = [f for f in told if f.rule == "percent-twice"]
    assert (seen.place.file, seen.place.line) == ("campaign.yaml", 5)
    assert "100" in seen.says


@pytest.mark.parametrize("formula", ["(a - b) / a", "(a - 100 * b) / a"])
def test_percent_by_itself_is_left_alone(formula: str, tmp_path: Path) -> None:
    measure = f'measure:\n  lost: {{formula: {formula}, unit: "%", better: lower, columns: {{a: "a, g", b: "b, g"}}}}\n'
    rows = "contender,pass,a,b\ncorvane,1,10.1,9\nostler,1,12.3,10\n"
    told = found(tmp_path, HEAD + measure + "readings: readings.csv\n", readings=rows)
    assert "percent-twice" not in rules(told)


@pytest.mark.parametrize(("taken", "asked"), [("background", True), ("muffled", False)])
def test_a_background_taken_off_with_a_minus_is_asked_about(taken: str, asked: bool, tmp_path: Path) -> None:
    """How much a muffler takes off is a difference of levels, and right."""
    columns = f'{{noise: "noise, dB", {taken}: "{taken}, dB"}}'
    measure = f"measure:\n  din: {{formula: noise - {taken}, unit: dB, better: lower, columns: {columns}}}\n"
    rows = f"contender,pass,noise,{taken}\ncorvane,1,60.1,41\nostler,1,61.2,42\n"
    told = found(tmp_path, HEAD + measure + "readings: readings.csv\n", readings=rows)
    assert ("background-subtracted" in rules(told)) == asked


def test_who_paid_must_be_said(tmp_path: Path) -> None:
    assert rules(found(tmp_path, (HEAD + MEASURE).replace("who pays: Readers.\n", ""))) == {"who-pays"}


def test_readings_without_an_instrument_are_noted(tmp_path: Path) -> None:
    assert rules(found(tmp_path, (HEAD + MEASURE).replace(", scale", ""))) == {"no-instrument"}


def test_sessions_that_never_meet_are_the_first_thing_said(tmp_path: Path) -> None:
    rows = "contender,session,pass,gas\ncorvane,sat,1,10.1\ncorvane,sat,2,10.4\nostler,sun,1,12.3\nostler,sun,2,12.2\n"
    assert found(tmp_path, readings=rows)[0].rule == "sessions-apart"


def test_a_supplied_unit_is_said(tmp_path: Path) -> None:
    yaml = (HEAD + MEASURE).replace("corvane: Corvane Sol", "corvane: {title: Corvane Sol, supplied by: its maker}")
    assert rules(found(tmp_path, yaml)) == {"supplied", "bought-unsaid"}  # of the other, nothing is said


def test_a_verdict_that_the_readings_contradict_is_an_error(tmp_path: Path) -> None:
    findings = found(tmp_path, HEAD + MEASURE + "verdict:\n  we say: {best: ostler, because: [gas]}\n")
    assert [f.severity for f in findings if f.rule == "verdict-not-borne-out"] == ["error"]


def test_an_accepted_warning_keeps_its_reason(tmp_path: Path) -> None:
    added, _, _ = SEEN["excluded-for-one"]
    answer = "accept:\n  - {rule: excluded-for-one, about: gas, because: The other valve was shut.}\n"
    (finding,) = [f for f in found(tmp_path, HEAD + MEASURE + added + answer) if f.rule == "excluded-for-one"]
    assert finding.accepted == "The other valve was shut."


SOUP = """\
title: Soup left in the pot
readings: {file: soup.csv, columns: {empty jar: {unit: g, instrument: scale}, full jar: {unit: g, instrument: scale}}}
headline: ladled
quantities:
  ladled: {title: Soup ladled out, formula: full_jar - empty_jar, unit: g, better: lower}
  jar: {formula: empty_jar, unit: g, better: neither}
"""
ONE_BY_ONE = (
    "contender,pass,empty jar,full jar,wind\ncorvane,1,120.0,351.0,3\ncorvane,2,120.0,355.0,3\nostler,1,120.0,380.0,3\n"
)
ANSWERED = ("order-sequential", "unequal-passes", "unread-column")


def answers(about: str) -> str:
    rows = (f"  - {{rule: {rule}, because: it was so{about}}}\n" for rule in ANSWERED)
    return "accept:\n" + "".join(rows)


@pytest.mark.parametrize("about", ["soup", "Soup left in the pot", "ladled", "Soup ladled out", "jar", ""])
@pytest.mark.parametrize("where", ["in the test", "in the campaign"])
def test_an_answer_may_name_test_or_quantity_by_name_or_title(tmp_path: Path, about: str, where: str) -> None:
    told = answers(f", about: {about}" if about else "")
    own, all_ = (told, "") if where == "in the test" else ("", told)
    yaml = HEAD + "tests: [soup]\n" + all_
    findings = found(tmp_path, yaml, **{"tests/soup.yaml": SOUP + own, "soup.csv": ONE_BY_ONE})
    by_rule = {f.rule: f.accepted for f in findings}
    assert {rule: by_rule.get(rule) for rule in ANSWERED} == dict.fromkeys(ANSWERED, "it was so")
    assert "accept" not in by_rule


def test_an_answer_about_another_test_answers_nothing(tmp_path: Path) -> None:
    other = {"tests/soup.yaml": SOUP, "soup.csv": ONE_BY_ONE}
    findings = found(tmp_path, HEAD + "tests: [soup]\n" + MEASURE + answers(", about: gas"), **other)
    open_ = {f.rule for f in findings if not f.accepted}
    assert set(ANSWERED) <= open_
    assert [f.rule for f in findings].count("accept") == len(ANSWERED)


def test_accepting_what_no_rule_says_is_itself_said(tmp_path: Path) -> None:
    answer = "accept:\n  - {rule: nonsense, because: I say so.}\n"
    (finding,) = found(tmp_path, HEAD + MEASURE + answer)
    assert finding.rule == "accept"
    assert "unread-column" in finding.do


def test_a_formula_that_never_gives_a_value_is_found(tmp_path: Path) -> None:
    yaml = HEAD + MEASURE.replace("readings:", "  rate:\n    formula: gas / (gas - gas)\n    better: lower\nreadings:")
    (finding,) = [f for f in found(tmp_path, yaml) if f.rule == "no-value"]
    assert (finding.place.file, finding.place.line) == ("campaign.yaml", 7)


def test_a_pass_that_lacks_one_of_its_readings_is_found(tmp_path: Path) -> None:
    yaml = (
        HEAD
        + "measure: {gas: {kind: weighed before and after, unit: g, better: lower, instrument: scale}}\nreadings: readings.csv\n"
    )
    log = "contender,what,value,pass\n" + "".join(
        f"{c},gas {side},{g},{n}\n"
        for n in (1, 2)
        for c in ("corvane", "ostler")
        for side, g in (("before", 9.1), ("after", 8.2))
    )
    assert not [f for f in found(tmp_path / "a", yaml, readings=log) if f.rule == "no-value"]
    (finding,) = [
        f
        for f in found(tmp_path / "b", yaml, readings=log.replace("ostler,gas after,8.2,2\n", ""))
        if f.rule == "no-value"
    ]
    assert finding.says == "gas of Ostler Mk II has no value for pass 2: something it is worked out from wasn't read."
    assert (finding.place.line, finding.contender) == (8, "ostler")


def test_every_rule_of_a_table_has_its_place_among_all() -> None:
    assert sorted(r.name for r in (*FAIR, *MEASURED, *SHOWN)) == sorted(r.name for r in RULES)


def test_every_rule_is_tried_here() -> None:
    elsewhere = {"sold-as-one", "use-in-other-money", "price-of-nothing", "prices-apart", "no-price",
                 "who-pays", "no-instrument", "sessions-apart", "supplied", "no-unit", "number-disagrees", "no-value",
                 "samples-apart", "few-specimens", "background-louder", "limit-passed-often", "clock-not-stated",
                 "percent-twice", "background-subtracted", "pass-apart", "scatter-uneven", "repeatability-contradicted",
                 "passes-drift", "past-campaigns", "events-in-clusters"}  # fmt: skip
    assert {r.name for r in RULES} == set(SEEN) | elsewhere | set(CASES) | ELSEWHERE


@pytest.mark.parametrize(("first", "second", "asked"), [("12", "0", True), ("7", "5", False)])
def test_events_that_come_in_clusters_are_asked_about(first: str, second: str, asked: bool, tmp_path: Path) -> None:
    """Twelve and none: (6² + 6²)/6 = 12, beyond 10.8, the 0.1 % point of χ² with one degree of freedom."""
    measure = "measure:\n  stalls: {kind: count, better: lower, independent: yes}\nreadings: readings.csv\n"
    rows = f"contender,pass,stalls\ncorvane,1,{first}\nostler,1,0\nostler,2,0\ncorvane,2,{second}\n"
    said = [f for f in found(tmp_path, HEAD + measure, readings=rows) if f.rule == "events-in-clusters"]
    assert [(f.place.file, f.place.line) for f in said] == ([("campaign.yaml", 5)] if asked else [])


def test_a_number_typed_by_hand_that_no_result_agrees_with_is_found(tmp_path: Path) -> None:
    text = "# So\n\nThe Corvane Sol burned 13.7 g.\n"
    assert "number-disagrees" in rules(found(tmp_path, **{"conclusions.md": text}))


def test_a_column_without_a_unit_is_noted(tmp_path: Path) -> None:
    assert "no-unit" in rules(found(tmp_path, HEAD + MEASURE.replace(", g, lower, scale", ", lower")))


def test_a_flood_of_unread_columns_is_counted(tmp_path: Path) -> None:
    rows = [row.split(",") for row in CLEAN.splitlines()]
    wide = [[*rows[0], *(f"extra {n}" for n in range(50))], *([*row, *["1"] * 50] for row in rows[1:])]
    mine = [f for f in found(tmp_path, readings="\n".join(map(",".join, wide)) + "\n") if f.rule == "unread-column"]
    assert len(mine) == 21
    assert any("30 more" in f.says for f in mine)


GAPPED = "contender,pass,gas\ncorvane,1,10.1\nostler,1,\nostler,2,12.2\ncorvane,2,\ncorvane,3,\nostler,3,12.1\n"


def test_many_empty_cells_under_one_heading_are_one_finding(tmp_path: Path) -> None:
    (seen,) = [f for f in found(tmp_path, HEAD + MEASURE, readings=GAPPED) if f.rule == "empty-cell"]
    assert (seen.place.file, seen.place.line) == ("readings.csv", 3)
    assert seen.says == "3 empty cells: gas. This is the first; the last is in line 6."
    assert "once.csv" in seen.do


def test_an_answer_for_one_contenders_empty_cells_leaves_those_of_others(tmp_path: Path) -> None:
    answer = "accept:\n  - {rule: empty-cell, contender: corvane, because: The log got wet.}\n"
    seen = [f for f in found(tmp_path, HEAD + MEASURE + answer, readings=GAPPED) if f.rule == "empty-cell"]
    assert {(f.contender, f.accepted) for f in seen} == {("corvane", "The log got wet."), ("ostler", "")}


def test_what_the_author_says_is_held_against_the_readings_where_it_stands_and_by_title(tmp_path: Path) -> None:
    titled = MEASURE.replace(
        "gas: one reading, g, lower, scale",
        "gas: {title: Gas burned, kind: one reading, unit: g, better: lower, instrument: scale}",
    )
    (seen,) = [
        f
        for f in found(tmp_path, HEAD + titled + "verdict:\n  we say:\n    best: ostler\n")
        if f.rule == "verdict-not-borne-out"
    ]
    assert seen.says == "“best: ostler” is contradicted by everything it rests on: gas burned (Corvane Sol is better)."
