"""Single results of the demonstration worked out again from its raw tables and what its instruments say of themselves.

Nothing of the program is used: sums by hand, distributions drawn by numpy (JCGM 101:2008, 5 and 6.4: a limit is uniform,
scatter of passes Student's t times s/√n). Ends are quantiles of a million draws, good to 1 % of the half-width.
"""

from __future__ import annotations

import csv
import math
from pathlib import Path
from typing import Any

import numpy as np
import pyarrow.parquet as pq
import pytest
from numpy.typing import NDArray

from tests.campaigns import result_of

RAW = Path(__file__).parents[2] / "demo_campaign" / "raw"
DRAWS = 1_000_000
STOVES = ("corvane", "ostler", "brindle", "tamsin")
Drawn = NDArray[np.float64]


def logged(what: str) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    with (RAW / "bench-log.csv").open(encoding="utf-8", newline="") as table:
        for r in csv.DictReader(table):
            if r["what"] == what:
                found.setdefault(r["contender"], []).append(r["value"])
    return found


class Drawing:
    """Errors, each drawn anew."""

    def __init__(self) -> None:
        self.stream = np.random.default_rng(20260524)

    def within(self, half: float) -> Drawn:
        return self.stream.uniform(-half, half, DRAWS)

    def student(self, size: float, degrees: float) -> Drawn:
        return size * self.stream.standard_t(degrees, DRAWS)


def agrees(told: dict[str, Any], value: float, u: float, drawn: Drawn) -> None:
    """`u` to first order (JCGM 100, 5.1.2); the ends are those of the draws."""
    low, high = np.quantile(drawn, (0.025, 0.975))
    assert told["value"] == pytest.approx(value, rel=1e-9)
    assert told["u"] == pytest.approx(u, rel=1e-6)
    assert (told["low"], told["high"]) == pytest.approx((low, high), abs=0.01 * (high - low) / 2)


@pytest.mark.parametrize("stove", ["corvane", "ostler", "tamsin"])
def test_carbon_monoxide_has_the_meters_two_limits_beside_pooled_scatter(demo_told: dict[str, Any], stove: str) -> None:
    """±(5 digits of 1 ppm + 5 %); two passes each, of three stoves, 3 degrees of freedom (JCGM 100, H.3.6's pooling)."""
    read = {c: [float(x) for x in v] for c, v in logged("carbon monoxide").items() if not v[0].startswith("over")}
    degrees = sum(len(v) - 1 for v in read.values())
    pooled = math.sqrt(sum((len(v) - 1) * float(np.var(v, ddof=1)) for v in read.values()) / degrees)
    mean, a = float(np.mean(read[stove])), pooled / math.sqrt(len(read[stove]))
    d = Drawing()
    drawn = mean + d.within(5) + d.within(0.05 * mean) + d.student(a, degrees)
    agrees(
        result_of(demo_told, "carbon-monoxide", stove), mean, math.sqrt(a * a + 25 / 3 + (0.05 * mean) ** 2 / 3), drawn
    )


@pytest.mark.parametrize("row", range(4))
def test_noise_is_the_level_less_its_yard_with_the_meters_limit_and_the_declared_scatter(
    demo_told: dict[str, Any], row: int
) -> None:
    """ISO 3744:2010, 8.2.3: energies are subtracted, nothing where the yard lies over 15 dB below. ±1.5 dB is in both
    readings alike; 0.4 dB rests on 12 passes of 3 products, 9 degrees of freedom."""
    read = pq.read_table(RAW / "noise.parquet").to_pylist()[row]  # type: ignore[no-untyped-call]
    level, yard = float(read["noise"]), float(read["noise background"])
    left = 10 * math.log10(10 ** (level / 10) - 10 ** (yard / 10)) if level - yard <= 15 else level
    d = Drawing()
    drawn = left + d.within(1.5) + d.student(0.4, 9)
    agrees(result_of(demo_told, "noise", read["contender"].lower()), left, math.sqrt(0.75 + 0.16), drawn)


