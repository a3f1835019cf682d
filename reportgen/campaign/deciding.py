"""When something was decided, as authors write it: in words, with a day, or a day alone."""

from __future__ import annotations

from typing import Annotated, get_args

from reportgen.campaign.dates import NOT_NOTED, day
from reportgen.campaign.dates import PATTERN as DAY_PATTERN
from reportgen.campaign.declared.deciding import DecidedWhen, WhenDecided
from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.campaign.given import Given
from reportgen.campaign.shape import NotThat, Scalar

MOMENTS = tuple(moment for moment in get_args(DecidedWhen) if moment)
_DAY = DAY_PATTERN.removeprefix(r"^\s*").removesuffix(r"\s*$")
_PATTERN = rf"^\s*(?:(?:{'|'.join(MOMENTS)})(?:\s*,\s*{_DAY})?|{_DAY})\s*$"


def when_decided(text: str) -> WhenDecided:
    """`before the test`, `after seeing results, 2026-05-20`, `2026-04-30`, `not noted`. Raises NotThat."""
    said = text.strip()
    moment, comma, rest = said.partition(",")
    found = next((m for m in MOMENTS if m == moment.strip()), None)
    if found is None and said[:1].isdigit():
        return WhenDecided("", day(said))
    if found is None:
        raise NotThat(f"“{said}” is not a time of deciding", did_you_mean(moment.strip(), MOMENTS))
    return WhenDecided(found, day(rest) if comma and rest.strip() != NOT_NOTED else None)


DecidedOf = Annotated[
    Given[WhenDecided],
    Scalar("a time of deciding", when_decided, _PATTERN, WhenDecided(NOT_NOTED),
           ("before the test", "after seeing results, 2026-05-20", "2026-04-30", NOT_NOTED),
           types=("string", "integer")),
]  # fmt: skip
