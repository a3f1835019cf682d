"""A contender's spec sheet: what it is, what it cost, how it came, what is claimed of it, what was measured."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from reportgen.addresses import campaign_page, contender_page, from_to, product_id, product_page, test_page
from reportgen.campaign.declared import Contender, ProseFile, Test
from reportgen.evaluation.evaluated import Result
from reportgen.opendata.linked.product import product
from reportgen.pages.ahead import Ahead, ahead_of, way_to_all
from reportgen.pages.beside import way_beside
from reportgen.pages.claims import ClaimShown, claims_of
from reportgen.pages.figures_shown import Printed, printed
from reportgen.pages.framing import frame_of
from reportgen.pages.identity import Fact, identity_of
from reportgen.pages.limits import CaveatMark, CaveatShown, marks, shown
from reportgen.pages.named import Named, named
from reportgen.pages.own_words import OwnText, own_text
from reportgen.pages.particulars import Particular, is_particular, particulars
from reportgen.pages.photos import FilmShown, PhotoShown, film_shown, photos_shown
from reportgen.pages.result_table import tied_words
from reportgen.pages.titles import heading
from reportgen.pages.told import Page, Told
from reportgen.pages.traces import working
from reportgen.pages.words import words
from reportgen.pages.worth import worth_of
from reportgen.prose.box import received
from reportgen.prose.missed import missed
from reportgen.prose.places import leader_once
from reportgen.prose.specimens import specimen_told
from reportgen.prose.standing import standing
from reportgen.theme import Frame, Link, render
from reportgen.wording.interval import rank_range
from reportgen.wording.listing import and_list
from reportgen.wording.reason import why_blocked
from reportgen.wording.sentence import inside


@dataclass(frozen=True)
class SheetRow:
    """One result. `figure.whole` is value and unit; `tied` says whom it can't be told from.

    `ahead`: whom it is shown to be better and worse than; `reasons` leads to all pairs, "" where nothing was compared;
    `this_run` says that it read best in a run that wasn't repeated.
    """

    quantity: str
    test_href: str
    figure: Printed
    href: str
    place: str
    tied: str
    unranked: str
    marks: tuple[CaveatMark, ...]
    ahead: Ahead
    reasons: str
    this_run: str


@dataclass(frozen=True)
class ContenderView:
    """What the template `contender.html` is told. `missed`: the conditions of the verdict it is shown to miss;
    `worth` says what it is worth there, `verdict` leads there; `beside` leads to where it stands side by side with each
    other."""

    frame: Frame
    contender: Named
    missed: str
    worth: str
    verdict: str
    identity: tuple[Fact, ...]
    specimens: tuple[Fact, ...]
    several: bool
    as_received: tuple[str, ...]
    arrival: tuple[PhotoShown, ...]
    arrival_film: FilmShown | None
    claims: tuple[ClaimShown, ...]
    results: tuple[SheetRow, ...]
    once: str
    limits: tuple[CaveatShown, ...]
    particulars: tuple[Particular, ...]
    text: OwnText | None
    others: tuple[Named, ...]
    beside: tuple[Link, ...]
    elsewhere: Link


def contender_pages(told: Told) -> tuple[Page, ...]:
    """One sheet a contender."""
    made = []
    for c in told.campaign.contenders:
        page = contender_page(told.campaign.id, c.id)
        made.append(Page(page, render(told.theme, "contender.html", contender_view(told, c), page)))
    return tuple(made)


def contender_view(told: Told, c: Contender) -> ContenderView:
    """The view of one spec sheet."""
    campaign, evaluation = told.campaign, told.evaluation
    page = contender_page(campaign.id, c.id)
    of = [(t, r) for t in campaign.tests for r in _of_test(told, t, c.id)]
    bearing = {k.number: k for _, r in of for k in evaluation.caveats_on(r.quantity, r.rests_on)}
    rows = [_row(told, page, t, r) for t, r in of if not is_particular(t)]
    description = words("sheet.description", name=c.title, campaign=campaign.title)
    linked = product(campaign, told.publication, c, evaluation.results, page)
    prose = ProseFile(c.id, told.declared.at(f"contender/{c.id}").file, c.says)
    return ContenderView(
        frame=frame_of(told, page, c.title, description, linked_data=linked),
        contender=named(campaign, c.id, page),
        missed=missed(campaign, evaluation, c.id),
        worth=worth_of(told, c.id),
        verdict=_verdict(told, page, c.id),
        identity=identity_of(c),
        specimens=tuple(Fact(words("fact.specimen", id=s.id), specimen_told(s)) for s in c.specimens),
        several=len(c.specimens) > 1,
        as_received=received(c),
        arrival=photos_shown(campaign, page, c.photos),
        arrival_film=film_shown(campaign, page, c.film, c.photos),
        claims=claims_of(told, page, c),
        results=tuple(replace(row, tied="") if row.tied == words("tied.once") else row for row in rows),
        once=_once(rows),
        limits=tuple(shown(campaign, bearing[n], page) for n in sorted(bearing)),
        particulars=particulars(told, page, c, [(t, r) for t, r in of if is_particular(t)]),
        text=own_text(told, prose, page) if c.says else None,
        others=tuple(named(campaign, o.id, page) for o in campaign.contenders),
        beside=tuple(
            Link(o.title, way)
            for o in campaign.contenders
            if o != c and (way := way_beside(campaign, page, c.id, o.id))
        ),
        elsewhere=Link(words("sheet.elsewhere"), from_to(page, product_page(product_id(c.maker, c.title, c.id)))),
    )


def _verdict(told: Told, page: str, contender: str) -> str:
    weighed = told.evaluation.verdict and told.evaluation.verdict.overall
    judged = weighed or missed(told.campaign, told.evaluation, contender)
    return from_to(page, f"{campaign_page(told.campaign.id)}#verdict") if judged else ""


def _once(rows: Sequence[SheetRow]) -> str:
    """What rests on one run each, said once under the table; "" for nothing."""
    titles = [inside(row.quantity) for row in rows if row.tied == words("tied.once")]
    return words("tied.once.sheet", quantities=and_list(titles)) if titles else ""


def _of_test(told: Told, test: Test, contender: str) -> list[Result]:
    ids = [q.id for q in sorted(test.quantities, key=lambda q: q.id != test.headline)]
    of = [r for r in told.evaluation.results if r.contender == contender and r.quantity in ids]
    return sorted(of, key=lambda r: ids.index(r.quantity))


def _row(told: Told, page: str, test: Test, r: Result) -> SheetRow:
    campaign = told.campaign
    quantity = campaign.quantity(r.quantity)
    compared = any((c.quantity, c.part) == (r.quantity, r.part) for c in told.evaluation.comparisons)
    tied = tied_words(told, quantity, r.part, r.contender) if r.rank else ""
    led = tied == words("tied.once") and leader_once(standing(campaign, told.evaluation, r.quantity, r.part))
    return SheetRow(
        quantity=heading(quantity, r.part),
        test_href=from_to(page, test_page(campaign.id, test.id)),
        figure=printed([r])[0],
        href=working(campaign, page, r.test, r.quantity, r.contender, r.part),
        place=rank_range(r.rank) if r.rank else "",
        tied=tied,
        unranked=why_blocked(r.blocked) if r.blocked else "",
        marks=marks(told.evaluation.caveats_on(r.quantity, r.rests_on)),
        ahead=ahead_of(told, page, r),
        this_run=words(f"sheet.this-run.{quantity.better}") if led == (r.contender,) else "",
        reasons=way_to_all(campaign, page, r.test, r.quantity, r.part) if r.rank and compared else "",
    )
