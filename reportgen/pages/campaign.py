"""A campaign's first page: question, answer, how firm it is, who beat whom on what; then the reasons."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import campaign_page, from_to, side_by_side_index, test_page
from reportgen.campaign.declared import Contender
from reportgen.charts.figure import Figure
from reportgen.opendata.linked.dataset import dataset
from reportgen.pages.beside import pairs_in
from reportgen.pages.disclosed import Disclosed, disclosed
from reportgen.pages.framing import frame_of
from reportgen.pages.grid import Grid, grid_of
from reportgen.pages.led import led_on
from reportgen.pages.limits import CaveatMark, marks
from reportgen.pages.matrix import Matrix, matrix_of
from reportgen.pages.named import Named, named
from reportgen.pages.notes import Notes, notes_of
from reportgen.pages.own_words import OwnText, own_text
from reportgen.pages.titles import heading
from reportgen.pages.told import Page, Told
from reportgen.pages.verdict import VerdictShown, verdict_of
from reportgen.pages.words import words
from reportgen.prose.missed import missed
from reportgen.prose.money import price_noted
from reportgen.prose.not_in_grid import things_elsewhere
from reportgen.prose.overall import overall_in_short
from reportgen.prose.sentences import campaign_answer, campaign_answer_led, first_place_led, how_firm
from reportgen.prose.specimens import day_of, noted
from reportgen.theme import Frame, Link, render
from reportgen.wording.sentence import in_a_row

BESIDE_THE_GRID = 8  # caveats in view; more of them would run far below it


@dataclass(frozen=True)
class TestLine:
    """A test in the list of tests: what it found, in sentences."""

    __test__ = False

    title: str
    href: str
    found: tuple[Link, ...]
    marks: tuple[CaveatMark, ...]


@dataclass(frozen=True)
class ContenderLine:
    contender: Named
    maker: str
    prices: tuple[str, ...]
    bought: str


@dataclass(frozen=True)
class AcceptedShown:
    """A warning the author knows of and leaves, with the reason."""

    says: str
    because: str


@dataclass(frozen=True)
class CampaignView:
    """What the template `campaign.html` is told. `question` is empty where the title is the question; `missed` says who
    is out by a condition; `in_short` is the verdict in a line; `things_elsewhere` leads to what is compared and has no
    row in the grid; `side_by_side` leads to where a reader chooses whom to put beside whom, "" where there are no such
    pages.
    """

    frame: Frame
    title: str
    question: str
    answer: tuple[Link, ...]
    missed: str
    in_short: tuple[Link, ...]
    firm: str
    tested: str
    published: str
    issue: str
    place: str
    grid: Grid
    matrix: Matrix
    things_elsewhere: tuple[Link, ...]
    overview: Figure | None
    notes: Notes
    crowded: bool  # more notes than stand beside the grid: they stand below it in columns
    verdict: VerdictShown | None
    tests: tuple[TestLine, ...]
    texts: tuple[OwnText, ...]
    contenders: tuple[ContenderLine, ...]
    held_the_same: tuple[str, ...]
    who_pays: str
    disclosed: tuple[Disclosed, ...]
    accepted: tuple[AcceptedShown, ...]
    films: tuple[Link, ...]
    method: str
    data: str
    side_by_side: str


def campaign_pages(told: Told) -> tuple[Page, ...]:
    """The one first page."""
    page = campaign_page(told.campaign.id)
    return (Page(page, render(told.theme, "campaign.html", campaign_view(told), page)),)


def campaign_view(told: Told) -> CampaignView:
    """The view of the campaign's first page."""
    campaign, evaluation = told.campaign, told.evaluation
    page = campaign_page(campaign.id)
    answer = campaign_answer(campaign, evaluation)
    linked = dataset(campaign, told.publication, told.open_data, page, answer)
    notes = notes_of(told, page)
    overall = evaluation.verdict.overall if evaluation.verdict else None
    return CampaignView(
        frame=frame_of(told, page, campaign.title, answer, linked_data=linked),
        title=campaign.title,
        question="" if campaign.question == campaign.title else campaign.question,
        answer=led_on(page, campaign_answer_led(campaign, evaluation)),
        missed=missed(campaign, evaluation),
        in_short=led_on(page, overall_in_short(campaign, overall)) if overall else (),
        firm=how_firm(campaign, evaluation),
        tested=day_of(campaign.tested),
        published=day_of(campaign.published),
        issue=str(told.issue),
        place=noted(campaign.place),
        grid=grid_of(told, page),
        matrix=matrix_of(told, page),
        things_elsewhere=led_on(page, things_elsewhere(campaign, evaluation)),
        overview=told.figures.get("overview"),
        notes=notes,
        crowded=len(notes.in_view) > BESIDE_THE_GRID,
        verdict=verdict_of(told, page),
        tests=_tests(told, page),
        texts=tuple(own_text(told, p, page) for p in campaign.prose if p.id != "method"),
        contenders=tuple(_contender(told, page, c) for c in campaign.contenders),
        held_the_same=campaign.held_the_same,
        who_pays=campaign.who_pays or told.publication.who_pays,
        disclosed=disclosed(campaign),
        accepted=tuple(AcceptedShown(f.says, f.accepted) for f in told.findings if f.accepted),
        films=tuple(Link(f.title, f.address) for f in campaign.films),
        method=from_to(page, campaign_page(campaign.id, "method")),
        data=from_to(page, campaign_page(campaign.id, "data")),
        side_by_side=from_to(page, side_by_side_index(campaign.id)) if pairs_in(campaign) else "",
    )


def _tests(told: Told, page: str) -> tuple[TestLine, ...]:
    lines = []
    for test in told.campaign.tests:
        of = [r for r in told.evaluation.results if r.quantity == test.headline]
        bearing = {c.number: c for r in of for c in told.evaluation.caveats_on(r.quantity, r.rests_on)}
        parts = dict.fromkeys(r.part for r in of)
        found = in_a_row(first_place_led(told.campaign, told.evaluation, test.headline, part) for part in parts)
        href = from_to(page, test_page(told.campaign.id, test.id))
        lines.append(TestLine(heading(test), href, led_on(page, found), marks(bearing[n] for n in sorted(bearing))))
    return tuple(lines)


def _contender(told: Told, page: str, c: Contender) -> ContenderLine:
    prices = tuple(words(f"price.{p.sort}", price=price_noted(p)) for p in c.prices) or (words("price.none"),)
    bought = words("supplied", by=c.supplied_by) if c.supplied_by else c.bought_where
    return ContenderLine(named(told.campaign, c.id, page), c.maker, prices, bought)
