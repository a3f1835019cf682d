"""A caveat that blocks takes its result out of sentence, ranks, pairs, claims and verdict; the value still shows."""

from __future__ import annotations

from pathlib import Path

from tests.accidents.accident_bench import GAS, GAS_ROWS, caveats, compiled, page, told_of
from tests.campaigns import comparison_of, result_of

CLAIM = GAS.replace(
    "ostler: Ostler Mk II",
    "ostler: {title: Ostler Mk II, claims: {says: under 12 g, quantity: gas burned, at most: 12 g}}",
)
BLOCK = "caveats:\n  - {about: gas burned, contender: ostler, says: Its canister was topped up with water, pushes: down, so: do not rank}\n"
CHEAP = GAS_ROWS.replace("223.9\n", "233.9\n", 1).replace("207.2", "217.6")  # 6.3 g and 6.3 g: Ostler would be first


def test_a_blocked_result_leaves_every_judgement_and_stays_in_sight(tmp_path: Path) -> None:
    free = told_of(tmp_path / "free", CLAIM, gas=CHEAP)
    assert free["first"][0]["winner"] == "ostler"
    assert free["claims"][0]["outcome"] == "supported"
    told = told_of(tmp_path / "blocked", CLAIM + BLOCK, gas=CHEAP)
    ostler = result_of(told, "gas-burned", "ostler")
    assert ostler["value"] == result_of(free, "gas-burned", "ostler")["value"]
    assert (ostler["rank"], ostler["blocked"]) == (None, "Its canister was topped up with water")
    assert told["first"][0]["winner"] is None
    assert "ostler" not in told["first"][0]["may_be_first"]
    assert "ostler" in told["first"][0]["unranked"]
    assert not comparison_of(told, "gas-burned", "corvane", "ostler")["resolved"]
    assert told["claims"][0]["outcome"] == "not tested"
    assert told["verdict"]["winner"] is None
    assert caveats(told, "caveat")[0]["pushes"] == "down"


def test_pages_give_the_reason_in_the_place_of_the_rank(tmp_path: Path) -> None:
    compiled(tmp_path, CLAIM + BLOCK, gas=CHEAP)
    text = page(tmp_path, "tests/gas-burned").text
    assert "Ostler Mk II isn’t ranked: Its canister was topped up with water" in text.replace("'", "’")
    assert "So the true figure is likely higher." in text
    assert "not ranked" in page(tmp_path, "index").text
    assert "topped up with water" in page(tmp_path, "contenders/ostler").text


def test_an_incident_blocks_as_a_caveat_does(tmp_path: Path) -> None:
    happened = "incidents:\n  - ostler, gas burned: fell off the bench\n    so: do not rank\n    pushes: unknown\n"
    told = told_of(tmp_path, CLAIM + happened, gas=CHEAP)
    assert result_of(told, "gas-burned", "ostler")["blocked"] == "fell off the bench"
    assert told["first"][0]["winner"] is None


def test_no_two_caveats_bear_one_id(tmp_path: Path) -> None:
    """Rows of results.json name a caveat by its id alone."""
    more = BLOCK + "incidents: [rain]\nexclude: {contender: ostler, pass: 2, because: z, decided: during the test}\n"
    told = told_of(tmp_path, CLAIM + more, gas=CHEAP)
    ids = [c["id"] for c in told["caveat_list"]]
    assert sorted(ids) == ["caveat-1", "exclusion-1", "incident-1"]
    assert set(result_of(told, "gas-burned", "ostler")["caveats"]) == set(ids)
