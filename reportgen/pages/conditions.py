"""The conditions of single passes on a test's page: each pass with its own, and whether they differed."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.campaign.declared import Test
from reportgen.evaluation.conditions import PassConditions, conditions_of, how_met
from reportgen.pages.named import Named, named
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.prose.specimens import specimen_name
from reportgen.wording.sentence import capital, inside


@dataclass(frozen=True)
class ConditionRow:
    """One pass: `said` in the order of the headings, "" where nothing was written."""

    contender: Named
    title: str
    said: tuple[str, ...]


@dataclass(frozen=True)
class ConditionsShown:
    """`sentences` say of each condition whether it was the same for all."""

    sentences: tuple[str, ...]
    headings: tuple[str, ...]
    rows: tuple[ConditionRow, ...]


def conditions_shown(told: Told, page: str, test: Test) -> ConditionsShown | None:
    """The conditions of `test` as `page` shows them; None where none were written down. Passes stand by contender."""
    passes = conditions_of(test, told.readings.of_test(test.id))
    names = tuple(name for name in test.conditions if how_met(name, passes))
    if not names:
        return None
    place = {c.id: n for n, c in enumerate(told.campaign.contenders)}
    of = sorted((p for p in passes if p.contender in place), key=lambda p: place[p.contender])
    units = {(p.contender, p.specimen) for p in of}
    several = {c for c in place if sum(1 for contender, _ in units if contender == c) > 1}
    return ConditionsShown(
        sentences=tuple(_sentence(name, passes) for name in names),
        headings=tuple(capital(name) for name in names),
        rows=tuple(_row(told, page, p, names, p.contender in several) for p in of),
    )


def _sentence(name: str, passes: tuple[PassConditions, ...]) -> str:
    said = next(p.said[name] for p in passes if name in p.said)
    return words(f"condition.{how_met(name, passes)}", name=capital(name), said=said)


def _row(told: Told, page: str, p: PassConditions, names: tuple[str, ...], several: bool) -> ConditionRow:
    """`several`: more than one unit of this contender was used, so that each pass says which."""
    contender = told.campaign.contender(p.contender)
    title = words("pass", n=p.pass_)
    if several:
        title = words("pass.specimen", specimen=specimen_name(contender, p.specimen), pass_=inside(title))
    title = words("pass.part", pass_=title, part=p.part) if p.part else title
    return ConditionRow(named(told.campaign, p.contender, page), title, tuple(p.said.get(n, "") for n in names))
