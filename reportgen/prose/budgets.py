"""What an uncertainty is made of, in words: its causes, the largest of them, and what would halve it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, sqrt

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Contribution, Evaluation, Result
from reportgen.metrology.calibration import SLOPE
from reportgen.metrology.uncertain import Shape
from reportgen.wording import budget, interval
from reportgen.wording.count import counted
from reportgen.wording.language import say
from reportgen.wording.sentence import inside, paragraph

NEARLY_ALL, MOST, HALF = 0.9, 0.75, 0.5  # of the variance; to halve u, three quarters of it must go
HALF_WIDTH: dict[Shape, float] = {"uniform": sqrt(3), "triangular": sqrt(6), "arcsine": sqrt(2)}  # ÷ u (JCGM 100, 4.3)
STEPS = ("step", "shared")
KNOWN = ("offset", "gain", "accuracy", "calibration", "drift", "repeatability", "clock", "constant", "assumption")
ALIKE = ("offset", "gain", "calibration", "drift")  # sorts in which an instrument is off alike for all it read
HARDLY = 0.2  # of an error that two results share: what a gap may keep of it and be said to be hardly moved
AS_GOOD = 1.02  # times what would halve it: a step that misses by less does it too, as far as anyone reads
BETWEEN_SAMPLES = "time between samples"  # what a step is of in `metrology/traces/`
ALONG = re.compile(  # what is open along a trace, as `metrology/traces/` names it
    r"gap in (?P<gap>.+)|how far (?P<moved>.+) still moved|noise in the (?P<noisy>highest|lowest) of (?P<of>.+)"
)
FEWEST = 0.1  # of what it is now: an improvement beyond that is no advice
MOST_PASSES = 100


@dataclass(frozen=True)
class Cause:
    """Lines of one cause: the steps of one scale are one, whoever stands on its readings."""

    lines: tuple[Contribution, ...]

    @property
    def share(self) -> float:
        """Its part of the variance."""
        return sum(c.share for c in self.lines)

    @property
    def largest(self) -> Contribution:
        """The line that speaks for it."""
        return self.lines[0]


def causes(lines: Sequence[Contribution]) -> tuple[Cause, ...]:
    """Lines by cause, largest first."""
    groups: dict[tuple[str, str, str], list[Contribution]] = {}
    for c in lines:
        sort = "step" if c.source.sort in STEPS else c.source.sort
        groups.setdefault((sort, c.source.of, c.source.where), []).append(c)
    return tuple(sorted((Cause(tuple(g)) for g in groups.values()), key=lambda cause: -cause.share))


def cause(campaign: Campaign, result: Result, c: Contribution, of: str = "") -> str:
    """A line's cause inside a sentence: "the step the bench scale reads in". `of` stands in for the name, if given."""
    sort, name = c.source.sort, of or name_of(campaign, c)
    if sort == "scatter":
        if c.source.of == "sessions":
            return say("cause.scatter.sessions")
        if c.source.of == "specimens":
            return say("cause.scatter.specimens.declared")
        if c.source.of != "passes":
            return say("cause.scatter.quantity", of=name)
        return say("cause.scatter.specimens" if result.by_specimens else "cause.scatter")
    if sort in (*STEPS, "repeatability") and not c.source.of:
        return say("cause.repeatability.nobody" if c.source.shape == "normal" else f"cause.{sort}.nobody")
    if sort == "step" and c.source.of not in campaign.instruments:
        return say("cause.step.samples") if c.source.of == BETWEEN_SAMPLES else say("cause.step.other", of=name)
    if sort == "calibration" and c.source.where:
        return say("cause.calibration.slope" if c.source.where == SLOPE else "cause.calibration.height", of=name)
    if sort == "shared" and c.source.shape == "normal":
        return say("cause.shared.repeats", of=name)
    if sort == "assumption" and (found := ALONG.fullmatch(c.source.of)):
        return _along(c, found, name)
    return say(f"cause.{sort}", of=name)


def _along(c: Contribution, found: re.Match[str], name: str) -> str:
    """What a trace itself leaves open, which nobody assumed; its pass where it is that of one. See `traces_read.py` and
    `observing.py` for what `where` is made of."""
    where = c.source.where.split("/")
    of_pass = say("cause.along.pass", number=where[3]) if len(where) > 5 and where[3] else ""
    if found["moved"]:
        return say("cause.along.moved", of=name, of_pass=of_pass)
    return say(f"cause.along.{found['noisy']}" if found["noisy"] else "cause.along", of=name, of_pass=of_pass)


