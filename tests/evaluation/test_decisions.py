"""What the readings support: single readings, bounds, claims, money."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.evaluation.bench import evaluated, pair, result, value

TWO = "contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}\n"


def test_one_reading_each_says_not_enough(tmp_path: Path) -> None:
    found = evaluated(
        tmp_path, "title: T\n" + TWO + "measure: {noise: 'level, dB, lower'}\nreadings: readings.csv\n",
        readings="contender,noise\ncorvane,71.2\nostler,69.5\n",
    )  # fmt: skip
    only = pair(found, "noise", "corvane", "ostler")
    assert only.decision == "not enough to say"
    assert (only.u, only.low, only.high) == (None, None, None)
    assert only.differed is True  # 1.7 dB on a scale read to 0.1 dB
    assert result(found, "noise", "ostler").covers == "instrument"
    assert result(found, "noise", "ostler").rank == (1, 2)
    assert found.firsts[0].winner is None


def test_off_the_scale_is_last_by_an_unknown_amount(tmp_path: Path) -> None:
    found = evaluated(
        tmp_path,
        "title: T\ncontenders: {a: A, b: B, c: C}\nmeasure: {co: 'peak, ppm, lower'}\nreadings: readings.csv\n",
        readings="contender,pass,co\na,1,40\nb,1,60\nc,1,over 999\na,2,44\nb,2,63\nc,2,over 999\n",
    )
    beyond = result(found, "co", "c")
    assert beyond.estimate is not None
    assert (beyond.estimate.limit, beyond.estimate.value, beyond.u) == ("above", 999, None)
    assert beyond.rank == (3, 3)
    assert pair(found, "co", "a", "c").favours == "a"


@pytest.mark.parametrize(
    ("bound", "outcome"),
    [("at most: 3 min", "contradicted"), ("at most: 4 min", "supported"), ("at most: 214 s", "undecided")],
)
def test_a_claim_is_held_against_what_was_measured(tmp_path: Path, bound: str, outcome: str) -> None:
    found = evaluated(
        tmp_path,
        f"""\
title: T
contenders:
  corvane:
    title: Corvane Sol
    claims:
      - says: Boils fast
        source: box
        quantity: boil time
        {bound}
  ostler: Ostler Mk II
