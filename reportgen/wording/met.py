"""What the program met among the readings and must tell wherever it bears: facts in data, one sentence each."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from reportgen.wording.language import say, say_of
from reportgen.wording.number import as_written
from reportgen.wording.sentence import paragraph
from reportgen.wording.unit import joined


@dataclass(frozen=True)
class Met:
    """`code` names the sentence (`met.<code>` in a language's table), `gaps` fill it, in texts as the author typed them
    or printed by this room. `count` chooses among plural forms, None where the sentence has none."""

    code: str
    gaps: Mapping[str, str] = field(default_factory=dict)
    count: int | None = None
    then: tuple[Met, ...] = ()  # further sentences


def met_says(met: Met) -> str:
    """The sentence, and those that follow it."""
    key = f"met.{met.code}"
    first = say(key, **met.gaps) if met.count is None else say_of(met.count, key, **met.gaps)
    return paragraph(first, *(met_says(m) for m in met.then)) if met.then else first


def amount(value: Decimal, unit: str) -> str:
    """A number as it was typed, with its unit."""
    return joined(as_written(value), unit)


def change(value: Decimal, unit: str) -> str:
    """What is added, with its sign: "+0.12 g", "−0.4 % of reading"."""
    return joined(as_written(value, sign=True), unit)


def at_line(file: str, line: int, column: str = "") -> str:
    """Where in a file something stands: "line 5 of readings.csv"; "cell B4 of log.xlsx" where columns have letters."""
    if column:
        return say("met.amended.at-cell", cell=f"{column}{line}", file=file)
    return say("met.amended.at-line", n=str(line), file=file)


def by_how_much(change: Decimal, unit: str) -> str:
    """A change without its sign, with the digits it has."""
    return amount(abs(change), unit)