@pytest.mark.parametrize(
    ("stove", "weighed"),
    [
        ("corvane", (362.4, 331.0, 331.0, 298.2)),
        ("ostler", (361.9, 330.8, 330.8, 297.3)),
        ("brindle", (362.7, 323.3, 323.3, 283.0)),
    ],
)
def test_gas_over_two_evenings_is_known_to_four_steps_of_the_scale(
    demo_told: dict[str, Any], stove: str, weighed: tuple[float, ...]
) -> None:
    """The scale's ±0.3 g is the same in all four and drops out; where nothing was added, nothing was weighed."""
    d = Drawing()
    burned = weighed[0] - weighed[1] + weighed[2] - weighed[3]
    drawn = burned + sum((d.within(0.05) for _ in weighed), np.zeros(DRAWS))
    agrees(result_of(demo_told, "gas-over-two-evenings", stove), burned, math.sqrt(4 * 0.01 / 12), drawn)


@pytest.mark.parametrize(
    ("stove", "seconds", "before", "after"),
    [
        ("corvane", 601.3, 352.7, 351.4),
        ("ostler", 600.8, 349.9, 348.2),
        ("brindle", 600.4, 350.6, 346.3),
        ("tamsin", 602.1, 351.8, 349.5),
    ],
)
def test_minutes_on_a_gram_at_a_simmer_are_drawn(
    demo_told: dict[str, Any], stove: str, seconds: float, before: float, after: float
) -> None:
    """Two steps of 0.1 g below, one of 0.1 s and a hand of ±0.2 s above."""
    grams = before - after
    minutes = seconds / 60 / grams
    of_time = math.hypot(0.2 / math.sqrt(3), 0.1 / math.sqrt(12)) / 60 / grams
    d = Drawing()
    drawn = (seconds + d.within(0.2) + d.within(0.05)) / 60 / (grams + d.within(0.05) + d.within(0.05))
    u = math.hypot(of_time, minutes / grams * math.sqrt(2 * 0.01 / 12))
    agrees(result_of(demo_told, "simmer", stove), minutes, u, drawn)


@pytest.mark.parametrize("stove", STOVES)
def test_time_on_a_gram_rests_on_the_steel_of_another_canister(demo_told: dict[str, Any], stove: str) -> None:
    """A clock read to the minute, two weighings in steps of 0.1 g, and the assumption that steel differs by up to 1 g."""
    (full,), (empty,) = logged("full canister")[stove], logged("empty canister")["all"]
    grams, minutes = float(full) - float(empty), float(logged("burn on one canister")[stove][0])
    seconds = 60 * minutes / grams
    u = seconds * math.hypot(math.sqrt(1 / 12) / minutes, math.sqrt(1 / 3 + 2 * 0.01 / 12) / grams)
    d = Drawing()
    drawn = 60 * (minutes + d.within(0.5)) / (grams + d.within(1) + d.within(0.05) + d.within(0.05))
    agrees(result_of(demo_told, "time-on-a-gram", stove), seconds, u, drawn)


@pytest.mark.parametrize(("stove", "value", "rough"), [("corvane", 41, 0), ("ostler", 43, 2), ("tamsin", 55, 1)])
def test_a_knob_is_as_warm_as_the_thermometer_and_the_eye_are_sure(
    demo_told: dict[str, Any], stove: str, value: float, rough: float
) -> None:
    d = Drawing()
    drawn = value + d.within(1) + d.within(0.05) + d.within(rough)
    u = math.sqrt((1 + rough**2) / 3 + 0.01 / 12)
    agrees(result_of(demo_told, "knob-temperature", stove), value, u, drawn)


@pytest.mark.parametrize(("stove", "frames"), [("corvane", 58), ("ostler", 41), ("tamsin", 53)])
def test_click_to_flame_lies_between_two_frames_at_each_end(demo_told: dict[str, Any], stove: str, frames: int) -> None:
    """60000/1001 frames a second; either end is half a frame sure, both together triangular (JCGM 101, 6.4.5)."""
    frame = 1001 / 60000
    d = Drawing()
    drawn = frames * frame + d.within(frame / 2) + d.within(frame / 2)
    agrees(result_of(demo_told, "click-to-flame", stove), frames * frame, frame / math.sqrt(6), drawn)
