"""The step an instrument reads in, in words."""

from __future__ import annotations

from reportgen.campaign.declared import Instrument
from reportgen.prose.amounts import typed
from reportgen.wording.frame_rate import frames_a_second
from reportgen.wording.language import say


def reads_in(instrument: Instrument) -> str:
    """ "0.1 g"; of a camera "one frame, at 60000/1001 (59.94) frames a second"; "" where nothing is known."""
    if instrument.resolution:
        return typed(instrument.resolution)
    if instrument.frame_rate:
        return say("frames.step", rate=frames_a_second(instrument.frame_rate))
    return ""
