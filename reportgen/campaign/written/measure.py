"""What a test measures: quantities, and the columns they are read from."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, ClassVar

from reportgen.campaign import short
from reportgen.campaign.given import Given
from reportgen.campaign.kinds import KINDS
from reportgen.campaign.scalar import Name, Words, choice
from reportgen.campaign.shape import Short, key
from reportgen.finding import Place

KindOfIt = Annotated[Given[str], choice("a kind of measurement", *KINDS)]
Direction = Annotated[Given[str], choice("a direction", *short.BETTER)]


@dataclass(frozen=True)
class WrittenQuantity:
    """One quantity that is measured."""

    at: Place
    title: Words | None = key("How pages name it, where the name as typed won't do")
    kind: KindOfIt | None = key("The ready-made measurement it is: it writes the formula and expects the columns")
    unit: Words | None = key("Its unit, as people write it: g, °F, lbf, dB")
    better: Direction | None = key("Which way is better; without it nothing is ranked")
    instrument: Name | None = key("The instrument its readings are taken with")
    formula: Words | None = key("How it is worked out, in place of what the kind wrote")
    SHORT: ClassVar[Short] = Short(short.measure, examples=("weighed before and after, g, lower, bench-scale",))
