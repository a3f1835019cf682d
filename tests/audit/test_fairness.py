"""Rules on fairness: each fires on what it is for and stays silent on its neighbour, and says what it can do to the outcome."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from reportgen.build.run import audit_path, compile_site
from reportgen.finding import Finding
from tests.audit.fairness_cases import (
    BLOWN,
    CASES,
    CLAIM,
    CLEAN,
    IN_TURN,
    LEAD,
    PLAIN,
    REPORT,
    SCALE,
    TESTED,
    WITH_WIND,
    about_gas,
    contenders,
    rows,
)
from tests.campaigns import compile_campaign, results_of, write_campaign


def found(place: Path, yaml_text: str, **files: str | bytes) -> list[Finding]:
    told = audit_path(write_campaign(place, yaml_text, **{"readings": CLEAN, **SCALE, **files}))
    return [replace(f, says=f.says.replace("\u00a0", " ")) for f in told]


def of(findings: list[Finding], rule: str) -> list[Finding]:
    return [f for f in findings if f.rule == rule]


@pytest.mark.parametrize("rule", sorted(CASES))
def test_a_rule_fires_on_what_it_is_for(rule: str, tmp_path: Path) -> None:
    yaml, files = CASES[rule][0]
    mine = of(found(tmp_path, yaml, **files), rule)
    assert mine, rule
    assert all(f.place.file and f.says and f.why and f.do and f.severity != "error" for f in mine)


@pytest.mark.parametrize("rule", sorted(CASES))
def test_a_rule_stays_silent_on_its_neighbour(rule: str, tmp_path: Path) -> None:
    yaml, files = CASES[rule][1]
    told = found(tmp_path, yaml, **files)
    assert not of(told, rule)
    assert all(f.severity != "error" for f in told)


def test_a_newcomer_meets_a_handful_of_findings_money_first(tmp_path: Path) -> None:
    four = ["corvane", "ostler", "brindle", "tamsin"]
    yaml = "title: Four kettles\ncontenders: {" + ", ".join(f"{c}: {c.title()}" for c in four) + "}\n"
    yaml += "measure:\n  weight: {kind: one reading, unit: g, better: lower}\n  boil time: {kind: timed, unit: s, better: lower}\nreadings: readings.csv\n"
    log = [f"{c},{n},{800 + 30 * i + n},{200 + 15 * i + n}" for n in (1, 2) for i, c in enumerate(four)]
    place = write_campaign(tmp_path, yaml, readings=rows(*log, heading="contender,pass,weight,boil time"))
    told = audit_path(place)
    assert len(told) <= 6
    assert told[0].rule == "who-pays"
    assert sum(f.severity == "warning" for f in told) <= 3
    compile_site(place)


# Contender after contender: means 10.25 and 12.25 at the runs 0.5 and 2.5: 2.0 g in 2 runs.
def test_a_sequential_order_says_what_drift_would_explain_the_lead(tmp_path: Path) -> None:
    aabb = rows("corvane,1,10.1", "corvane,2,10.4", "ostler,1,12.3", "ostler,2,12.2")
    (seen,) = of(found(tmp_path, PLAIN, readings=aabb), "order-sequential")
    assert "On gas, a drift of 1.0 g a run would explain the whole lead of Corvane Sol over Ostler Mk II." in seen.says
    assert seen.severity == "warning"


def test_a_sequential_order_on_which_no_lead_rests_is_a_note(tmp_path: Path) -> None:
    aabb = rows("corvane,1,10.1", "corvane,2,12.4", "ostler,1,10.3", "ostler,2,12.2")
    (seen,) = of(found(tmp_path, PLAIN, readings=aabb), "order-sequential")
    assert seen.severity == "note"
    assert "No lead rests on it" in seen.says


# In turn, A B A B: the two ran one run apart on the mean, and their means differ by 2.0 g.
def test_one_order_in_every_round_says_the_drift_and_is_a_note_where_that_is_large(tmp_path: Path) -> None:
    (seen,) = of(found(tmp_path, PLAIN, readings=IN_TURN), "order-lopsided")
    assert "Corvane Sol first, Ostler Mk II last" in seen.says
    assert "a drift of 2.0 g a run" in seen.says
    assert seen.severity == "note"


def test_one_that_always_begins_is_told_though_the_others_change_places(tmp_path: Path) -> None:
    yaml = PLAIN.replace("ostler: Ostler Mk II", "ostler: Ostler Mk II, tamsin: Tamsin Lee")
    orders = ("corvane ostler tamsin", "corvane tamsin ostler", "corvane ostler tamsin")
    log = rows(*(f"{c},{n},{10 + len(c) / 10:.1f}" for n, order in enumerate(orders, 1) for c in order.split()))
    (seen,) = of(found(tmp_path, yaml, readings=log), "order-lopsided")
    assert "Corvane Sol ran first" in seen.says


OUT = "exclude: [{contender: ostler, pass: 4, because: it looked wrong, decided: after seeing the value}]\n"
LOW_LAST = (10.5, 10.4, 10.5, 9.9)


def alternating(corvane: tuple[float, ...], ostler: tuple[float, ...]) -> str:
    return rows(
        *(
            f"{c},{n},{x}"
            for n, pair in enumerate(zip(corvane, ostler, strict=True), 1)
            for c, x in zip(("corvane", "ostler"), pair, strict=True)
        )
    )


# Means 10.05 and 10.47 without the pass left out, pooled sd 0.06 on 5 degrees of freedom; 10.05 and 10.33, pooled sd
# 0.21 on 6, with it: 2.447 · 0.21 · √(1/2) = 0.36, more than the lead of 0.28.
def test_an_exclusion_says_who_would_be_first_with_it_back(tmp_path: Path) -> None:
    log = alternating((10.0, 10.1, 10.0, 10.1), LOW_LAST)
    findings = found(tmp_path, PLAIN + OUT, readings=log)
    for rule in ("excluded-after-seeing", "excluded-for-one"):
        (seen,) = of(findings, rule)
        assert seen.says.endswith("With it back, nobody would be alone in first place on gas.")
        assert seen.severity == "warning"


def test_an_exclusion_that_changes_no_place_is_a_note(tmp_path: Path) -> None:
    findings = found(tmp_path, PLAIN + OUT, readings=alternating((10.0, 10.1, 10.0, 10.1), (14.5, 14.4, 14.5, 14.3)))
    for rule in ("excluded-after-seeing", "excluded-for-one"):
        (seen,) = of(findings, rule)
        assert seen.says.endswith("With it back, no place would change.")
        assert seen.severity == "note"


def test_the_one_pass_that_keeps_first_place_open_is_told_on_page_and_in_the_record(tmp_path: Path) -> None:
    log = alternating((10.0, 10.1, 10.0, 10.1), LOW_LAST)
    told = compile_campaign(tmp_path, PLAIN, readings=log, **SCALE)
    (first,) = told["first"]
    assert first["winner"] is None
    assert first["hangs_on"]["tried"] == 8
    assert first["hangs_on"]["passes"] == [
        {"contender": "ostler", "specimen": "1", "pass": "4", "part": None, "winner": "corvane"}
    ]
    (page,) = (tmp_path / "stoves" / ".site").glob("*/tests/gas.html")
    text = page.read_text(encoding="utf-8")
    assert "without pass 4 of Ostler Mk II, Corvane Sol would be alone in first place" in text.replace("\u00a0", " ")


def test_a_first_place_that_one_pass_makes_is_a_warning(tmp_path: Path) -> None:
    yaml, files = CASES["hangs-on-one-pass"][0]
    (seen,) = of(found(tmp_path, yaml, **files), "hangs-on-one-pass")
    assert seen.says == "Gas: without pass 2 of Ostler Mk II nobody would be alone in first place."
    assert seen.severity == "warning"


def test_few_passes_of_which_each_is_needed_hang_on_none_of_them(tmp_path: Path) -> None:
    told = results_of(tmp_path, PLAIN, readings=CLEAN, **SCALE)
    assert told["first"][0]["winner"] == "corvane"
    assert not of(found(tmp_path / "again", PLAIN), "hangs-on-one-pass")


def test_unequal_passes_that_decide_nothing_are_a_note(tmp_path: Path) -> None:
    (seen,) = of(found(tmp_path, PLAIN, readings=CLEAN + "corvane,3,10.2\n"), "unequal-passes")
    assert seen.says.endswith("On the first two passes of each, first place stays as it is.")
    assert seen.severity == "note"


def test_unequal_passes_that_make_a_first_place_are_a_warning(tmp_path: Path) -> None:
    more = "".join(f"corvane,{n},{x}\n" for n, x in ((3, 10.2), (4, 10.3), (5, 10.2), (6, 10.3)))
    log = CLEAN.replace("12.3", "10.8").replace("12.2", "10.7")
    (seen,) = of(found(tmp_path, PLAIN, readings=log + more), "unequal-passes")
    assert "On the first two passes of each, nobody would be alone in first place (gas)." in seen.says
    assert seen.severity == "warning"


def test_who_is_first_by_the_scatter_of_one_that_is_far_behind_is_told(tmp_path: Path) -> None:
    yaml = PLAIN.replace("ostler: Ostler Mk II", "ostler: Ostler Mk II, tamsin: Tamsin Lee")
    log = rows(
        "corvane,1,10.0",
        "ostler,1,10.9",
        "tamsin,1,30.0",
        *(f"tamsin,{n},{x}" for n, x in enumerate((30.1, 30.0, 30.1, 30.0, 30.1), 2)),
    )
    (seen,) = of(found(tmp_path, yaml, readings=log), "hangs-on-another")
    assert seen.says == "Gas: without Tamsin Lee, nobody would be alone in first place."


def test_a_condition_that_went_with_one_contender_is_graver_where_a_lead_lies_across_it(tmp_path: Path) -> None:
    (seen,) = of(found(tmp_path / "a", PLAIN + WITH_WIND, readings=BLOWN), "conditions-differ")
    assert seen.severity == "warning"
    assert "Corvane Sol is said to be better than Ostler Mk II on gas, and this may be why." in seen.says
    level = BLOWN.replace("12.3", "10.3").replace("12.2", "10.2")
    (seen,) = of(found(tmp_path / "b", PLAIN + WITH_WIND, readings=level), "conditions-differ")
    assert seen.severity == "note"


def test_means_of_a_condition_far_apart_beside_their_spread_are_told_though_ranges_touch(tmp_path: Path) -> None:
    air = "contender,pass,gas,air"
    calm, warm = (14.0, 14.1, 14.2, 15.0), (16.0, 15.9, 15.8, 15.0)
    log = rows(
        *(
            f"{c},{n},10.1,{x}"
            for n, pair in enumerate(zip(calm, warm, strict=True), 1)
            for c, x in zip(("corvane", "ostler"), pair, strict=True)
        ),
        heading=air,
    )
    assert of(found(tmp_path, PLAIN + "conditions: [air]\n", readings=log), "conditions-differ")


def test_an_incident_says_what_would_be_without_its_pass(tmp_path: Path) -> None:
    log = alternating((10.0, 10.1, 10.0, 10.1), LOW_LAST)
    yaml = PLAIN + 'incidents: ["ostler, pass 4: spilled a little"]\n'
    (seen,) = of(found(tmp_path, yaml, readings=log), "incident-unweighed")
    assert "Without pass 4 of Ostler Mk II, Corvane Sol would be alone in first place on gas." in seen.says
    assert seen.severity == "warning"


def test_a_supplied_one_among_bought_ones_is_told_with_what_it_leads(tmp_path: Path) -> None:
    (seen,) = of(found(tmp_path, contenders("supplied by: its maker", "bought: {where: a shop}")), "supplied")
    assert "Ostler Mk II was bought." in seen.says
    assert "It is alone in first place on gas." in seen.says


def test_a_contradicted_claim_that_names_a_condition_is_graver_than_another(tmp_path: Path) -> None:
    yaml, files = CASES["claimed-otherwise"][0]
    (seen,) = of(found(tmp_path, yaml, **files), "claimed-otherwise")
    assert "contradicted" in seen.says
    assert seen.severity == "warning"


def test_a_claim_set_aside_for_its_condition_is_a_note(tmp_path: Path) -> None:
    yaml = contenders(CLAIM % ("As little as 5 g", ", under: no wind at all"), "model: Mk II")
    (seen,) = of(found(tmp_path, yaml), "claimed-otherwise")
    assert seen.severity == "note"


def test_diluting_unlike_is_told(tmp_path: Path) -> None:
    yaml = LEAD % "      diluted: {corvane: 1 to 10, ostler: not at all}\n"
    (seen,) = of(found(tmp_path, yaml, **REPORT), "samples-unalike")
    assert "Ostler Mk II not at all" in seen.says


def test_a_decision_dated_after_the_first_reading_counts_as_after(tmp_path: Path) -> None:
    yaml = about_gas('decided: "before the test, 2026-05-09"') + TESTED
    (seen,) = of(found(tmp_path, yaml), "chosen-after-seeing")
    assert "2026-05-09, when 2026-05-02 was the first day of reading" in seen.says


def test_a_comparative_needs_a_comparison_that_bears_it_out(tmp_path: Path) -> None:
    says = {"conclusions.md": "# So\n\nThe Corvane Sol is better than the Ostler Mk II.\n"}
    assert not of(found(tmp_path / "a", PLAIN, **says), "beyond-the-readings")
    level = CLEAN.replace("12.3", "10.3").replace("12.2", "10.2")
    assert of(found(tmp_path / "b", PLAIN, readings=level, **says), "beyond-the-readings")


def test_a_superlative_inside_a_reference_is_borne_out_by_it(tmp_path: Path) -> None:
    says = {"conclusions.md": "# So\n\nOstler Mk II or Corvane Sol: [the best](first:gas).\n"}
    assert not of(found(tmp_path, PLAIN, **says), "beyond-the-readings")


@pytest.mark.parametrize(
    ("said", "asked"), [("", "nor whether makers gave samples"), ("affiliate links: no\nsamples: none\n", "")]
)
def test_a_publication_is_asked_for_links_and_samples(said: str, asked: str, tmp_path: Path) -> None:
    files = {
        "content/publication.yaml": "title: Tests\nwho pays: Readers.\n" + said,
        "stoves/campaign.yaml": PLAIN,
        "stoves/readings.csv": CLEAN,
        "shared/instruments.yaml": SCALE["instruments.yaml"],
    }
    for name, text in files.items():
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    mine = of(list(audit_path(tmp_path)), "interests-unsaid")
    assert bool(mine) == bool(asked)
    assert all(asked in f.says and f.place.file == "content/publication.yaml" for f in mine)


def test_what_is_said_of_firmware_settings_judging_and_interests_stands_on_pages(tmp_path: Path) -> None:
    yaml = contenders("firmware: 2.1, settings: as shipped", "firmware: not noted, settings: as shipped")
    yaml = yaml.replace(
        "one reading, g, lower, scale",
        "{kind: one reading, unit: g, better: lower, instrument: scale, judged: blind, decided: before the test}",
    )
    compile_campaign(tmp_path, yaml + "affiliate links: none at all\nsamples: sent back\n", readings=CLEAN, **SCALE)
    site = tmp_path / "stoves" / ".site"
    told = {str(p): p.read_text(encoding="utf-8") for p in site.glob("stoves/**/*.html")}
    assert any("Firmware" in text and "2.1" in text and "as shipped" in text for text in told.values())
    assert any("know which was which" in text and "before the test" in text for text in told.values())
    assert sum("none at all" in text and "sent back" in text for text in told.values()) >= 2


def test_words_of_the_verdict_are_held_against_the_readings_too(tmp_path: Path) -> None:
    yaml = PLAIN + "verdict:\n  we say: {words: The Ostler Mk II is the best of all.}\n"
    (seen,) = of(found(tmp_path, yaml), "beyond-the-readings")
    assert (seen.place.file, seen.place.line) == ("campaign.yaml", 8)


def test_a_claim_whose_condition_the_author_answers_is_left_alone(tmp_path: Path) -> None:
    yaml = contenders(CLAIM % ("As little as 5 g", ', under: no wind at all, tested so: "no, it blew"'), "model: Mk II")
    assert not of(found(tmp_path, yaml), "claimed-otherwise")


def test_the_record_holds_what_was_said_of_firmware_settings_damage_and_samples(tmp_path: Path) -> None:
    yaml = contenders("firmware: 2.1, settings: as shipped, put right: nothing", "model: Mk II")
    corvane, ostler = results_of(tmp_path / "a", yaml, readings=CLEAN, **SCALE)["contenders"]
    assert (corvane["firmware"], corvane["settings"], corvane["put_right"]) == ("2.1", "as shipped", "nothing")
    assert (ostler["firmware"], ostler["settings"], ostler["put_right"]) == (None, None, None)
    told = results_of(tmp_path / "b", LEAD % "      taken: {corvane: 2026-05-01}\n      diluted: 1 to 10\n", **REPORT)
    laboratory = told["results"][0]["laboratory"]
    assert (laboratory["taken"], laboratory["diluted"]) == ({"corvane": "2026-05-01"}, {"all": "1 to 10"})
