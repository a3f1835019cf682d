"""The working of one result: what was read, each step of each pass, and what the uncertainty is made of."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from reportgen.addresses import as_id, in_formula, result_anchor
from reportgen.campaign.declared import Quantity
from reportgen.evaluation.evaluated import PassValue, Result, Step, bears_on
from reportgen.evaluation.says import says_of
from reportgen.intake.reading import Reading
from reportgen.judgement.measured import Limit
from reportgen.pages.budget import BudgetShown, budget_shown
from reportgen.pages.equations import Equation, equations
from reportgen.pages.figures_shown import Printed, plain, printed
from reportgen.pages.limits import CaveatMark, marks
from reportgen.pages.named import Named, named
from reportgen.pages.readings_shown import ReadingShown, Said, anchors_of, pictured_once, rows_of, shown, told_once
from reportgen.pages.told import Told
from reportgen.pages.words import has_words, words
from reportgen.prose.amounts import also_in_full
from reportgen.prose.draws import way_line
from reportgen.prose.specimens import specimen_name
from reportgen.prose.together import together_lines
from reportgen.wording import budget, interval
from reportgen.wording.count import in_words
from reportgen.wording.listing import and_list
from reportgen.wording.reason import why_absent, why_no_u
from reportgen.wording.sentence import inside
from reportgen.wording.unit import spelled


@dataclass(frozen=True)
class StepShown:
    name: str
    value: str


@dataclass(frozen=True)
class PassShown:
    """One pass: its readings, the steps between, its value. `facts` is what all its readings say of when they were
    taken; `excluded` is the reason it is left out, "" if used;
    `happened` what is noted of this pass and not of all; `equations` the formula with the values in it."""

    title: str
    rows: tuple[ReadingShown, ...]
    steps: tuple[StepShown, ...]
    value: str
    excluded: str
    facts: str = ""
    happened: tuple[CaveatMark, ...] = ()
    equations: tuple[Equation, ...] = ()


@dataclass(frozen=True)
class Working:
    """Everything behind one number. `anchor` is its address on the page; `together` how its passes were joined."""

    anchor: str
    contender: Named
    figure: Printed
    unit: str
    u: str
    why_no_u: str
    way: str  # how its interval was worked out
    drawn: bool  # it comes from draws, which every reader is told
    passes: tuple[PassShown, ...]
    together: tuple[str, ...]
    budget: BudgetShown | None


def working_of(told: Told, page: str, quantity: Quantity, result: Result, hrefs: Mapping[str, str]) -> Working:
    """The working of `result` as `page` shows it; `hrefs` are the places there of what its budget may name."""
    e = result.estimate
    unit = e.unit if e else quantity.unit
    return Working(
        anchor=result_anchor(result.quantity, result.contender, result.part),
        contender=named(told.campaign, result.contender, page),
        figure=replace(printed([result])[0], also=also_in_full(result)),
        unit=spelled(unit),
        u=interval.uncertainty(result.u, unit) if result.u is not None else "",
        why_no_u=why_no_u(result.why_no_u) if result.why_no_u else "",
        way=way_line(result),
        drawn=result.draws is not None and result.draws.needed,
        passes=tuple(_passes(told, page, quantity, unit, result)),
        together=(*_which_one(told, result), *together_lines(quantity, result)),
        budget=budget_shown(told, page, result, hrefs, {key: a for (_, key), a in anchors_of(told, result).items()}),
    )


def _passes(told: Told, page: str, quantity: Quantity, unit: str, result: Result) -> Iterator[PassShown]:
    anchors = anchors_of(told, result)
    contender = told.campaign.contender(result.contender)
    written = equations(told, quantity, result, unit)
    several = len({p.specimen for p in result.by_pass}) > 1
    for n, p in enumerate(result.by_pass):
        rows = pictured_once([shown(told, page, result, r, anchors[n, r.key]) for r in rows_of(told, p)])
        if quantity.count_of:
            yield _pass(told, unit, p, words("pass.all"), rows, result.u)
            continue
        if p.together:
            left = tuple(_marked(told, result, r, row) for r, row in zip(rows_of(told, p), rows, strict=True))
            yield _pass(told, unit, p, words("pass.together", names=_behind(told, p)), left, result.u)
            continue
        title = _title(p, specimen_name(contender, p.specimen) if several else "")
        facts, rows = told_once(rows)
        shown_pass = _pass(told, unit, p, title, rows, result.u)
        yield replace(shown_pass, facts=facts, happened=_happened(told, result, p), equations=written[n])


def _which_one(told: Told, result: Result) -> tuple[str, ...]:
    """Which of several units was used, where all passes were of one; where they weren't, each pass names its own."""
    contender = told.campaign.contender(result.contender)
    used = {p.specimen for p in result.by_pass}
    if len(contender.specimens) < 2 or len(used) != 1:
        return ()
    count = in_words(len(contender.specimens))
    return (words("specimen.used", count=count, specimen=inside(specimen_name(contender, next(iter(used))))),)


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


def _pass(
    told: Told, unit: str, p: PassValue, title: str, rows: tuple[ReadingShown, ...], u: float | None
) -> PassShown:
    exclusions = [c for c in told.evaluation.caveats if c.sort == "exclusion" and c.id == p.excluded]
    excluded = next((c.because or says_of(c) for c in exclusions if p.excluded), "")
    if p.word:
        value = words(p.word) if p.word in {"yes", "no"} else p.word
    elif p.limit is not None:
        value = _bound(told, p, p.value, unit, p.limit)
    elif p.value is None:
        value = why_absent(p.absent_because) or words("interval.none")
    else:
        value = budget.worked(p.value, u, unit) if u else plain(p.value, unit)
    steps = tuple(
        StepShown(_called(told, s.name), _bound(told, p, s.value, s.unit, s.limit) if s.limit else _made(s))
        for s in p.steps
        if s.name not in {k.name for k in p.keys} | _told_above(told)
    )
    return PassShown(title, rows, steps, value, excluded)


def _made(step: Step) -> str:
    return budget.worked(step.value, None, step.unit) if step.value is not None else plain(None, step.unit)


def _told_above(told: Told) -> set[str]:
    """Constants and assumptions: they stand with the formula, and are the same in every pass."""
    assumed = {in_formula(a.id) for t in told.campaign.tests for a in t.assumed}
    return assumed | {in_formula(id) for id in told.campaign.constants}


def _called(told: Told, name: str) -> str:
    """A step by the title of its quantity, where it is one; what was sought in a trace in words."""
    function, bracket, of = name.removesuffix(")").partition("(")
    if bracket and has_words(f"function.{function}"):
        return f"{words(f'function.{function}')} {of.replace('_', ' ').replace(', ', ' ')}"
    titles = {q.id: q.title for t in told.campaign.tests for q in t.quantities}
    return titles.get(as_id(name), name)


def _bound(told: Told, p: PassValue, value: float | None, unit: str, limit: Limit) -> str:
    """A bound, or what was read so far of a run that goes on."""
    running = any(r.running for r in rows_of(told, p))
    return interval.so_far(value, unit) if running and limit == "above" else interval.bound(value, unit, limit)
