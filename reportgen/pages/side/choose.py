"""Where a reader chooses whom to put beside whom: a way to every pair, and, where a script runs, any two or three."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import from_to, side_by_side_index, test_page
from reportgen.pages.beside import way_beside
from reportgen.pages.framing import frame_of
from reportgen.pages.limits import marks
from reportgen.pages.named import Named, named
from reportgen.pages.side.laid import Laid, Line
from reportgen.pages.side.papers import SideFact, facts_of
from reportgen.pages.side.rows import SideCell
from reportgen.pages.titles import heading
from reportgen.pages.told import Page, Told
from reportgen.pages.words import words
from reportgen.theme import Frame, render
from reportgen.wording.decision import direction

MOST_DECISIONS = 400  # told with the choice of three; with more, the page would outgrow what a phone loads at once


@dataclass(frozen=True)
class Beside:
    """A contender and everybody it can be put beside."""

    who: Named
    others: tuple[tuple[Named, str], ...]


@dataclass(frozen=True)
class Decided:
    """A pair's decision on one quantity, with the way to its row on the test's page."""

    first: Named
    second: Named
    decision: str
    href: str


@dataclass(frozen=True)
class ChosenRow:
    """A test's headline quantity: each contender's value, None where it has none, and each pair's decision."""

    title: str
    href: str
    way: str
    cells: tuple[tuple[Named, SideCell | None], ...]
    decided: tuple[Decided, ...]


@dataclass(frozen=True)
class Choice:
    """What a script picks columns from: everything about everybody, written once. `pairs`: the ways to the pages of
    two; `told`: whether decisions stand in the rows, rather than on those pages alone; `columns`: of all of it."""

    contenders: tuple[Named, ...]
    pairs: tuple[tuple[Named, Named, str], ...]
    facts: tuple[SideFact, ...]
    rows: tuple[ChosenRow, ...]
    told: bool
    columns: int


@dataclass(frozen=True)
class ChooseView:
    """What `side-by-side-index.html` is told; `choice` is None where there are only two."""

    frame: Frame
    title: str
    says: str
    lines: tuple[Beside, ...]
    choice: Choice | None


def choosing_page(told: Told, laid: Laid) -> Page:
    """The one page to choose from."""
    page = side_by_side_index(told.campaign.id)
    return Page(page, render(told.theme, "side-by-side-index.html", choose_view(told, laid), page))


def choose_view(told: Told, laid: Laid) -> ChooseView:
    """The view of it."""
    campaign = told.campaign
    page = side_by_side_index(campaign.id)
    title = words("side.choose")
    of = {c.id: named(campaign, c.id, page) for c in campaign.contenders}
    lines = tuple(
        Beside(who, tuple((of[o], way_beside(campaign, page, id, o)) for o in of if o != id)) for id, who in of.items()
    )
    return ChooseView(
        frame=frame_of(told, page, title, words("side.choose.description", campaign=campaign.title)),
        title=title,
        says=words("side.choose.says"),
        lines=lines,
        choice=_choice(told, page, laid, of) if len(of) > 2 else None,
    )


def _choice(told: Told, page: str, laid: Laid, of: dict[str, Named]) -> Choice:
    headlines = [line for line in laid.lines if line.is_headline]
    tells = sum(len(line.pairs) for line in headlines if line.has_direction) <= MOST_DECISIONS
    return Choice(
        contenders=tuple(of.values()),
        pairs=tuple((of[a], of[b], way_beside(told.campaign, page, a, b)) for a, b in laid.pairs),
        facts=facts_of(told.campaign.contenders),
        rows=tuple(_row(told, page, line, of, tells) for line in headlines),
        told=tells,
        columns=len(of) + 1,
    )


def _row(told: Told, page: str, line: Line, of: dict[str, Named], tells: bool) -> ChosenRow:
    return ChosenRow(
        title=heading(line.quantity, line.part),
        href=line.href,
        way=direction(line.quantity.better) if line.has_direction else "",
        cells=tuple((who, _cell(told, page, line, id)) for id, who in of.items()),
        decided=tuple(
            Decided(
                of[first],
                of[second],
                pair.decision,
                f"{line.href.partition('#')[0]}#{pair.anchor}",
            )
            for (first, second), (_, pair) in line.pairs.items()
        )
        if tells and line.has_direction
        else (),
    )


def _cell(told: Told, page: str, line: Line, contender: str) -> SideCell | None:
    """A value whose caveats stand in full on the test's page."""
    value = line.values.get(contender)
    if value is None:
        return None
    there = from_to(page, test_page(told.campaign.id, line.test.id))
    return SideCell(value.figure, value.href, marks(value.caveats, there))
