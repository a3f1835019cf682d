"""What the uncertainty of one result is made of, as its page shows it: sentence, drawing, table, where it ends."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from math import hypot, inf

from reportgen.addresses import from_to, instrument_page
from reportgen.campaign.declared import Campaign
from reportgen.evaluation.clocks import clock_unknown
from reportgen.evaluation.evaluated import Contribution, Estimate, Result
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.prose.budgets import HALF_WIDTH, budget_line, cause, leaves_out, name_of
from reportgen.prose.together import range_line
from reportgen.wording import budget, interval
from reportgen.wording.count import degrees, in_words, whole
from reportgen.wording.language import say, say_of
from reportgen.wording.listing import commas
from reportgen.wording.sentence import capital, inside

MARKS = "abcdefghijklmnopqrstuvwxyz"
TONES = 5  # fills of the drawing, from dark to light and again
MANY_DEGREES = 10_000  # beyond them Student's t is the normal distribution to four digits
ROOM = 0.04  # of the drawing, for a letter
GAP = "\0"  # stands for the name while a phrase is taken apart around it


@dataclass(frozen=True)
class BudgetRow:
    """One source: its `mark` in the drawing, its cause around a name that may lead to what it is of, and its numbers.

    `weighed` is what `size` comes from: its own standard uncertainty, what one unit of it moves, how many there are.
    """

    mark: str
    before: str
    of: str
    href: str
    after: str
    known: str
    weighed: str
    readings: str
    readings_href: str
    size: str
    share: str
    shared: str


@dataclass(frozen=True)
class Bar:
    """A piece of the drawing: where it begins and how long it is, as SVG says it; `mark` is "" where none has room."""

    begins: str
    length: str
    middle: str
    mark: str
    tone: str


@dataclass(frozen=True)
class BudgetShown:
    """`says` what most of it is, `u` what all come to; `notes` are what isn't in it; `drawn` the drawing in words.

    `partly`: only what is known is in it, so that shares are shares of that.
    """

    says: str
    partly: bool
    rows: tuple[BudgetRow, ...]
    u: str
    effective: str
    range: str
    notes: tuple[str, ...]
    bars: tuple[Bar, ...]
    drawn: str


def budget_shown(
    told: Told, page: str, result: Result, hrefs: Mapping[str, str], anchors: Mapping[ReadingKey, str]
) -> BudgetShown | None:
    """The budget of a result; None where it has none. `hrefs`: constants, assumptions and `scatter` → their place on
    the page; `anchors`: readings → their rows in the working."""
    e = result.estimate
    if e is None or e.limit or not e.contributions or not result.u:
        return None
    lines = sorted(e.contributions, key=lambda c: -c.share)
    marks = [MARKS[n % len(MARKS)] for n in range(len(lines))]
    rows = [_row(told, page, result, c, mark, hrefs, anchors) for c, mark in zip(lines, marks, strict=True)]
    shares = commas([say("budget.shares", mark=r.mark, cause=inside(_whole(r)), share=r.share) for r in rows])
    bars = tuple(_bars(lines, marks))
    return BudgetShown(
        says=budget_line(told.campaign, told.evaluation, result),
        partly=leaves_out(result),
        rows=tuple(rows),
        u=budget.size(hypot(*(c.size for c in lines)), result.u, e.unit, budget.digits_beyond(result.u)),
        effective=_effective(e),
        range=range_line(result),
        notes=tuple(_notes(told, result, e)),
        bars=bars,
        drawn=say("budget.drawn", shares=shares) if bars else "",
    )


def _whole(row: BudgetRow) -> str:
    return f"{row.before}{row.of}{row.after}"


def _row(
    told: Told,
    page: str,
    result: Result,
    c: Contribution,
    mark: str,
    hrefs: Mapping[str, str],
    anchors: Mapping[ReadingKey, str],
) -> BudgetRow:
    unit, u = result.estimate.unit if result.estimate else "", result.u or 1.0
    before, gap, after = cause(told.campaign, result, c, GAP).partition(GAP)
    instrument = told.campaign.instruments.get(c.source.of)
    href = from_to(page, instrument_page(instrument.id)) if instrument else hrefs.get(_key(c), "")
    of = name_of(told.campaign, c) if gap else ""
    if href and not gap:
        before, of = "", capital(before)
    keys = [k for k in c.behind.keys if k in anchors] if c.behind else []
    return BudgetRow(
        mark=mark,
        before=capital(before),
        of=of if before else capital(of),
        href=href,
        after=after,
        known=_known(c, unit),
        weighed=_weighed(c, unit),
        readings=say_of(len(keys), "budget.readings", count=in_words(len(keys))) if keys else "",
        readings_href=f"#{anchors[keys[0]]}" if keys else "",
        size=budget.size(abs(c.size), u, unit, budget.digits_beyond(u)),
        share=budget.share(c.share),
        shared=_shared(c),
    )


def _shared(c: Contribution) -> str:
    """Whose error it is; of the scatter there is nothing to say."""
    if c.source.sort == "scatter":
        return ""
    if c.source.sort == "shared":
        return words("budget.common")
    if not c.shared:
        return words("budget.own")
    return words("budget.shared" if c.source.sort in ("offset", "gain") else "budget.alike")


def _key(c: Contribution) -> str:
    return "scatter" if c.source.sort == "scatter" and c.source.of == "passes" else f"{c.source.sort}/{c.source.of}"


def _known(c: Contribution, unit: str) -> str:
    freedom = c.degrees if c.degrees is not None else c.source.degrees
    if c.source.shape in HALF_WIDTH and c.source.sort != "scatter":
        u, of = (c.behind.u, c.behind.unit) if c.behind else (abs(c.size), unit)
        half = budget.half_width(u * HALF_WIDTH[c.source.shape], of)
        return say(f"known.{c.source.shape}", half=half)
    return say("known.student", degrees=degrees(freedom)) if freedom < inf else say("known.normal")


def _weighed(c: Contribution, unit: str) -> str:
    behind = c.behind
    if behind is None:
        return ""
    own, count = budget.figure(behind.u, behind.unit), whole(behind.count)
    if c.source.sort == "scatter":
        return say("weighed.mean", u=own, count=count) if behind.count > 1 else say("weighed.once", u=own)
    key = "weighed.several" if behind.count > 1 else "weighed"
    said = say(key, u=own, sensitivity=budget.sensitivity(behind.sensitivity, unit, behind.unit), count=count)
    return said if behind.alike else say("weighed.differing", weighed=said)


def _effective(e: Estimate) -> str:
    if e.effective_degrees is None:
        return say("budget.effective.infinite")
    if e.effective_degrees > MANY_DEGREES:
        return say("budget.effective.many", degrees=whole(MANY_DEGREES))
    return say("budget.effective", degrees=whole(e.effective_degrees))


def _notes(told: Told, result: Result, e: Estimate) -> Iterator[str]:
    for instrument in e.unknown_accuracy:
        title = told.campaign.instruments[instrument].title
        yield say("budget.unknown", of=say("cause.of", of=inside(title)))
    readings = [told.readings.readings[key] for key in result.rests_on]
    for instrument in clock_unknown(told.campaign, told.campaign.quantity(result.quantity), readings):
        title = told.campaign.instruments[instrument].title
        yield say("budget.clock", of=say("cause.of", of=inside(title)))
    drifts = {c.source.of for c in e.contributions if c.source.sort == "drift"}
    for id in dict.fromkeys(r.instrument for r in readings):
        instrument_read = told.campaign.instruments.get(id)
        if instrument_read and instrument_read.drift and id not in drifts and e.contributions:
            yield say("budget.drift-cancels", of=say("cause.of", of=inside(instrument_read.title)))
    sorts = {c.source.sort for c in e.contributions}
    yield from _not_in_it(told.campaign, readings, e)
    if e.steps and "scatter" in sorts and not sorts & {"step"}:
        yield say("budget.step-held", half=interval.uncertainty(max(map(abs, e.steps)) / 2, e.unit))


def _not_in_it(campaign: Campaign, readings: Iterable[Reading], e: Estimate) -> Iterator[str]:
    """What an instrument is known to be off by that has no line, because it cancels or because passes show it; and on
    whose word the largest line stands."""
    held = {(c.source.sort, c.source.of) for c in e.contributions}
    scattered = any(sort == "scatter" for sort, _ in held)
    for id in dict.fromkeys(r.instrument for r in readings if r.instrument in campaign.instruments):
        instrument = campaign.instruments[id]
        of = say("cause.of", of=inside(instrument.title.partition(",")[0]))
        steady = bool(instrument.accuracy.absolute or instrument.accuracy.digits)
        if steady and instrument.shared in ("offset", "both") and not held & {("offset", id), ("accuracy", id)}:
            yield say("budget.offset-cancels", of=of)
        if instrument.by_hand and scattered and ("reaction", id) not in held:
            yield say("budget.hand-held", of=of)
    first = max(e.contributions, key=lambda c: c.share)
    stated = campaign.instruments.get(first.source.of)
    if stated is not None and first.source.sort in ("offset", "gain", "accuracy") and stated.source:
        key = "budget.stated.calibrated" if stated.calibrated else "budget.stated"
        yield say(key, of=say("cause.of", of=inside(stated.title.partition(",")[0])), source=inside(stated.source))


def _bars(lines: list[Contribution], marks: list[str]) -> Iterator[Bar]:
    """One bar a line that can be seen; nothing to draw where one line is all."""
    if len([c for c in lines if c.share >= ROOM]) < 2:
        return
    begins = 0.0
    for n, (c, mark) in enumerate(zip(lines, marks, strict=True)):
        at, length = budget.percents((begins, c.share))
        middle, _ = budget.percents((begins + c.share / 2, 0.0))
        yield Bar(at, length, middle, mark if c.share >= ROOM else "", whole(n % TONES))
        begins += c.share
