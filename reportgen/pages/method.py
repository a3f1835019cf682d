"""How everything of a campaign was tested: one address that stays, for the description of a film."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import campaign_page, from_to, instrument_page, method_page, test_page
from reportgen.campaign.declared import Instrument, Test, WhenDecided
from reportgen.evaluation.as_shown import is_corrected
from reportgen.pages.disclosed import Disclosed, disclosed
from reportgen.pages.framing import frame_of
from reportgen.pages.in_one_minute import MinuteLine, in_one_minute
from reportgen.pages.laboratory import LaboratoryShown, laboratory_shown
from reportgen.pages.own_words import OwnText, own_text
from reportgen.pages.report_items import NAME as REPORT_ITEMS
from reportgen.pages.titles import formula_of, heading, told_in_words
from reportgen.pages.told import Page, Told
from reportgen.pages.words import words
from reportgen.prose.accuracy import accuracy_in_short
from reportgen.prose.specimens import as_noted, day_of
from reportgen.prose.steps import reads_in
from reportgen.theme import Frame, Link, render
from reportgen.wording.count import counted
from reportgen.wording.listing import and_list, commas


@dataclass(frozen=True)
class InstrumentRow:
    name: str
    href: str
    reads_in: str
    accuracy: str
    calibrated: str


@dataclass(frozen=True)
class Measured:
    """One quantity of a test: what it is and the formula it comes from."""

    title: str
    unit: str
    formula: str
    in_words: bool
    says: str


@dataclass(frozen=True)
class TestedShown:
    """How one test was run. `method` is None where none was named; then the steps are those told elsewhere."""

    anchor: str
    title: str
    href: str
    why: str
    method: Link | None
    version: str
    steps: tuple[str, ...]
    measured: tuple[Measured, ...]
    passes: str
    order: str
    judged: str
    decided: str
    scatter: str
    instruments: tuple[Link, ...]
    laboratory: LaboratoryShown | None
    cannot_tell: tuple[str, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True)
class MethodView:
    """What the template `method.html` is told."""

    frame: Frame
    title: str
    in_one_minute: tuple[MinuteLine, ...]
    tested: str
    place: str
    held_the_same: tuple[str, ...]
    who_pays: str
    disclosed: tuple[Disclosed, ...]
    text: OwnText | None
    tests: tuple[TestedShown, ...]
    instruments: tuple[InstrumentRow, ...]
    report_items: str


def method_pages(told: Told) -> tuple[Page, ...]:
    """The one method page."""
    page = campaign_page(told.campaign.id, "method")
    return (Page(page, render(told.theme, "method.html", method_view(told), page)),)


def method_view(told: Told) -> MethodView:
    """The view of the campaign's method page."""
    campaign = told.campaign
    page = campaign_page(campaign.id, "method")
    own = next((p for p in campaign.prose if p.id == "method"), None)
    return MethodView(
        frame=frame_of(told, page, words("method.title"), words("method.description", campaign=campaign.title)),
        title=words("method.title"),
        in_one_minute=in_one_minute(told, page),
        tested=day_of(campaign.tested),
        place=as_noted(campaign.place),
        held_the_same=campaign.held_the_same,
        who_pays=campaign.who_pays or told.publication.who_pays,
        disclosed=disclosed(campaign),
        text=own_text(told, own, page) if own else None,
        tests=tuple(_tested(told, page, t) for t in campaign.tests),
        instruments=tuple(_instrument(page, i) for i in sorted(campaign.instruments.values(), key=lambda i: i.title)),
        report_items=from_to(page, campaign_page(campaign.id, REPORT_ITEMS)),
    )


def _tested(told: Told, page: str, test: Test) -> TestedShown:
    campaign = told.campaign
    method = campaign.methods.get(f"{test.method}.{test.method_version}")
    used = dict.fromkeys(r.instrument for r in told.readings.of_test(test.id) if r.instrument in campaign.instruments)
    return TestedShown(
        anchor=test.id,
        title=heading(test),
        href=from_to(page, test_page(campaign.id, test.id)),
        why=test.why,
        method=Link(method.title, from_to(page, method_page(method.id, method.version))) if method else None,
        version=str(method.version) if method else "",
        steps=method.steps if method else (),
        measured=tuple(Measured(heading(q), q.unit, formula_of(q), told_in_words(q), q.says) for q in test.quantities),
        passes=_passes(told, test),
        order=_order(told, test),
        judged=words(f"judged.{test.judged}") if test.judged else "",
        decided=_decided(test.decided),
        scatter=_scatter(test),
        instruments=tuple(Link(campaign.instruments[i].title, from_to(page, instrument_page(i))) for i in used),
        laboratory=laboratory_shown(told, test, page),
        cannot_tell=tuple(dict.fromkeys((*(method.cannot_tell if method else ()), *test.cannot_tell))),
        cautions=tuple(dict.fromkeys((*(method.cautions if method else ()), *test.cautions))),
    )


def _passes(told: Told, test: Test) -> str:
    """How many passes each contender ran, excluded ones counted: "three passes each", or contender by contender."""
    ran = {
        r.contender: r.passes + r.excluded
        for r in told.evaluation.results
        if r.quantity == test.headline and not r.missing
    }
    if len(set(ran.values())) == 1:
        return words("passes.each", passes=counted("pass", next(iter(ran.values()))))
    title = told.campaign.contender
    return and_list([words("passes.of-one", name=title(c).title, passes=counted("pass", n)) for c, n in ran.items()])


def _order(told: Told, test: Test) -> str:
    if test.order:
        return words(f"order.{test.order}")
    return words("order.recorded" if told.readings.order_recorded.get(test.id) else "order.")


def _decided(decided: WhenDecided | None) -> str:
    """When it was decided to run a test, with the day; "" where nothing is said."""
    if decided is None:
        return ""
    said = words(f"decided.{decided.when}") if decided.when else ""
    return commas([*filter(None, (said, day_of(decided.day)))])


def _instrument(page: str, i: Instrument) -> InstrumentRow:
    return InstrumentRow(
        name=i.title,
        href=from_to(page, instrument_page(i.id)),
        reads_in=reads_in(i) or words("not-noted"),
        accuracy=accuracy_in_short(i),
        calibrated=_calibrated(i),
    )


def _calibrated(i: Instrument) -> str:
    """The day, until when that counts, and whether readings are corrected by what was found."""
    said = day_of(i.calibrated) or words("not-noted")
    if i.calibration and i.calibration.expires:
        said = words("calibrated.until", day=said, until=day_of(i.calibration.expires))
    return words("calibrated.corrected", calibrated=said) if is_corrected(i) else said


def _scatter(test: Test) -> str:
    """How contenders are taken to scatter, and whether a method fixed it; "" where nothing measured is ranked by it."""
    if all(q.kind in ("yes/no", "count", "grade", "order") for q in test.quantities):
        return ""
    return words(f"scatter.rule.{test.scatter}" if test.method else "scatter.rule.assumed")
