"""The working of one result: what was read, each step of each pass, and what the uncertainty is made of."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from reportgen.addresses import as_id, result_anchor
from reportgen.campaign.declared import Quantity
from reportgen.evaluation.evaluated import Contribution, PassValue, Result, bears_on
from reportgen.evaluation.says import says_of
from reportgen.intake.reading import Reading
from reportgen.judgement.measured import Limit
from reportgen.pages.figures_shown import Printed, plain, printed
from reportgen.pages.limits import CaveatMark, marks
from reportgen.pages.named import Named, named
from reportgen.pages.readings_shown import ReadingShown, Said, anchors_of, pictured_once, rows_of, shown
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.prose.amounts import also_in_full
from reportgen.prose.specimens import specimen_name
from reportgen.wording import interval
from reportgen.wording.decision import source_sort
from reportgen.wording.listing import and_list
from reportgen.wording.reason import why_no_u
from reportgen.wording.sentence import capital, inside
from reportgen.wording.unit import spelled


@dataclass(frozen=True)
class StepShown:
    name: str
    value: str


@dataclass(frozen=True)
class PassShown:
    """One pass: its readings, the steps between, its value. `excluded` is the reason it is left out, "" if used;
    `happened` what is noted of this pass and not of all."""

    title: str
    rows: tuple[ReadingShown, ...]
    steps: tuple[StepShown, ...]
    value: str
    excluded: str
    happened: tuple[CaveatMark, ...] = ()


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
        passes=tuple(_passes(told, page, unit, result)),
        budget=tuple(_line(told, c, unit) for c in sorted(e.contributions, key=lambda c: -c.share))
        if e and not e.limit
        else (),
    )


def _passes(told: Told, page: str, unit: str, result: Result) -> Iterator[PassShown]:
    anchors = anchors_of(told, result)
    contender = told.campaign.contender(result.contender)
    several = bool(contender.specimens) or len({p.specimen for p in result.by_pass}) > 1
    for n, p in enumerate(result.by_pass):
        rows = pictured_once([shown(told, page, result, r, anchors[n, r.key]) for r in rows_of(told, p)])
        if told.campaign.quantity(result.quantity).count_of:
            yield _pass(told, unit, p, words("pass.all"), rows)
            continue
        if p.together:
            left = tuple(_marked(told, result, r, row) for r, row in zip(rows_of(told, p), rows, strict=True))
            yield _pass(told, unit, p, words("pass.together", names=_behind(told, p)), left)
            continue
        shown_pass = _pass(told, unit, p, _title(p, specimen_name(contender, p.specimen) if several else ""), rows)
        yield replace(shown_pass, happened=_happened(told, result, p))


def _behind(told: Told, p: PassValue) -> str:
    """The quantities that a value of all passes was worked out from."""
    titles = {q.id: q.title for t in told.campaign.tests for q in t.quantities}
    return and_list([inside(titles[id]) for s in p.steps if (id := as_id(s.name)) in titles])


def _marked(told: Told, result: Result, r: Reading, row: ReadingShown) -> ReadingShown:
    """A reading among those of all passes says so where its own pass is left out."""
    fed_by = told.evaluation.upstream[result.quantity]
    out = (c for c in told.evaluation.caveats if c.sort == "exclusion" and bears_on(c, fed_by, frozenset({r.key})))
    said = [Said(words("reading.left-out", because=c.because or says_of(c))) for c in out]
    return replace(row, says=(*row.says, *said))


def _happened(told: Told, result: Result, p: PassValue) -> tuple[CaveatMark, ...]:
    """Incidents and remarks that are about this pass (or its part) alone, in full."""
    bear = told.evaluation.caveats_on(result.quantity, frozenset(p.keys))
    return marks(c for c in bear if c.sort in ("incident", "caveat") and (c.pass_ or c.part))


def _title(p: PassValue, specimen: str) -> str:
    """`Pass 1`, with its specimen where there is one to name, and its part."""
    title = words("pass", n=p.pass_)
    title = words("pass.specimen", specimen=specimen, pass_=inside(title)) if specimen else title
    return words("pass.part", pass_=title, part=p.part) if p.part else title


def _pass(told: Told, unit: str, p: PassValue, title: str, rows: tuple[ReadingShown, ...]) -> PassShown:
    exclusions = [c for c in told.evaluation.caveats if c.sort == "exclusion" and c.id == p.excluded]
    excluded = next((c.because or says_of(c) for c in exclusions if p.excluded), "")
    if p.word:
        value = p.word
    elif p.limit is not None:
        value = _bound(told, p, p.value, unit, p.limit)
    elif p.value is None:
        value = p.absent_because or words("interval.none")
    else:
        value = plain(p.value, unit)
    steps = tuple(
        StepShown(s.name, _bound(told, p, s.value, s.unit, s.limit) if s.limit else plain(s.value, s.unit))
        for s in p.steps
        if s.name not in {k.name for k in p.keys}
    )
    return PassShown(title, rows, steps, value, excluded)


def _bound(told: Told, p: PassValue, value: float | None, unit: str, limit: Limit) -> str:
    """A bound, or what was read so far of a run that goes on."""
    running = any(r.running for r in rows_of(told, p))
    return interval.so_far(value, unit) if running and limit == "above" else interval.bound(value, unit, limit)


def _line(told: Told, c: Contribution, unit: str) -> BudgetRow:
    instrument = told.campaign.instruments.get(c.source.of)
    return BudgetRow(
        says=capital(source_sort(c.source.sort)),
        of=instrument.title if instrument else c.source.of,
        size=interval.uncertainty(abs(c.size), unit),
        share=interval.percent(c.share),
        shared=words("budget.common" if c.source.sort == "shared" else "budget.shared" if c.shared else "budget.own"),
    )
