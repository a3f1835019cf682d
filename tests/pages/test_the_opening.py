"""What the campaign's page opens with: who is out, which notes stay in view, which are folded, what stands elsewhere.

The demonstration as compiled, and small invented campaigns; what is held is what a reader sees and where it leads.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from reportgen.evaluation.evaluated import Evaluation
from reportgen.pages.notes import could_change_first
from reportgen.prose.first_place import first_place
from reportgen.prose.missed import missed
from reportgen.prose.places import placed
from tests.evaluation.bench import all_stages
from tests.pages.reading import Element, read

GAS = """\
title: Which?
contenders: {corvane: Corvane, ostler: Ostler, brindle: Brindle}
instruments: {scale: "0.1 g, up to 2000 g, accuracy ±0.3 g"}
measure:
  gas: {kind: one reading, unit: g, better: lower, instrument: scale}
readings: readings.csv
"""
ROWS = (
    "what,pass,corvane,ostler,brindle\ngas,1,14.1,17.2,19.9\ngas,2,14.3,17.1,20.2\ngas,3,14.2,17.3,20.1\n"
    "gas,4,14.1,17.2,20.0\n"
)


@pytest.fixture(scope="module")
def opening(demo_site: Path) -> Element:
    return read((demo_site / "demo-campaign" / "index.html").read_text(encoding="utf-8"))


def test_who_misses_a_condition_is_said_to_be_out_beside_the_answer_that_names_it_first(opening: Element) -> None:
    assert "Brindle Dart did best on time to the boil" in opening.one("p", class_="answer").text
    assert opening.one("p", class_="missed").text == (
        "Brindle Dart misses our condition on carbon monoxide (at most 300 ppm), so it is out of the verdict."
    )


def test_its_sheet_and_the_archive_say_so_too_and_the_other_sheets_do_not(demo_site: Path) -> None:
    sheets = {
        p.stem: read(p.read_text(encoding="utf-8")) for p in (demo_site / "demo-campaign").rglob("contenders/*.html")
    }
    said = {name: [p.text for p in sheet.all("p", class_="missed")] for name, sheet in sheets.items()}
    assert [name for name, lines in said.items() if lines] == ["brindle"]
    archive = read((demo_site / "index.html").read_text(encoding="utf-8"))
    assert [p.text for p in archive.all("p", class_="missed")] == said["brindle"]


def test_nobody_is_said_to_miss_a_condition_that_is_met_or_open(tmp_path: Path) -> None:
    for bound, out in (
        ("25 g", ""),
        ("18 g", "Brindle misses our condition on gas (at most 18 g), so it is out"),
        ("16 g", "Ostler and Brindle miss our condition on gas (at most 16 g), so they are out"),
    ):
        text = f"{GAS}verdict: {{must: [{{quantity: gas, at most: {bound}}}]}}\n"
        declared, _, evaluation = all_stages(tmp_path / bound[:2], text, readings=ROWS)
        line = missed(declared.campaign, evaluation).replace("\u00a0", " ")
        assert line.startswith(out)
        assert bool(line) == bool(out)


def test_every_note_of_the_grid_stands_once_in_view_or_under_the_fold(opening: Element) -> None:
    fold = opening.one("details", class_="more-notes")
    folded = {note.attrs["id"] for note in fold.all("div", class_="caveat")}
    stand = [note.attrs["id"] for note in opening.all("div", class_="caveat")]
    asked = {
        mark.attrs["href"][1:] for raised in opening.one("table", class_="grid").all("sup") for mark in raised.all("a")
    }
    assert len(stand) == len(set(stand))
    assert asked == set(stand)
    assert fold.one("summary").text.startswith(f"{len(folded)} more notes: ")
    assert "open" not in fold.attrs


def test_what_could_change_who_is_first_is_never_folded(opening: Element, demo_told: dict[str, Any]) -> None:
    fold = opening.one("details", class_="more-notes")
    folded = {int(note.one("span", class_="which").text) for note in fold.all("div", class_="caveat")}
    caveats = {c["number"]: c for c in demo_told["caveat_list"]}
    assert not [n for n in folded if caveats[n]["blocks"] or caveats[n]["sort"] == "exclusion"]
    assert caveats[2]["pushes"] == "up"
    assert 2 not in folded  # on the gas of one that shares first place
    assert caveats[17]["pushes"] == "down"
    assert 17 in folded  # the worst is likely worse still


def test_numbers_that_are_passed_over_lead_to_where_their_notes_stand(opening: Element, demo_site: Path) -> None:
    (line,) = [p for p in opening.all("p", class_="grid-key") if p.text.startswith("Notes ")]
    here = {note.one("span", class_="which").text for note in opening.all("div", class_="caveat")}
    assert {link.text for link in line.all("a")} == {str(n) for n in range(1, 1 + max(map(int, here)))} - here
    for link in line.all("a"):
        address, anchor = link.attrs["href"].split("#")
        page = read((demo_site / "demo-campaign" / address).read_text(encoding="utf-8"))
        assert page.one("div", id=anchor).one("span", class_="which").text == link.text


def test_the_things_compared_are_the_rows_with_places_and_those_named_below(
    opening: Element, demo_told: dict[str, Any]
) -> None:
    (line,) = [p for p in opening.all("p", class_="grid-key") if "no row here" in p.text]
    compared = len(demo_told["first"])
    rows = [row for row in opening.one("table", class_="grid").all("tr") if row.all("span", class_="way")]
    assert f"of the {compared} things compared" in line.text
    assert f"of the {compared} things compared" in opening.one("p", class_="firm").text
    assert len(rows) + len(line.all("a")) == compared


def test_where_all_that_is_open_was_run_once_the_key_says_so(opening: Element) -> None:
    assert "open: no winner, one run only" in opening.text
    assert "open: not enough to say" not in opening.text


CASES = {
    "a block": ("contender: brindle, says: Its tap leaked., so: do not rank", True),
    "a push that flatters the first": ("contender: corvane, says: Lid on., pushes: down", True),
    "a push that hides how good one behind is": ("contender: ostler, says: Lid off., pushes: up", True),
    "a push that flatters one behind": ("contender: ostler, says: Lid on., pushes: down", False),
    "an unknown push": ("contender: ostler, says: It rained., pushes: unknown", True),
    "a limit of all": ("says: The canisters were cold.", True),
    "a remark on the first": ("contender: corvane, says: It hissed.", True),
    "a remark on one behind": ("contender: ostler, says: It hissed.", False),
}


@pytest.mark.parametrize("case", CASES)
def test_a_note_stays_in_view_where_it_could_change_who_is_first(tmp_path: Path, case: str) -> None:
    caveat, weighty = CASES[case]
    declared, _, evaluation = all_stages(tmp_path, f"{GAS}caveats:\n  - {{about: gas, {caveat}}}\n", readings=ROWS)
    (first,) = evaluation.firsts
    place = placed(declared.campaign, evaluation, first)
    on = [(c, r) for r in evaluation.results for c in evaluation.caveats_on(r.quantity, r.rests_on) if c.says]
    assert on
    assert any(could_change_first(c, r, place) for c, r in on) is weighty


def left_out(evaluation: Evaluation) -> int:
    return sum(r.excluded for r in evaluation.results)


def test_what_counting_exclusions_would_change_is_first_place_or_lower_places(tmp_path: Path) -> None:
    lower = ROWS.replace("14.1,17.2,20.0", "14.1,22.0,20.0")
    higher = ROWS.replace("14.1,17.2,20.0", "24.0,17.2,20.0")
    for n, (rows, who, said) in enumerate(
        (
            (
                lower,
                "ostler",
                "If what was left out counted, first place would stay as it is; lower places would change.",
            ),
            (higher, "corvane", "If what was left out counted, Ostler and Brindle might be first too."),
        )
    ):
        out = f"exclude:\n  - {{contender: {who}, pass: 4, because: The valve was open., decided: during the test}}\n"
        declared, _, evaluation = all_stages(tmp_path / f"{n}", GAS + out, readings=rows)
        assert left_out(evaluation) == 1
        assert said in first_place(declared.campaign, evaluation, "gas")
