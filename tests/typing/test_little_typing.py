"""A comparison of four contenders and fifteen tests is typed in few lines, nothing twice, and comes out right.

`pumps/` is written as short as the format allows, by hand, as an author would: mostly single readings on one sheet.
How it is counted: every line of YAML and of tables that isn't empty (the laboratory's report is an attachment). "Typed
twice" is told apart by sort, in the tests below: an id is declared in one place and in a table only heads its column or
row; a unit stands once for each quantity, in `measure:`; an instrument once for all; an event once, where it happened.
"""

from __future__ import annotations

import csv
import html
import re
import shutil
from collections import Counter
from pathlib import Path
from typing import Any

import pytest
import yaml

from tests.campaigns import comparison_of, compile_folder, result_of

PUMPS = Path(__file__).parent / "pumps"
TYPED = tuple(sorted(p for p in PUMPS.rglob("*") if p.suffix in (".yaml", ".csv", ".md")))
AT_MOST = 130


@pytest.fixture(scope="module")
def declared() -> dict[str, Any]:
    found = yaml.load((PUMPS / "campaign.yaml").read_text(encoding="utf-8"), yaml.BaseLoader)
    assert isinstance(found, dict)
    return found


@pytest.fixture(scope="module")
def sheet() -> list[list[str]]:
    with (PUMPS / "sheet.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.reader(file))


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, dict[str, Any]]:
    folder = tmp_path_factory.mktemp("typing") / "pumps"
    shutil.copytree(PUMPS, folder)
    return folder / ".site/pumps", compile_folder(folder)


def words_of(page: Path) -> str:
    text = html.unescape(re.sub(r"<[^>]+>", " ", page.read_text(encoding="utf-8")))
    return " ".join(text.replace("’", "'").split())


def test_it_is_typed_in_few_lines() -> None:
    lines = [line for path in TYPED for line in path.read_text(encoding="utf-8").splitlines() if line.strip()]
    assert len(lines) <= AT_MOST
    assert max(map(len, lines)) <= 120, "few lines, and none of them long"


def test_it_is_a_comparison_of_four_contenders_and_fifteen_tests(declared: dict[str, Any]) -> None:
    assert len(declared["contenders"]) == 4
    assert len(declared["measure"]) == 15
    assert "tests" not in declared


def test_no_id_is_declared_twice(declared: dict[str, Any], sheet: list[list[str]]) -> None:
    """An id is a key of `contenders:` or `measure:`; the sheet says a contender once and a quantity once a pass."""
    keys = [*declared["contenders"], *declared["measure"]]
    assert len(set(keys)) == len(keys)
    assert sheet[0][3:] == list(declared["contenders"])
    rows = Counter((row[0], row[1]) for row in sheet[1:])
    assert max(rows.values()) == 1
    assert {row[0] for row in sheet[1:]} == declared["measure"].keys() - {"slips"}, "what is counted is no row"
    of_contender = [keys for c in declared["contenders"].values() for keys in c]
    assert "id" not in of_contender


def test_a_unit_stands_once_for_a_quantity_and_in_no_table(declared: dict[str, Any], sheet: list[list[str]]) -> None:
    units = set(declared["instruments"]) | {"mg/kg"}
    of_line = [[p for p in said.split(", ") if p in units] for said in declared["measure"].values() if "," in said]
    assert all(len(found) <= 1 for found in of_line)
    cells = [cell for row in sheet for cell in row]
    assert not [c for c in cells if "(" in c and not c.startswith("none")], "no unit behind a heading"
    assert not [c for c in cells if any(re.search(rf"\d\s*{re.escape(u)}\b", c) for u in units)]
    assert "unit" not in sheet[0]


def test_an_instrument_is_named_once(declared: dict[str, Any]) -> None:
    everything = "\n".join(p.read_text(encoding="utf-8") for p in TYPED)
    for name in declared["instruments"].values():
        assert len(re.findall(rf"(?<![\w-]){name}(?![\w-])", everything)) == 1


