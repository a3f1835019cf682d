"""What is looked for among the readings, in the order a reader meets it beside one test."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from reportgen.campaign.declared import Declared
from reportgen.evaluation.evaluated import Caveat
from reportgen.intake.reading import Reading, ReadingKey

Look = Callable[[Declared, Mapping[ReadingKey, Reading]], Iterable[Caveat]]

LOOKED_FOR: tuple[Look, ...] = ()


def met_among(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Caveat]:
    """Every caveat that the readings and declarations call for by themselves, unnumbered."""
    for look in LOOKED_FOR:
        yield from look(declared, readings)
