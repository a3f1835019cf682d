"""tests/<id>.yaml, and the entries of `measure:`, which are tests with one quantity."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Annotated, ClassVar

from reportgen.campaign.deciding import DecidedOf
from reportgen.campaign.declared import OrderRule, ScatterRule
from reportgen.campaign.declared.tests import JudgedHow
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.scalar import Name, Term, Words, YesNo, choice, name
from reportgen.campaign.shape import NotThat, Scalar, Short, key, many
from reportgen.campaign.written.accidents import WrittenAmendment, WrittenAssumption, WrittenTwoRecords
from reportgen.campaign.written.laboratory import WrittenLaboratory
from reportgen.campaign.written.measure import WrittenColumn, WrittenQuantity, WrittenSource
from reportgen.campaign.written.pictures import WrittenPictured
from reportgen.campaign.written.remarks import (
    WrittenAcceptance,
    WrittenCaveat,
    WrittenExclusion,
    WrittenIncident,
    WrittenRunning,
)
from reportgen.finding import Place


@dataclass(frozen=True)
class MethodName:
    """A method as a test names it; version 0 where none is given."""

    name: str
    version: int = 0


def method_name(text: str) -> MethodName:
    """`weigh-before-and-after, version 2`, or the name alone. Raises NotThat."""
    found = re.fullmatch(r"\s*([^,]*[A-Za-z0-9][^,]*?)(?:\s*,\s*version\s+0*([1-9][0-9]{0,8}))?\s*", text)
    if found is None:
        raise NotThat(f"“{text.strip()}” is no name of a method")
    return MethodName(name(found[1]), int(found[2] or 0))


MethodRef = Annotated[
    Given[MethodName],
    Scalar("a method", method_name,
           r"^\s*[^,]*[A-Za-z0-9][^,]*(?:,\s*version\s+0*[1-9][0-9]{0,8})?\s*$", MethodName(""),
           ("weigh-before-and-after, version 2", "weigh-before-and-after")),
]  # fmt: skip
Scatter = Annotated[Given[ScatterRule], choice("a rule for scatter", "common", "own", "relative")]
Judged = Annotated[Given[JudgedHow], choice("a way of judging", "blind", "could see", "not noted")]
Order = Annotated[Given[OrderRule], choice("an order of runs", "rounds", "random", "as it came")]


@dataclass(frozen=True, kw_only=True)
class WrittenAboutTest(WrittenPictured):
    """What can be said of any test."""

    at: Place
    method: MethodRef | None = key("The method, with or without its version: weigh-before-and-after, version 2")
    readings: tuple[WrittenSource, ...] = many("Where its readings stand; the campaign's serve where it has none")
    why: Words | None = key("Which question of a reader's it answers")
    formerly: tuple[Name, ...] = many("Ids it had before; pages at the old addresses lead here")
    scatter: Scatter | None = key("Whether contenders share one scatter between passes; else the method says")
    order: Order | None = key("The order in which contenders were run; else the method says")
    judged: Judged | None = key("Whether whoever judged knew which contender it was: blind, or could see")
    decided: DecidedOf | None = key(
        "When it was decided to run it: before the test, or after seeing results; with a day"
    )
    chained: YesNo | None = key("Whether each weighing after is the next weighing before; else the method says")
    exclude: tuple[WrittenExclusion, ...] = many("Passes left out, each with its reason")
    incidents: tuple[WrittenIncident, ...] = many("What happened during the test")
    caveats: tuple[WrittenCaveat, ...] = many("Limits on what its results mean")
    cautions: tuple[Words, ...] = many("What could hurt someone who repeats it")
    cannot_tell: tuple[Words, ...] = many("What this test can't tell you")
    accept: tuple[WrittenAcceptance, ...] = many("Warnings answered")
    conditions: tuple[Term, ...] = many("Columns that hold facts of one pass, such as wind")
    held_the_same: tuple[Words, ...] = many("What was the same for every contender in this test")
    not_yet_tested: tuple[Name, ...] = many("Contenders this test hasn't seen yet")
    running: tuple[WrittenRunning, ...] = many("Contenders whose run still goes on")
    laboratory: WrittenLaboratory | None = key("The laboratory that analysed its samples, its report and its limits")
    amend: tuple[WrittenAmendment, ...] = many("Slips in raw files, put right; the files stay as they are")
    two_records: tuple[WrittenTwoRecords, ...] = many("Two records of one reading that disagree")
    assumed: tuple[Entry[WrittenAssumption], ...] = many("Names in formulas that nobody measured")


@dataclass(frozen=True, kw_only=True)
class WrittenTest(WrittenAboutTest):
    """One procedure applied to every contender."""

    title: Words = key("What its page is headed with", required=True)
    quantities: tuple[Entry[WrittenQuantity], ...] = many("What it reports", required=True)
    headline: Name | None = key("The quantity shown first, where there are several")
    LATER: ClassVar[tuple[str, ...]] = ("specimens",)


@dataclass(frozen=True, kw_only=True)
class WrittenMeasure(WrittenQuantity, WrittenAboutTest):
    """One thing that is measured: a test with one quantity."""

    columns: tuple[Entry[WrittenColumn | None], ...] | tuple[Name, ...] | None = key(
        "The readings its formula names, where the kind's own columns won't do"
    )
    SHORT: ClassVar[Short] = WrittenQuantity.SHORT
    LATER: ClassVar[tuple[str, ...]] = WrittenTest.LATER + WrittenQuantity.LATER
