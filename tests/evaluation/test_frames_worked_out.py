"""Frames of a film worked out as times: against `uncertainties` and the rates of television."""

from __future__ import annotations

import math
from fractions import Fraction
from pathlib import Path

import pytest

from reportgen.campaign.frame_rates import frame_rate
from reportgen.campaign.shape import NotThat
from reportgen.finding import Refused
from reportgen.metrology.arithmetic import subtract
from reportgen.metrology.uncertain import combined_standard_uncertainty
from reportgen.metrology.unit import parse_unit
from tests.evaluation.bench import THREE, evaluated, observer, result, uniform, value

LIFT = f"""title: Lift
{THREE}instruments: {{camera: 60000/1001 frames a second}}
tests:
  lift:
    title: Lift
    readings: {{file: readings.csv, columns: {{start: {{unit: frames, instrument: camera}}, end: {{unit: frames, instrument: camera}}}}}}
    quantities:
      lift time: {{formula: end - start, unit: s, better: lower}}
"""
RATE = Fraction(60000, 1001)


def test_two_frames_are_known_to_one_frame_each(tmp_path: Path) -> None:
    """u = 1/(rate·√6): two uniform errors of one frame each (JCGM 100, 4.3.7), as columns and in one cell."""
    _, found = observer(tmp_path, LIFT, "contender,start,end\ncorvane,1204,4820\nostler,10,30\nbrindle,20,500\n")
    ours = subtract(found["corvane", "end"], found["corvane", "start"])
    theirs = (4820 + uniform(0.5) - (1204 + uniform(0.5))) / float(RATE)
    assert ours.unit == parse_unit("s")
    assert ours.value == pytest.approx(theirs.nominal_value, rel=1e-15)
    assert combined_standard_uncertainty(ours) == pytest.approx(theirs.std_dev, rel=1e-12)
    assert combined_standard_uncertainty(ours) == pytest.approx(1 / float(RATE) / math.sqrt(6), rel=1e-12)


def test_the_same_in_one_cell_and_as_a_number_of_frames(tmp_path: Path) -> None:
    text = f"title: Fall\n{THREE}instruments: {{camera: 60000/1001 frames a second}}\nmeasure:\n  fall: timed, s, lower, camera\nreadings: readings.csv\n"
    told = evaluated(
        tmp_path, text, readings="contender,fall\ncorvane,frames 1204 to 4820\nostler,3616 frames\nbrindle,1.25 s\n"
    )
    for who in ("corvane", "ostler"):
        assert value(told, "fall", who) == pytest.approx(3616 * 1001 / 60000, rel=1e-15)
        assert result(told, "fall", who).u == pytest.approx(1001 / 60000 / math.sqrt(6), rel=1e-9)
    assert value(told, "fall", "brindle") == 1.25


def test_frames_that_become_frames_need_no_rate(tmp_path: Path) -> None:
    text = LIFT.replace("unit: s,", "unit: frames,").replace("instruments: {camera: 60000/1001 frames a second}\n", "")
    text = text.replace(", instrument: camera", "")
    told = evaluated(tmp_path, text, readings="contender,start,end\ncorvane,1204,4820\nostler,10,30\nbrindle,20,500\n")
    assert value(told, "lift-time", "corvane") == 3616


@pytest.mark.parametrize("cells", ["1204,4820", "1204 frames,frame 4820"])
def test_frames_without_a_rate_are_no_time(cells: str, tmp_path: Path) -> None:
    text = LIFT.replace("60000/1001 frames a second", "0.01 s")
    with pytest.raises(Refused) as refused:
        evaluated(tmp_path, text, readings=f"contender,start,end\ncorvane,{cells}\nostler,10,30\nbrindle,20,500\n")
    assert all("frame rate" in f.do for f in refused.value.findings)


@pytest.mark.parametrize(
    ("text", "rate"),
    # SMPTE ST 12-1 and ST 424: the rates of television are 1000/1001 of 24, 30, 60 a second (from memory)
    [
        ("29.97 frames a second", Fraction(30000, 1001)),
        ("59.94 frames per second", Fraction(60000, 1001)),
        ("23.976 frames/s", Fraction(24000, 1001)),
        ("60000/1001 frames a second", Fraction(60000, 1001)),
        ("30 a second", Fraction(30)),
        ("25 frames a second", Fraction(25)),
        ("12.5 a second", Fraction(25, 2)),
    ],
)
def test_a_frame_rate_is_an_exact_fraction(text: str, rate: Fraction) -> None:
    assert frame_rate(text) == rate


@pytest.mark.parametrize(
    "text", ["0 frames a second", "30/0 a second", "thirty a second", "30", "30 fps", "-30 a second"]
)
def test_what_is_no_frame_rate_is_refused(text: str) -> None:
    with pytest.raises(NotThat):
        frame_rate(text)
