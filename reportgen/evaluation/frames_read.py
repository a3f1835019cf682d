"""Frames of a film made a time through the frame rate of the camera that took them.

A frame number is known to one frame: uniform, so u = 1/(rate·√12), and a time between two of them has
u = 1/(rate·√6). The rates of television are exact fractions, 60000/1001 a second and its like (SMPTE ST 12-1).
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from fractions import Fraction

from reportgen.campaign.declared import Campaign
from reportgen.intake.notations.frames import counts_frames, is_frames
from reportgen.intake.reading import Reading
from reportgen.metrology.uncertain import Source

SECONDS = "s"


def rates(campaign: Campaign) -> Mapping[str, Fraction]:
    """Frames a second by instrument."""
    return {i.id: i.frame_rate for i in campaign.instruments.values() if i.frame_rate}


def kept_as_frames(campaign: Campaign) -> frozenset[tuple[str, str]]:
    """(test, reading) of what goes into a result that is itself in frames: it stays a number of pictures."""
    return frozenset((t.id, n) for t in campaign.tests for q in t.quantities if is_frames(q.unit) for n in q.reads)


def rate_of(reading: Reading, campaign: Campaign) -> Fraction | None:
    """The rate that makes a time of this reading; None where it is no frames, or stays frames."""
    if not is_frames(reading.unit) or (reading.key.test, reading.key.name) in kept_as_frames(campaign):
        return None
    return rates(campaign).get(reading.instrument)


def unit_read(reading: Reading, campaign: Campaign) -> str:
    """The unit a reading goes into formulas with: seconds for frames of a known rate, else the one written."""
    return SECONDS if rate_of(reading, campaign) else reading.unit


def first_frame(reading: Reading, instrument: str, where: str, frame: float) -> Mapping[Source, float]:
    """What not knowing the earlier frame adds to a time of two ends (`frames 1204 to 4820`, `3616 frames`): a step of
    its own, beside the later one's.

    `frame` is how long one lasts, in the unit of the reading.
    """
    if not (reading.frames or counts_frames(reading.text)):
        return {}
    return {Source("step", instrument, f"{where}, first frame"): frame / math.sqrt(12)}
