"""What a budget says would halve an uncertainty does halve it, when it is done; what it says of causes is so.

JCGM 100:2008, 4.2.3 (s/√n), 4.3.7 (a half-width a gives a/√3, a step δ gives δ/√12), 5.1.2.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tests.campaigns import compile_campaign, result_of, results_of
from tests.pages.reading import Element, read

TWO = "title: T\ncontenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\n"
WEIGHED = TWO + "measure: {weight: 'one reading, g, lower, scale'}\nreadings: readings.csv\n"
HEATED = (
    TWO + "constants: {heating value: {value: 46 kJ/g, within: %s kJ/g, source: a table}}\n"
    "instruments: {g: scale}\n"
    "measure:\n  gas: {kind: one reading, unit: g, better: lower}\n"
    "  heat: {formula: gas * heating_value, unit: kJ, better: neither}\n"
    "readings: readings.csv\n"
)

NO_REPEAT = "How far a repeat would differ isn’t in it; only repeats can show that."
MOVES_ALIKE = "It moves everything that was read with it alike: that matters to the values and hardly to the gaps"


def working(tmp_path: Path, test: str, of: str) -> Element:
    page = next((tmp_path / "stoves" / ".site").glob(f"*/tests/{test}.html"))
    return read(page.read_text(encoding="utf-8")).one("div", id=f"result-{of}")


def said(tmp_path: Path, test: str, of: str) -> str:
    return working(tmp_path, test, of).one("p", class_="made-of").text


def weighed(
    tmp_path: Path, scale: str, rows: str, made: Callable[..., dict[str, Any]] = compile_campaign
) -> dict[str, Any]:
    readings = f"contender,pass,weight\n{rows}"
    return made(tmp_path, WEIGHED, readings=readings, **{"instruments.yaml": f"scale: {scale}\n"})


def test_a_scale_of_half_the_step_would_halve_what_its_step_brings(tmp_path: Path) -> None:
    rows = "corvane,1,86\nostler,1,112\n"
    before = weighed(tmp_path / "a", "1 g, accuracy ±0.1 g", rows)
    assert result_of(before, "weight", "corvane")["u"] == pytest.approx((1 / 12 + 0.01 / 3) ** 0.5)
    line = said(tmp_path / "a", "weight", "weight-corvane")
    found = re.fullmatch(
        r"Nearly all of the uncertainty that is known is the step the scale reads in; "
        r"an instrument that reads in steps of ([\d.]+) g would more than halve it\. " + NO_REPEAT,
        line,
    )
    assert found, line
    after = weighed(tmp_path / "b", f"{found[1]} g, accuracy ±0.1 g", rows, results_of)
    ours, theirs = (result_of(told, "weight", "corvane")["u"] for told in (before, after))
    assert theirs <= ours / 2


def test_a_step_that_all_but_halves_it_is_named_and_not_the_next(tmp_path: Path) -> None:
    """Of a step of 0.1 g alone half is one of 0.05 g, not of 0.02 g, however little else there is."""
    rows = "corvane,1,86.3\nostler,1,112.1\n"
    before = weighed(tmp_path / "a", "0.1 g, accuracy ±0.0005 g", rows)
    line = said(tmp_path / "a", "weight", "weight-corvane")
    assert "; an instrument that reads in steps of 0.05 g would halve it." in line
    after = weighed(tmp_path / "b", "0.05 g, accuracy ±0.0005 g", rows, results_of)
    ours, theirs = (result_of(told, "weight", "corvane")["u"] for told in (before, after))
    assert theirs == pytest.approx(ours / 2, rel=0.02)


def test_what_has_no_line_is_told(tmp_path: Path) -> None:
    """An offset that falls out of before minus after; a hand that passes show; on whose word the largest line stands."""
    yaml = (
        TWO + "instruments: {g: scale, s: watch}\nmeasure:\n  gas: weighed before and after, g, lower\n"
        "  boil: timed, s, lower\n  pot: one reading, g, lower\nreadings: readings.csv\n"
    )
    rows = ("contender,pass,gas before,gas after,boil,pot\n"
            "corvane,1,231.4,217.1,212.4,86.1\nostler,1,240.2,223.9,230.1,90.2\n"
            "ostler,2,223.9,207.2,226.4,90.4\ncorvane,2,217.1,202.6,214.9,86.3\n")  # fmt: skip
    instruments = "scale: 0.1 g, accuracy ±5 g\nwatch: 0.01 s, by hand, accuracy unknown\n"
    compile_campaign(tmp_path, yaml, readings=rows, **{"instruments.yaml": instruments})
    gas, boil, pot = (working(tmp_path, test, f"{test}-corvane").text for test in ("gas", "boil", "pot"))
    cancels = "What the scale may be off by on every reading has no line: it cancels between those read off it here."
    assert cancels in gas
    assert cancels not in pot
    assert "The hand on the watch has no line: the scatter between passes already holds it." in boil
    assert "hand" not in gas


def test_so_many_passes_would_halve_what_scatter_brings(tmp_path: Path) -> None:
    rows = "".join(f"{c},{n},{w}\n" for c, at in (("corvane", 86), ("ostler", 112)) for n, w in ((1, at), (2, at + 4)))
    told = weighed(tmp_path, "0.1 g, accuracy ±0.6 g", rows)
    found = result_of(told, "weight", "corvane")
    s2, n, offset2 = 8.0, 2, 0.6**2 / 3  # two passes 4 g apart: s = 4/√2 g
    assert found["u"] == pytest.approx((s2 / n + offset2) ** 0.5)
    line = said(tmp_path, "weight", "weight-corvane")
    assert line.startswith("Nearly all of the uncertainty is the scatter between passes; ")
    (needed,) = re.findall(r"; (\w+) passes in place of two passes would halve it", line)
    many = {"eight": 8, "nine": 9, "ten": 10}[needed]
    assert (s2 / many + offset2) <= found["u"] ** 2 / 4 < (s2 / (many - 1) + offset2)


HEATS = {
    "readings": "contender,gas\ncorvane,14.32\nostler,16.18\n",
    "instruments.yaml": "scale: 0.01 g, accuracy ±0.02 g\n",
}


@pytest.fixture(scope="module")
def heated(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, dict[str, Any]]:
    """Where the constant is known to 2 kJ/g."""
    place = tmp_path_factory.mktemp("heated")
    return place, compile_campaign(place, HEATED % "2", **HEATS)


def test_a_constant_known_so_much_better_would_halve_it(heated: tuple[Path, dict[str, Any]], tmp_path: Path) -> None:
    place, before = heated
    line = said(place, "heat", "heat-corvane")
    found = re.search(r"would be halved if that were known to ([\d.]+) kJ/g either way in place of 2 kJ/g\.", line)
    assert found, line
    after = results_of(tmp_path, HEATED % found[1], **HEATS)
    ours, theirs = (result_of(told, "heat", "corvane")["u"] for told in (before, after))
    assert theirs == pytest.approx(ours / 2, rel=0.01)  # the half-width is printed with two digits


@pytest.fixture(scope="module")
def coarse(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, dict[str, Any]]:
    """Two weighed once on a scale of 1 g, ±0.4 g."""
    place = tmp_path_factory.mktemp("coarse")
    return place, weighed(place, "1 g, accuracy ±0.4 g", "corvane,1,86\nostler,1,112\n")


def test_what_is_left_without_a_cause_is_said_where_no_cure_is_enough(coarse: tuple[Path, dict[str, Any]]) -> None:
    # δ²/12 = 0.0833 of 0.0833 + 0.16/3 = 0.1367: 61 %; the rest is 0.4/√3 = 0.23 g
    assert said(coarse[0], "weight", "weight-corvane") == (
        "More than half of the uncertainty that is known (61 %) is the step the scale reads in; without it 0.23 g "
        "would be left. " + NO_REPEAT
    )


def test_an_error_that_moves_all_alike_is_said_to_matter_to_values_and_not_to_gaps(tmp_path: Path) -> None:
    """An offset drops out of a difference, of a gain the part by which two readings differ stays (JCGM 100, F.1.2.3)."""
    rows = "corvane,1,86\nostler,1,112\n"
    weighed(tmp_path / "offset", "0.01 g, accuracy ±1 g", rows)
    assert MOVES_ALIKE in said(tmp_path / "offset", "weight", "weight-corvane")
    weighed(tmp_path / "gain", "0.01 g, accuracy ±5 % of reading", rows)  # of 86 and 112 g: a third of it is left
    assert MOVES_ALIKE not in said(tmp_path / "gain", "weight", "weight-corvane")


def test_only_repeats_are_said_to_show_a_scatter_that_nobody_knows(
    coarse: tuple[Path, dict[str, Any]], tmp_path: Path
) -> None:
    assert NO_REPEAT in said(coarse[0], "weight", "weight-corvane")
    caption = working(coarse[0], "weight", "weight-corvane").one("table", class_="budget").one("caption").text
    assert caption.startswith("What the known uncertainty is made of")
    rows = "".join(f"{c},{n},{w}\n" for c, at in (("corvane", 86), ("ostler", 112)) for n, w in ((1, at), (2, at + 4)))
    weighed(tmp_path, "0.1 g, accuracy ±0.6 g", rows)
    assert NO_REPEAT not in said(tmp_path, "weight", "weight-corvane")


def test_a_budgets_lines_lead_to_what_they_are_of(heated: tuple[Path, dict[str, Any]]) -> None:
    table = working(heated[0], "heat", "heat-corvane").one("table", class_="budget")
    links = {a.text: a.attrs["href"] for a in table.all("a")}
    assert links["heating value"] == "#heat-heating_value"
    assert links["the scale"].endswith("instruments/scale.html")
    assert links["one reading"].startswith("#result-heat-corvane-r")


def test_an_unknown_accuracy_is_said_to_be_missing_from_its_budget(tmp_path: Path) -> None:
    weighed(tmp_path, "1 g, accuracy unknown", "corvane,1,86\nostler,1,112\n")
    text = working(tmp_path, "weight", "weight-corvane").text
    assert "The accuracy of the scale isn’t known, so nothing of it is in here: the true uncertainty is larger." in text


def test_the_bar_has_one_piece_a_line_as_long_as_its_share(coarse: tuple[Path, dict[str, Any]]) -> None:
    place, told = coarse
    drawn = working(place, "weight", "weight-corvane").one("svg", class_="shares")
    lengths = [float(r.attrs["width"].rstrip("%")) for r in drawn.all("rect")]
    shares = sorted((b["share"] for b in result_of(told, "weight", "corvane")["budget"]), reverse=True)
    assert lengths == pytest.approx([100 * s for s in shares], abs=0.01)
    assert "a, the step the scale reads in: 61 %" in drawn.attrs["aria-label"].replace("\u00a0", " ")
