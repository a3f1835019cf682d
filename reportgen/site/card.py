"""What the pages across campaigns know of one campaign: its card, and nothing else of it."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, replace

from reportgen.addresses import campaign_page, test_page
from reportgen.campaign.declared import Campaign, Day, Declared, Instrument, Method, Test
from reportgen.evaluation.evaluated import Evaluation
from reportgen.intake.reading import Readings
from reportgen.prose.missed import missed
from reportgen.prose.sentences import campaign_answer, campaign_answer_led
from reportgen.site.card_results import CardResult, results_of
from reportgen.site.card_things import CardMeasured, CardProduct, measured_in, products_of
from reportgen.wording.sentence import capital


@dataclass(frozen=True)
class CardTest:
    """One test by its title and its page's address on the site, and the ids it had before."""

    id: str
    title: str
    address: str
    formerly: tuple[str, ...] = ()


@dataclass(frozen=True)
class MethodUse:
    """A method as this campaign had it, and the tests that followed it."""

    method: Method
    tests: tuple[CardTest, ...]


@dataclass(frozen=True)
class InstrumentUse:
    """An instrument as this campaign had it, and the tests whose readings it took."""

    instrument: Instrument
    tests: tuple[CardTest, ...]


@dataclass(frozen=True)
class Card:
    """One campaign for the archive and the pages of methods and instruments.

    `answer` is the campaign's in at most two sentences, `answer_led` the same with the ways to its reasons; `missed`
    says who is out by a condition; `date` is when it was published, else tested; `folder` is where its files lie in the
    workspace; `kind` is the kind of product; `formerly` are ids it had before; `digest` (sha256, hex) changes with
    anything on the card.
    """

    id: str
    title: str
    question: str
    answer: str
    address: str
    date: Day | None
    contenders: tuple[str, ...]
    tests: tuple[CardTest, ...]
    methods: tuple[MethodUse, ...]
    instruments: tuple[InstrumentUse, ...]
    folder: str = ""
    archived: bool = False
    invented: str = ""
    digest: str = ""
    answer_led: str = ""
    missed: str = ""
    tested: Day | None = None
    results: tuple[CardResult, ...] = ()
    kind: str = ""
    products: tuple[CardProduct, ...] = ()
    measured: tuple[CardMeasured, ...] = ()
    formerly: tuple[str, ...] = ()


def card_of(declared: Declared, evaluation: Evaluation, readings: Readings) -> Card:
    """The card of one campaign."""
    campaign = declared.campaign
    tests = {t.id: CardTest(t.id, capital(t.title), test_page(campaign.id, t.id), t.formerly) for t in campaign.tests}
    card = Card(
        id=campaign.id,
        title=campaign.title,
        question=campaign.question or campaign.title,
        answer=campaign_answer(campaign, evaluation),
        answer_led=campaign_answer_led(campaign, evaluation),
        missed=missed(campaign, evaluation),
        address=campaign_page(campaign.id),
        date=campaign.dated,
        contenders=tuple(c.title for c in campaign.contenders),
        tests=tuple(tests.values()),
        methods=_methods(campaign, tests),
        instruments=_instruments(campaign, tests, readings),
        folder=campaign.folder,
        archived=campaign.archived,
        invented=campaign.invented,
        tested=campaign.tested,
        results=results_of(campaign, evaluation),
        kind=campaign.kind_of_product,
        products=products_of(campaign),
        measured=measured_in(campaign, evaluation),
        formerly=campaign.formerly,
    )
    return replace(card, digest=hashlib.sha256(repr(card).encode()).hexdigest())


def _methods(campaign: Campaign, tests: dict[str, CardTest]) -> tuple[MethodUse, ...]:
    return tuple(
        MethodUse(
            method,
            tuple(tests[t.id] for t in campaign.tests if (t.method, t.method_version) == (method.id, method.version)),
        )
        for _, method in sorted(campaign.methods.items())
    )


def _instruments(campaign: Campaign, tests: dict[str, CardTest], readings: Readings) -> tuple[InstrumentUse, ...]:
    took = {t.id: _took(t, readings) for t in campaign.tests}
    return tuple(
        InstrumentUse(instrument, tuple(tests[t.id] for t in campaign.tests if id in took[t.id]))
        for id, instrument in sorted(campaign.instruments.items())
    )


def _took(test: Test, readings: Readings) -> set[str]:
    """What took its readings; a row's own unit or word may name another instrument than the test does."""
    return {r.instrument for r in readings.of_test(test.id)} or (
        {c.instrument for c in test.columns} | {q.instrument for q in test.quantities}
    )
