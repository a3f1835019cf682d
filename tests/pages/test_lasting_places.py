"""Places on pages keep their addresses when something is added, reworded or moved; only an id that changes moves one."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from reportgen.addresses import apart
from tests.campaigns import compile_campaign

CAMPAIGN = """\
title: Which stove boils a litre on the least gas?
contenders:
  corvane:
    title: Corvane Sol
    claims:
      - {says: Burns under 15 g, quantity: gas burned, at most: 15 g}
      - {says: "Never needs cleaning, says the leaflet", testable: no, why: nobody has that long}
  ostler: Ostler Mk II
measure:
  gas burned: one reading, g, lower
  boil time: timed, s, lower
readings: readings.csv
caveats:
  - {about: boil time, says: The pot stood on the left.}
  - {about: gas burned, says: Canisters were warm.}
incidents:
  - "ostler, pass 2: blew out"
exclude:
  - {contender: corvane, pass: 3, because: the valve was open, decided: during the test}
"""
READINGS = """\
contender,pass,gas burned,boil time
corvane,1,14.2,212
corvane,2,14.4,214
corvane,3,19.4,214
ostler,1,16.1,230
ostler,2,16.0,228
"""


def places(folder: Path, text: str, readings: str = READINGS) -> frozenset[str]:
    """Every address of the comparison that a link may lead to."""
    compile_campaign(folder, text, readings=readings)
    site = folder / "stoves" / ".site"
    return frozenset(
        f"{page.relative_to(site).as_posix()}#{id}"
        for page in (site / "stoves").rglob("*.html")
        if "/files/" not in page.as_posix()
        for id in re.findall(r'\sid="([^"]+)"', page.read_text(encoding="utf-8"))
    )


@pytest.fixture(scope="module")
def before(tmp_path_factory: pytest.TempPathFactory) -> frozenset[str]:
    return places(tmp_path_factory.mktemp("before"), CAMPAIGN)


def test_places_are_called_by_what_they_are_about(before: frozenset[str]) -> None:
    assert {p.partition("#")[2] for p in before if p.startswith("stoves/index.html#caveat-")} == {
        "caveat-boil-time",
        "caveat-gas-burned",
        "caveat-incident-ostler-pass-2",
        "caveat-exclusion-corvane-pass-3",
    }
    claims = {p.partition("#")[2] for p in before if p.startswith("stoves/contenders/corvane.html#claim-")}
    assert claims == {"claim-gas-burned", "claim-never-needs-cleaning-says-the"}


# What is added, each where it stands before what was there.
ADDED = (
    ("caveats:\n", "caveats:\n  - {about: boil time, contender: ostler, says: Its pot was wet.}\n"),
    ("caveats:\n", "caveats:\n  - {says: It rained on all of them.}\n"),
    ("    claims:\n", "    claims:\n      - {says: Boils in 200 s, quantity: boil time, at most: 200 s}\n"),
    ("  ostler: Ostler Mk II\n", "  brindle: Brindle Dart\n  ostler: Ostler Mk II\n"),
    ("measure:\n", "measure:\n  twice: {formula: 2 * gas_burned, unit: g, better: lower}\n"),
    ("incidents:\n", 'incidents:\n  - "ostler, pass 1: stood in the wind"\n'),
)
REWORDED = (
    ("The pot stood on the left.", "The pot stood at the left."),
    ("title: Corvane Sol", "title: Corvane Sun"),
    ("blew out", "went out twice"),
    ("the valve was open", "its valve was open"),
)


def changed(text: str, changes: tuple[tuple[str, str], ...]) -> str:
    for was, now in changes:
        assert was in text
        text = text.replace(was, now, 1)
    return text


def test_what_is_added_moves_nothing_that_stands(before: frozenset[str], tmp_path: Path) -> None:
    now = places(tmp_path, changed(CAMPAIGN, ADDED))
    assert before - now == set()
    assert len(now - before) >= len(ADDED)


def test_other_words_move_nothing(before: frozenset[str], tmp_path: Path) -> None:
    assert before == places(tmp_path, changed(CAMPAIGN, REWORDED))


def test_another_order_moves_nothing(before: frozenset[str], tmp_path: Path) -> None:
    first, second = re.findall(r"  - \{about: .*\n", CAMPAIGN)
    assert before == places(tmp_path, changed(CAMPAIGN, ((first + second, second + first),)))


def test_a_second_remark_about_the_same_comes_after_the_first_unless_it_has_an_id(
    before: frozenset[str], tmp_path: Path
) -> None:
    more = "  - {about: gas burned, id: scales, says: The scales were old.}\nincidents:\n"
    text = CAMPAIGN.replace("caveats:\n", "caveats:\n  - {about: gas burned, id: first, says: It was dark.}\n")
    found = places(tmp_path, text.replace("incidents:\n", more))
    assert before - found == set()
    assert {"stoves/index.html#caveat-first", "stoves/index.html#caveat-scales"} <= found
    assert apart(["gas", "noise", "gas", "gas-2", "gas"]) == ("gas", "noise", "gas-2", "gas-2-2", "gas-3")


def test_what_is_renamed_can_still_be_reached_by_its_old_name(before: frozenset[str], tmp_path: Path) -> None:
    text = (
        CAMPAIGN.replace("  ostler: Ostler Mk II", "  okto: {title: Ostler Mk II, formerly: ostler}")
        .replace("ostler, pass 2", "okto, pass 2")
        .replace("  boil time: timed, s, lower", "  time to the boil: {kind: timed, unit: s, better: lower, formerly: boil time}")
        .replace("about: boil time", "about: time to the boil")
        .replace("caveats:\n", "caveats:\n  - {about: time to the boil, contender: okto, says: Its pot was wet.}\n")
    )  # fmt: skip
    readings = READINGS.replace("ostler", "okto").replace("boil time", "time to the boil")
    found = places(tmp_path, text, readings)
    assert {"stoves/index.html#caveat-time-to-the-boil", "stoves/index.html#caveat-incident-okto-pass-2"} <= found
    assert {"stoves/index.html#caveat-boil-time", "stoves/index.html#caveat-incident-ostler-pass-2"} <= found
    assert {f"stoves/index.html#caveat-{name}" for name in NAMES_OF_BOTH} <= found
    assert "stoves/method.html#boil-time" in found


NAMES_OF_BOTH = ("time-to-the-boil-okto", "time-to-the-boil-ostler", "boil-time-okto", "boil-time-ostler")


def test_how_a_test_was_run_can_still_be_reached_by_its_old_name(tmp_path: Path) -> None:
    text = CAMPAIGN.replace("  boil time: timed, s, lower\n", "").replace("about: boil time", "about: boiling")
    boiling = "title: Boiling\nformerly: [cooking, simmering]\n"
    boiling += "quantities:\n  boil time: {kind: timed, unit: s, better: lower}\n"
    compile_campaign(tmp_path, text, readings=READINGS, **{"tests/boiling.yaml": boiling})
    page = (tmp_path / "stoves/.site/stoves/method.html").read_text(encoding="utf-8")
    assert re.findall(r'<a id="([^"]+)" href="#boiling">', page) == ["cooking", "simmering"]
    ids = re.findall(r'\sid="([^"]+)"', page)
    assert len(ids) == len(set(ids))


def test_the_handbook_says_what_caveats_are_called(tmp_path: Path) -> None:
    chapter = (Path(__file__).parents[2] / "content/handbook/addresses.md").read_text(encoding="utf-8")
    (example,) = re.findall(r"```yaml\n(.*?)```", chapter, re.DOTALL)
    found = {p.partition("#")[2] for p in places(tmp_path, example) if "#caveat-" in p}
    assert found == {"caveat-cold-canisters", "caveat-gas-burned"}
