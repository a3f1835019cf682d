"""verdict.yaml: what counts, how much, and what the author says."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from reportgen.campaign.deciding import DecidedOf
from reportgen.campaign.given import Entry
from reportgen.campaign.ranges import TimesOf
from reportgen.campaign.scalar import AmountOf, Name, Term, Weight, Words, YesNo
from reportgen.campaign.shape import Short, key, many
from reportgen.finding import Place


@dataclass(frozen=True, kw_only=True)
class WrittenMust:
    """A condition: who fails it is out."""

    at: Place
    quantity: Name = key("The quantity it is about", required=True)
    at_most: AmountOf | None = key("No more than this")
    at_least: AmountOf | None = key("No less than this")
    decided: DecidedOf | None = key("When it was decided, where that differs from the rest")


@dataclass(frozen=True, kw_only=True)
class WrittenCriterion:
    """How good a value is: nothing at `worst`, all at `best`."""

    at: Place
    worst: AmountOf = key("A value that would be worth nothing in use", required=True)
    best: AmountOf = key("A value that nobody would want bettered", required=True)
    weight: Weight | None = key("Its share of its group; equal where nothing is said")
    ratio: YesNo | None = key("Whether ratios count, not differences")
    decided: DecidedOf | None = key("When it was decided, where that differs from the rest")


@dataclass(frozen=True, kw_only=True)
class WrittenGroup:
    """Criteria that are about one thing and are weighted as one."""

    at: Place
    title: Words | None = key("Its name on pages")
    weight: Weight | None = key("How much it counts beside the other groups")
    criteria: tuple[Entry[WrittenCriterion], ...] = many("Its criteria, by quantity", required=True)


@dataclass(frozen=True, kw_only=True)
class WrittenWeSay:
    """The author's own verdict."""

    at: Place
    best: Name | None = key("The contender the author calls best")
    best_for_the_money: Name | None = key("The contender the author calls best for the money")
    because: tuple[Name, ...] = many("The quantities it rests on")
    words: Words | None = key("In the author's words")
    SHORT: ClassVar[Short] = Short(lambda text: {"words": text}, r"\S", ("Take the quieter one.",))


@dataclass(frozen=True, kw_only=True)
class WrittenUse:
    """What using it costs."""

    at: Place
    per: Words = key("One use, in words", required=True)
    cost: Term = key("A formula over quantities and constants", required=True)
    times: TimesOf = key("From how many uses to how many", required=True)


@dataclass(frozen=True, kw_only=True)
class WrittenVerdict:
    """What counts and how much."""

    at: Place
    must: tuple[WrittenMust, ...] = many("Conditions that come before all weights")
    groups: tuple[Entry[WrittenGroup], ...] = many("Groups of criteria")
    we_say: WrittenWeSay | None = key("The author's own verdict")
    readers: tuple[Entry[tuple[Entry[Weight], ...]], ...] = many("Typical readers and how they weight the groups")
    use: WrittenUse | None = key("What using it costs")
    decided: DecidedOf | None = key("When it was decided what counts and how much: before the test, or after")