def test_an_event_is_told_once_and_counted_from_there(declared: dict[str, Any], site: tuple[Path, Any]) -> None:
    in_one_line, in_full = declared["incidents"]
    assert in_one_line == {"ormeth, fill time, pass 2": "slip"}
    assert in_full["what"] == "The head slipped off twice."
    assert {c: result_of(site[1], "slips", c)["value"] for c in declared["contenders"]} == {
        "brellan": 0, "sprenna": 0, "tallick": 2, "ormeth": 1,
    }  # fmt: skip
    caveats = {c["id"]: c for c in site[1]["caveat_list"]}
    on_tallick = [caveats[id] for id in result_of(site[1], "fill-time", "tallick")["caveats"]]
    assert [(c["sort"], c["says"]) for c in on_tallick] == [("incident", "The head slipped off twice.")]


def test_a_missing_part_is_said_once_and_answers_its_claim(declared: dict[str, Any], site: tuple[Path, Any]) -> None:
    assert "as received" not in declared["contenders"]["brellan"]
    (claim,) = [c for c in site[1]["claims"] if c["included"]]
    assert (claim["contender"], claim["outcome"], claim["scope"]) == ("brellan", "contradicted", "this run")
    assert "Missing from the box: spare seal." in words_of(site[0] / "contenders/brellan.html")


def test_weight_and_length_are_not_typed_again_as_facts(declared: dict[str, Any], site: tuple[Path, Any]) -> None:
    assert all("facts" not in c for c in declared["contenders"].values())
    particulars = words_of(site[0] / "contenders/tallick.html").partition("Particulars")[2]
    assert re.search(r"Weight 243\.000 g|Weight 243\.0 g", particulars)
    assert "Length 250 mm" in particulars


def test_every_notation_comes_out_as_what_it_is(site: tuple[Path, Any]) -> None:
    """Bounds stay bounds; what was rough is wider than its neighbours; a difference is added to what it was read by."""
    told = site[1]
    top = result_of(told, "top-pressure", "tallick")
    assert (top["value"], top["limit"], top["u"]) == (10, "above", None)
    for contender in ("sprenna", "tallick"):
        leak = result_of(told, "leak-overnight", contender)
        assert (leak["value"], leak["limit"]) == (0.05, "below")
    warm = result_of(told, "barrel-temperature", "sprenna")
    assert warm["value"] == pytest.approx(48.5 + 6)
    beside = comparison_of(told, "barrel-temperature", "brellan", "sprenna")
    assert beside["difference"] == pytest.approx(-6), "one shared reading: its offset cancels"
    rough = result_of(told, "dead-volume", "brellan")
    assert rough["u"] > result_of(told, "dead-volume", "tallick")["u"]
    about = result_of(told, "hose-reach", "sprenna")
    assert about["u"] > result_of(told, "hose-reach", "brellan")["u"]
    assert result_of(told, "hose-reach", "ormeth")["missing"] == "no hose in the box"
    lead = result_of(told, "lead-in-the-grip", "brellan")
    assert (lead["value"], lead["limit"]) == (5, "below")
    assert result_of(told, "fits-both-valves", "ormeth")["yes"] == 0
    assert result_of(told, "grip", "sprenna")["grade"] == "fair"


def test_passes_are_averaged_with_their_conditions_beside_them(site: tuple[Path, Any]) -> None:
    fill = result_of(site[1], "fill-time", "brellan")
    assert fill["value"] == pytest.approx((81.2 + 79.9) / 2)
    assert [p["conditions"] for p in fill["by_pass"]] == [{"air": "17.5"}, {"air": "18.4"}]
    page = words_of(site[0] / "tests/fill-time.html").replace(" :", ":")
    assert "The same for every contender: tyre, rim and starting pressure." in page
    assert "Air varied from pass to pass" in page


def test_prices_and_claims_stand_as_typed(site: tuple[Path, Any]) -> None:
    money = {v["contender"]: (v["low"], v["high"]) for v in site[1]["verdict"]["value"]}
    assert money["sprenna"] == (24, 31)
    outcomes = {(c["contender"], c["claim"]): (c["outcome"], c["reason"]["code"]) for c in site[1]["claims"]}
    assert outcomes["brellan", "Up to 8 bar"] == ("supported", "conforms")
    assert outcomes["tallick", "Metal throughout"] == ("contradicted", "looked")
    assert outcomes["tallick", "A joy to use"] == ("not tested", "not-testable")
    assert outcomes["ormeth", "Quiet as a whisper at 2 bar"] == ("not tested", "other-condition")
    assert [c["at_odds"] for c in site[1]["claims"] if c["contender"] == "sprenna"] == [["c1"]]
