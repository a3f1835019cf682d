"""Instruments that share nothing with each other, behind a logger: each trace errs by itself, and alike from end to end.

JCGM 100:2008, 4.3.7 (limits), F.1.2.3 (what is common cancels) and 5.1.2.
"""

from math import sqrt
from pathlib import Path
from typing import Any

import pytest

from tests.campaigns import comparison_of, result_of, results_of

COOLING = """\
title: Cooling
contenders: {one: One, other: Other}
instruments: {probes: "0.1 °C, accuracy ±1 °C, shared SHARED"}
tests: [cold]
"""
COLD = """\
title: How cold
readings: {logger: raw/log.csv, columns: {can: {column: can, unit: °C, instrument: probes}}, time: "t, s"}
quantities:
  coldest: {kind: logged, formula: lowest(can), unit: °C, better: higher}
  cooled by: {kind: logged, formula: "at(can, 30) - at(can, 330)", unit: °C, better: lower}
headline: coldest
"""
LOG = "t;One;Other\n" + "".join(f"{t};{15 - t / 60:.1f};{15 - t / 90:.1f}\n" for t in range(0, 361, 30))


def cooled(place: Path, shared: str) -> dict[str, Any]:
    files = {"tests/cold.yaml": COLD, "raw/log.csv": LOG}
    return results_of(place, COOLING.replace("SHARED", shared), **files)


def test_probes_of_their_own_do_not_cancel_between_contenders(tmp_path: Path) -> None:
    """Two of ±1 °C differ by less than ±2 °C, triangular: 95 % within 2·(1 − √0.05); one probe for both cancels."""
    own = comparison_of(cooled(tmp_path / "own", "nothing"), "coldest", "one", "other")
    one = comparison_of(cooled(tmp_path / "one", "offset"), "coldest", "one", "other")
    reach = 2 * (1 - sqrt(0.05))
    assert (own["differed_high"] - own["differed_low"]) / 2 == pytest.approx(reach, abs=0.01)  # steps of 0.1 beside it
    assert (one["differed_high"] - one["differed_low"]) / 2 == pytest.approx(0.1)


def test_what_a_probe_is_off_cancels_along_its_own_trace(tmp_path: Path) -> None:
    """A difference of two samples: two steps of 0.1 °C and nothing of the ±1 °C; a single sample has all of it."""
    told = cooled(tmp_path, "nothing")
    coldest, cooled_by = result_of(told, "coldest", "one"), result_of(told, "cooled-by", "one")
    assert coldest["u"] == pytest.approx(sqrt(1 / 3 + 0.01 / 12))
    assert cooled_by["u"] == pytest.approx(sqrt(2 * 0.01 / 12))