def name_of(campaign: Campaign, c: Contribution) -> str:
    """What a line is of, in a reader's words: an instrument's title, a constant's name."""
    instrument = campaign.instruments.get(c.source.of)
    if instrument is not None:
        return say("cause.of", of=inside(instrument.title.partition(",")[0]))
    titles = {q.id: inside(q.title) for t in campaign.tests for q in t.quantities}
    if c.source.sort == "scatter":
        return titles.get(c.source.of, c.source.of)
    if c.source.sort == "assumption" and (found := ALONG.fullmatch(c.source.of)):
        return found["gap"] or found["moved"] or found["of"]
    return c.source.of.replace("-", " ") if c.source.sort in ("constant", "assumption") else c.source.of


def budget_line(campaign: Campaign, evaluation: Evaluation, result: Result) -> str:
    """What most of the uncertainty comes from, what would halve it, and what that would not do; "" without a budget."""
    e = result.estimate
    if e is None or e.limit or not e.contributions or not result.u:
        return ""
    first = causes(e.contributions)[0]
    return paragraph(
        _made_of(campaign, result, causes(e.contributions)),
        say("made.alike") if first.share > HALF and _moves_alike(evaluation, result, first) else "",
        say("made.no-repeat") if repeats_unknown(result) else "",
    )


def leaves_out(result: Result) -> bool:
    """Whether its budget lacks what nobody knows: how far a repeat would differ, or how right an instrument is."""
    return repeats_unknown(result) or bool(result.estimate and result.estimate.unknown_accuracy)


def repeats_unknown(result: Result) -> bool:
    """Whether nothing is known of its scatter; what a laboratory states of its own value is another matter."""
    return result.covers == "instrument" and result.laboratory is None


def _made_of(campaign: Campaign, result: Result, found: Sequence[Cause]) -> str:
    first = found[0]
    said = cause(campaign, result, first.largest)
    whole = say("made.known" if leaves_out(result) else "made.whole")
    if len(found) == 1:
        return say("made.only", whole=whole, cause=said, cure=_cure(result, first))
    if first.share >= NEARLY_ALL:
        return say("made.all", whole=whole, cause=said, cure=_cure(result, first))
    if first.share >= MOST:
        return say("made.most", whole=whole, cause=said, cure=_cure(result, first))
    one = budget.share(first.share)
    if first.share > HALF:
        return say("made.more-than-half", whole=whole, share=one, cause=said, cure=_without(result, first))
    second = found[1]
    other, share = cause(campaign, result, second.largest), budget.share(second.share)
    return say("made.several", whole=whole, first=said, one=one, second=other, other=share)


def _moves_alike(evaluation: Evaluation, result: Result, first: Cause) -> bool:
    """Whether an error is in every other result of the quantity as well, and all but drops out of each difference."""
    others = [
        {c.source: c.size for c in r.estimate.contributions}
        for r in evaluation.results
        if (r.quantity, r.part) == (result.quantity, result.part)
        and r.contender != result.contender
        and r.estimate is not None and r.estimate.contributions and not r.estimate.limit
    ]  # fmt: skip
    return bool(others) and all(
        c.source.sort in ALIKE and abs(c.size - theirs.get(c.source, 0.0)) <= HARDLY * abs(c.size)
        for c in first.lines
        for theirs in others
    )


def _without(result: Result, first: Cause) -> str:
    assert result.u is not None
    rest = sqrt(max(0.0, 1.0 - first.share)) * result.u
    unit = result.estimate.unit if result.estimate else ""
    return say("cure.without", rest=interval.uncertainty(rest, unit)) if rest > 1e-9 * result.u else ""


def _cure(result: Result, first: Cause) -> str:
    """What would halve u: this cause must fall to `left` of its size, the others staying as they are."""
    left = sqrt(max(0.0, (first.share - MOST) / first.share))
    line = first.largest
    behind = line.behind
    if line.source.sort == "reaction":
        return say("cure.hand")
    if behind is None or left < FEWEST:
        return _without(result, first)
    if line.source.sort == "scatter" and line.source.of == "passes":
        needed = ceil(behind.count / left**2 - 1e-9)
        noun = "specimen" if result.by_specimens else "pass"
        if needed > MOST_PASSES:
            return _without(result, first)
        key = "cure.passes.rest" if needed > 4 * behind.count else "cure.passes"
        return say(key, n=counted(noun, needed), now=counted(noun, behind.count))
    if line.source.sort in STEPS and line.source.of and _is_scale(line):
        needed_step = behind.u * sqrt(12) * left * AS_GOOD
        step = budget.nice_below(needed_step)
        key = "cure.step" if float(step) > needed_step * HALF else "cure.step.more"
        return say(key, step=budget.written(step, behind.unit))
    if line.source.sort in KNOWN and line.source.shape in HALF_WIDTH:
        now = behind.u * HALF_WIDTH[line.source.shape]
        half = interval.uncertainty(now * left, behind.unit)
        return say("cure.known", half=half, now=budget.half_width(now, behind.unit))
    return _without(result, first)


def _is_scale(line: Contribution) -> bool:
    """Whether its step is one that an instrument reads in, and is known."""
    return line.source.shape == "uniform" and bool(line.behind and line.behind.keys)
