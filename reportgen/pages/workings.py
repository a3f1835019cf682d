"""The working of one result: what was read, each step of each pass, and what the uncertainty is made of."""

from __future__ import annotations

from dataclasses import dataclass, replace

from reportgen.addresses import result_anchor
from reportgen.campaign.declared import Quantity
from reportgen.evaluation.evaluated import Contribution, PassValue, Result
from reportgen.evaluation.says import says_of
from reportgen.intake.reading import Reading
from reportgen.pages.figures_shown import Printed, plain, printed
from reportgen.pages.named import Named, named
from reportgen.pages.told import Told
from reportgen.pages.traces import LineLink, line_link
from reportgen.pages.words import words
from reportgen.prose.amounts import also_in_full
from reportgen.wording import interval
from reportgen.wording.decision import source_sort
from reportgen.wording.reason import why_no_u
from reportgen.wording.sentence import capital
from reportgen.wording.unit import spelled


@dataclass(frozen=True)
class RawRow:
    """One reading as it was written, with its instrument and the way to its line."""

    name: str
    text: str
    unit: str
    instrument: str
    instrument_href: str
    note: str
    file: LineLink
    line: str


@dataclass(frozen=True)
class StepShown:
    name: str
    value: str


@dataclass(frozen=True)
class PassShown:
    """One pass: its readings, the steps between, its value. `excluded` is the reason it is left out, "" if used."""

    title: str
    rows: tuple[RawRow, ...]
    steps: tuple[StepShown, ...]
    value: str
    excluded: str


@dataclass(frozen=True)
class BudgetRow:
    """One source of uncertainty: what sort, of what, its signed size, its share of the variance, whether shared."""

    says: str
    of: str
    size: str
    share: str
    shared: str


@dataclass(frozen=True)
class Working:
    """Everything behind one number. `anchor` is its address on the test's page."""

    anchor: str
    contender: Named
    figure: Printed
    unit: str
    u: str
    why_no_u: str
    passes: tuple[PassShown, ...]
    budget: tuple[BudgetRow, ...]


def working_of(told: Told, page: str, quantity: Quantity, result: Result) -> Working:
    """The working of `result` as `page` shows it."""
    e = result.estimate
    unit = e.unit if e else quantity.unit
    return Working(
        anchor=result_anchor(result.quantity, result.contender, result.part),
        contender=named(told.campaign, result.contender, page),
        figure=replace(printed([result])[0], also=also_in_full(result)),
        unit=spelled(unit),
        u=interval.uncertainty(result.u, unit) if result.u is not None else "",
        why_no_u=why_no_u(result.why_no_u) if result.why_no_u else "",
        passes=tuple(_pass(told, page, unit, p) for p in result.by_pass),
        budget=tuple(_line(told, c, unit) for c in sorted(e.contributions, key=lambda c: -c.share))
        if e and not e.limit
        else (),
    )


def _pass(told: Told, page: str, unit: str, p: PassValue) -> PassShown:
    title = words("pass", n=p.pass_)
    title = words("pass.part", pass_=title, part=p.part) if p.part else title
    read = [told.readings.readings[k] for k in sorted(p.keys) if k in told.readings.readings]
    read.sort(key=lambda r: (r.at.file, r.at.line, r.at.column, r.order))
    exclusions = [c for c in told.evaluation.caveats if c.sort == "exclusion" and c.id == p.excluded]
    excluded = next((c.because or says_of(c) for c in exclusions if p.excluded), "")
    if p.word:
        value = p.word
    elif p.limit is not None:
        value = interval.bound(p.value, unit, p.limit)
    elif p.value is None:
        value = p.absent_because or words("interval.none")
    else:
        value = plain(p.value, unit)
    steps = tuple(
        StepShown(s.name, interval.bound(s.value, s.unit, s.limit) if s.limit else plain(s.value, s.unit))
        for s in p.steps
        if s.name not in {r.key.name for r in read}
    )
    return PassShown(title, tuple(_row(told, page, r) for r in read), steps, value, excluded)


def _row(told: Told, page: str, r: Reading) -> RawRow:
    from reportgen.addresses import from_to, instrument_page

    instrument = told.campaign.instruments.get(r.instrument)
    return RawRow(
        name=heading_of(told, r),
        text=r.text or words("empty"),
        unit=spelled(r.unit),
        instrument=instrument.title if instrument else "",
        instrument_href=from_to(page, instrument_page(instrument.id)) if instrument else "",
        note="; ".join(filter(None, (r.note, *(f"{name}: {said}" for name, said in r.conditions)))),
        file=line_link(told, page, r.at),
        line=str(r.at.line),
    )


def heading_of(told: Told, r: Reading) -> str:
    """A reading's name as the author's table has it."""
    columns = told.campaign.test(r.key.test).columns
    return next((c.heading for c in columns if c.name == r.key.name), r.key.name)


def _line(told: Told, c: Contribution, unit: str) -> BudgetRow:
    instrument = told.campaign.instruments.get(c.source.of)
    return BudgetRow(
        says=capital(source_sort(c.source.sort)),
        of=instrument.title if instrument else c.source.of,
        size=interval.uncertainty(abs(c.size), unit),
        share=interval.percent(c.share),
        shared=words("budget.shared" if c.shared else "budget.own"),
    )
