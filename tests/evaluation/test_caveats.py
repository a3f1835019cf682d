"""Caveats, incidents and exclusions reach what rests on the readings they touch, and nothing else."""

from __future__ import annotations

from pathlib import Path

import pytest

from reportgen.evaluation.evaluated import Caveat, bears_on
from reportgen.finding import Place
from reportgen.intake.reading import ReadingKey
from tests.evaluation.bench import evaluated, pair, result, value

HEAD = "title: T\ncontenders: {corvane: C, ostler: O, tamsin: T}\nmeasure:\n  gas: one reading, g, lower\n  wait: timed, s, lower\nreadings: readings.csv\n"
ROWS = "contender,pass,gas,wait\ncorvane,1,10.1,200\ncorvane,2,10.3,203\ncorvane,3,19.2,202\nostler,1,12.0,240\nostler,2,12.2,244\nostler,3,12.1,241\ntamsin,1,11.9,222\ntamsin,2,12.3,221\ntamsin,3,12.1,225\n"


def test_an_excluded_pass_counts_for_nothing_and_the_result_without_it_is_kept(tmp_path: Path) -> None:
    found = evaluated(
        tmp_path,
        HEAD
        + "exclude:\n  - {contender: corvane, pass: 3, about: gas, because: valve left open, decided: during the test}\n",
        readings=ROWS,
    )
    gas = result(found, "gas", "corvane")
    assert (gas.passes, gas.excluded) == (2, 1)
    assert value(found, "gas", "corvane") == pytest.approx(10.2)
    assert gas.without == pytest.approx((10.1 + 10.3 + 19.2) / 3)
    assert result(found, "wait", "corvane").excluded == 0
    (first,) = [f for f in found.firsts if f.quantity == "gas"]
    assert first.winner == "corvane"
    assert first.order_changes_without is True
    assert first.ranks_without["corvane"] != (1, 1), "first no more with 19.2 g among its passes"


def test_a_caveat_shows_on_results_comparisons_and_claims_that_rest_on_it(tmp_path: Path) -> None:
    found = evaluated(
        tmp_path, HEAD + "caveats:\n  - {about: gas, contender: ostler, says: It leaked.}\n", readings=ROWS
    )
    (leak,) = found.caveats
    on = {(r.quantity, r.contender) for r in found.results if leak in found.caveats_on(r.quantity, r.rests_on)}
    assert on == {("gas", "ostler")}
    with_ostler = pair(found, "gas", "corvane", "ostler")
    assert leak in found.caveats_on("gas", with_ostler.rests_on)
    assert leak not in found.caveats_on("gas", pair(found, "gas", "corvane", "tamsin").rests_on)
    assert leak not in found.caveats_on("wait", pair(found, "wait", "corvane", "ostler").rests_on)


def test_do_not_rank_takes_a_result_out_of_ranks_and_first_place(tmp_path: Path) -> None:
    found = evaluated(
        tmp_path,
        HEAD
        + "caveats:\n  - {about: wait, contender: corvane, says: The pot was half full., pushes: down, so: do not rank}\n",
        readings=ROWS,
    )
    wait = result(found, "wait", "corvane")
    assert wait.rank is None
    assert wait.blocked == "The pot was half full."
    (first,) = [f for f in found.firsts if f.quantity == "wait"]
    assert first.winner == "tamsin"
    assert "corvane" in first.unranked
    assert result(found, "wait", "tamsin").rank == (1, 1)


def test_a_caveat_meets_a_result_exactly_where_their_readings_meet() -> None:
    """Every combination of touched and used readings, narrowed or not."""
    keys = [ReadingKey("t", c, "1", "1", "", n) for c in ("a", "b") for n in ("x", "y")]
    sets = [frozenset(k for i, k in enumerate(keys) if mask >> i & 1) for mask in range(16)]
    for touches in sets:
        for rests_on in sets:
            for narrowed in ((), ("q",), ("other",)):
                caveat = Caveat("c", 1, "caveat", "s", "", False, touches, narrowed, "", Place("f"))
                expected = bool(touches & rests_on) and narrowed != ("other",)
                assert bears_on(caveat, frozenset({"q"}), rests_on) is expected
