"""What a calibration of an instrument found."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from reportgen.campaign.dates import DayOf
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.instrument_terms import CorrectionOf, UncertaintyOf
from reportgen.campaign.scalar import Weight, Whole, Words, choice
from reportgen.campaign.shape import key
from reportgen.finding import Place

Join = Literal["straight lines", "one line"]
JoinOf = Annotated[Given[Join], choice("a way to join points", "straight lines", "one line")]


@dataclass(frozen=True, kw_only=True)
class WrittenCalibration:
    """A calibration: against what, what it adds to a reading, how well that is known, how long it counts."""

    at: Place
    date: DayOf | None = key("The day of it")
    by: Words | None = key("By whom")
    reference: Words | None = key("What it was compared with, and the certificate")
    correction: CorrectionOf | tuple[Entry[CorrectionOf], ...] | None = key(
        "What is added to every reading; or readings, each with what is added there", any_names=True
    )
    between: JoinOf | None = key("Between points: `straight lines` from one to the next, or `one line` fitted to all")
    u: UncertaintyOf | None = key("The standard uncertainty of the correction")
    uncertainty: UncertaintyOf | None = key("Its expanded uncertainty U, as certificates give it, with `k`")
    k: Weight | None = key("The coverage factor of that uncertainty, never guessed")
    degrees: Whole | None = key("The degrees of freedom of the uncertainty, where they are stated")
    expires: DayOf | None = key("The last day on which it counts")