measure: {{boil time: 'timed, s, lower'}}
readings: readings.csv
""",
        readings="contender,pass,boil time\ncorvane,1,212.4\nostler,1,230.1\nostler,2,226.4\ncorvane,2,214.9\n",
    )
    (claim,) = found.claims
    assert claim.outcome == outcome
    assert claim.scope == "repeat"
    assert claim.rests_on == result(found, "boil-time", "corvane").rests_on


def test_a_dearer_contender_that_is_resolved_worse_is_dominated(tmp_path: Path) -> None:
    prices = "contenders:\n  a: {title: A, prices: [{paid: 30 EUR}]}\n  b: {title: B, prices: [{paid: 50 EUR}]}\n  c: {title: C, prices: [{paid: 20 EUR}]}\n"
    found = evaluated(
        tmp_path, "title: T\n" + prices + "measure: {t: 'timed, s, lower'}\nreadings: readings.csv\n",
        readings="contender,pass,t\na,1,100.1\nb,1,150.3\nc,1,160.2\na,2,100.8\nb,2,150.9\nc,2,160.6\n",
    )  # fmt: skip
    assert found.verdict is not None
    assert {v.contender: v.dominated_by for v in found.verdict.value} == {"a": (), "b": ("a",), "c": ()}
    assert found.verdict.winner == "a"


def test_yes_and_no_are_counted_and_not_ranked(tmp_path: Path) -> None:
    found = evaluated(
        tmp_path, "title: T\n" + TWO + "measure: {lit: yes/no}\nreadings: readings.csv\n",
        readings="contender,pass,lit\ncorvane,1,yes\ncorvane,2,no\nostler,1,yes\nostler,2,yes\n",
    )  # fmt: skip
    assert (result(found, "lit", "corvane").yes, result(found, "lit", "corvane").of) == (1, 2)
    assert value(found, "lit", "ostler") == 1.0
    assert result(found, "lit", "ostler").rank is None
    assert not found.comparisons


def test_mixed_units_are_converted(tmp_path: Path) -> None:
    """1 kgf = 9.806 65 N; 1 lbf = 4.448 221 615 260 5 N (NIST SP 811, appendix B)."""
    found = evaluated(
        tmp_path, "title: T\n" + TWO + "measure: {pull: 'peak, N, higher'}\nreadings: readings.csv\n",
        readings="contender,pass,what,value,unit\ncorvane,1,pull,2,kgf\nostler,1,pull,5,lbf\n",
    )  # fmt: skip
    assert value(found, "pull", "corvane") == pytest.approx(19.6133, abs=1e-9)
    assert value(found, "pull", "ostler") == pytest.approx(22.2411080763025, abs=1e-9)


def test_what_was_not_tested_says_so(tmp_path: Path) -> None:
    found = evaluated(
        tmp_path, "title: T\ncontenders: {a: A, b: B, c: C}\nmeasure: {t: 'timed, s, lower'}\nreadings: readings.csv\n",
        readings="contender,pass,t\na,1,100.1\nb,1,none (spilled)\n",
    )  # fmt: skip
    assert result(found, "t", "b").missing == "spilled"
    assert result(found, "t", "c").missing == "not yet tested"
    assert set(found.firsts[0].unranked) == {"b", "c"}


SESSIONS = "title: T\ncontenders: {a: A, b: B, c: C}\nmeasure: {t: 'timed, s, lower'}\nreadings: readings.csv\n"


def test_contenders_of_different_sessions_are_not_ranked_against_each_other(tmp_path: Path) -> None:
    found = evaluated(
        tmp_path, SESSIONS,
        readings="contender,session,pass,t\na,sat,1,100.1\na,sat,2,100.8\nb,sat,1,120.2\nb,sat,2,120.9\nc,sun,1,90.1\nc,sun,2,90.7\n",
    )  # fmt: skip
    assert pair(found, "t", "a", "b").favours == "a"
    assert pair(found, "t", "a", "c").reason.code == "sessions-apart"
    assert pair(found, "t", "a", "c").favours is None


def test_a_contender_run_in_both_sessions_links_them(tmp_path: Path) -> None:
    rows = "a,sat,1,100.1\na,sat,2,100.8\nb,sat,1,120.2\nb,sat,2,120.9\nc,sun,1,90.1\nc,sun,2,90.7\na,sun,3,101.0\na,sun,4,101.6\n"
    found = evaluated(tmp_path, SESSIONS, readings="contender,session,pass,t\n" + rows)
    assert pair(found, "t", "a", "c").favours == "c"


def test_a_claim_on_a_rise_in_temperature_is_a_step_not_a_point(tmp_path: Path) -> None:
    """90 °F of rise are 50 K (NIST SP 811, B.8): a rise of 45 °C meets "at most 90 °F"; read as 32.2 °C it would not."""
    found = evaluated(
        tmp_path,
        "title: T\ncontenders:\n  a: {title: A, claims: [{says: Stays cool, source: box, quantity: rise, at most: 90 °F}]}\n  b: B\ntests: [warm]\n",
        readings="contender,pass,hot,cold\na,1,65.1,20.0\nb,1,70.2,20.1\na,2,64.9,20.2\nb,2,70.1,20.3\n",
        **{"tests/warm.yaml": "title: Warm\nreadings: {file: readings.csv, columns: {hot: {column: hot, unit: °C}, cold: {column: cold, unit: °C}}}\nquantities:\n  rise: {formula: hot - cold, unit: °C, better: lower}\n"},
    )  # fmt: skip
    assert found.claims[0].outcome == "supported"


def test_an_instrument_named_by_unit_takes_the_rows_in_that_unit(tmp_path: Path) -> None:
    found = evaluated(
        tmp_path, "title: T\n" + TWO + "instruments: {kgf: puller, lbf: puller}\nmeasure: {pull: 'peak, N, higher'}\nreadings: readings.csv\n",
        readings="contender,pass,what,value,unit\ncorvane,1,pull,2.00,kgf\nostler,1,pull,5.00,lbf\n",
        **{"instruments.yaml": "puller: 0.05 kgf, accuracy ±0.5 kgf\n"},
    )  # fmt: skip
    estimate = result(found, "pull", "ostler").estimate
    assert estimate is not None
    (offset,) = [c.size for c in estimate.contributions if c.source.sort == "offset"]
    assert offset == pytest.approx(0.5 * 9.80665 / 3**0.5)  # ±0.5 kgf, uniform (JCGM 100, 4.3.7)


def test_digits_typed_in_another_unit_show_no_finer_step_than_the_instruments(tmp_path: Path) -> None:
    """1 g = 0.035 273 96 oz (NIST SP 811, B.8): a scale of 1 g typed as 3.00 oz still steps by 0.0353 oz, not 0.01."""
    found = evaluated(
        tmp_path, "title: T\n" + TWO + "measure: {w: 'one reading, oz, lower, scale'}\nreadings: readings.csv\n",
        readings="contender,w\ncorvane,3.00\nostler,3.21\n", **{"instruments.yaml": "scale: 1 g, accuracy unknown\n"},
    )  # fmt: skip
    estimate = result(found, "w", "corvane").estimate
    assert estimate is not None
    assert estimate.steps == pytest.approx((1 / 28.349523125,))


def test_what_went_past_the_limit_is_named_as_reading_highest(tmp_path: Path) -> None:
    """More than 120 is more than 118, whatever it was: chart and sentence must name the same one."""
    from reportgen.prose.finding_line import finding_line
    from tests.evaluation.bench import all_stages

    declared, _, found = all_stages(
        tmp_path, "title: T\n" + TWO + "measure: {burn: 'run to a limit, min, higher'}\nreadings: readings.csv\n",
        readings="contender,burn\ncorvane,118\nostler,over 120\n",
    )  # fmt: skip
    assert finding_line(declared.campaign, found, "burn").startswith("Ostler Mk II read highest")
