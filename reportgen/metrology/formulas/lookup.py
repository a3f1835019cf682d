"""Where the names of a formula get their values: what whoever evaluates one brings along."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol, TypeVar

from reportgen.metrology.traces.trace import Trace
from reportgen.metrology.uncertain import Uncertain

Given = TypeVar("Given", covariant=True)


class Names(Protocol[Given]):
    """Where a formula's names get their values, for one contender, pass and part.

    Each raises KeyError for a name nobody knows; with a message as its argument, that is what the author is told
    (`KeyError("there is no gas; did you mean gas_burned?")`). Each may raise NoValue where nothing was read.
    """

    def value(self, name: str) -> Given:
        """The reading of this pass and part, a quantity worked out for it, or a constant."""
        ...

    def over_passes(self, name: str) -> Sequence[Given]:
        """The name in every pass that counts, for this contender and part."""
        ...

    def over_parts(self, name: str) -> Sequence[Given]:
        """The name in every part of this pass; one value where there are no parts."""
        ...

    def of(self, contender: str, name: str) -> Given:
        """The name for another contender (its spelling in formulas), same pass and part."""
        ...


class Lookup(Names[Uncertain], Protocol):
    """The same with what is found to first order alone: along the channels of loggers, and lines through parts."""

    def pairs(self, name: str, other: str) -> tuple[str, Sequence[tuple[Uncertain, Uncertain]]]:
        """What this pass is called, and two names in each of its parts."""
        ...

    def trace(self, name: str) -> Trace:
        """The channel of a logger for this pass and part."""
        ...

    def found(
        self, function: str, channel: str, value: Uncertain, limit: Uncertain | None = None, times: int = 1
    ) -> None:
        """Told what a function found along a channel, for the working; one with a side (`when_over`) with its limit,
        and how often that was passed."""
        ...
