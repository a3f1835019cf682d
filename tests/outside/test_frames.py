"""Frame rates of television through a compiled campaign: each is an exact fraction, and an hour of frames shows it.

SMPTE ST 12-1 (from memory): time codes that drop count 30 numbers a second and leave out 2 a minute but every tenth, so an
hour of them has 3600·30 − 54·2 = 107 892 frames; at 30 000/1001 a second these last 3599.9964 s.
"""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from tests.campaigns import result_of, results_of

HOUR = 3600 * 30 - 54 * 2


def lasted(place: Path, rate: str, frames: int) -> float:
    """Seconds between two frames as results.json has them."""
    yaml = (
        f"title: T\ncontenders: {{a: The first, b: The second}}\ninstruments: {{camera: {rate} frames a second}}\n"
        "measure: {run: 'timed, s, lower, camera'}\nreadings: readings.csv\n"
    )
    told = results_of(place, yaml, readings=f"contender,run\na,frames 1000 to {1000 + frames}\nb,frames 10 to 40\n")
    value = result_of(told, "run", "a")["value"]
    assert isinstance(value, float)
    return value


@pytest.mark.parametrize("rate", ["29.97", "30000/1001"])
def test_an_hour_that_drops_frames_lasts_a_hair_less_than_an_hour(rate: str, tmp_path: Path) -> None:
    assert lasted(tmp_path, rate, HOUR) == pytest.approx(3599.9964, abs=5e-5)


@pytest.mark.parametrize(
    ("rate", "exact"),
    [
        ("23.976", Fraction(24000, 1001)),
        ("59.94", Fraction(60000, 1001)),
        ("119.88", Fraction(120000, 1001)),
        ("24", Fraction(24)),
        ("25", Fraction(25)),
        ("50", Fraction(50)),
        ("240", Fraction(240)),
    ],
)
def test_each_rate_is_its_exact_fraction(rate: str, exact: Fraction, tmp_path: Path) -> None:
    """SMPTE ST 2036-1 and ST 424: rates with 1001 below (from memory); others are what they say."""
    assert lasted(tmp_path, rate, 100_000) == pytest.approx(
        float(100_000 / exact), rel=1e-11
    )  # results.json has twelve digits
