"""The traces of one channel: a line a contender and pass over time, where limits were passed, gaps as gaps."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.addresses import as_id
from reportgen.campaign.declared import Campaign, Column, Test
from reportgen.charts.figure import Figure
from reportgen.charts.scale import known
from reportgen.charts.telling import alternative
from reportgen.charts.traces_drawn import drawing, times_of
from reportgen.charts.traces_sheet import Line
from reportgen.charts.words import sentence, words
from reportgen.evaluation.evaluated import Crossing, Evaluation, TraceShown
from reportgen.evaluation.traces_happened import happened
from reportgen.marks import mark_of
from reportgen.prose.finding_line import finding_line
from reportgen.wording import interval, number
from reportgen.wording.interval import bound
from reportgen.wording.listing import semicolons
from reportgen.wording.sentence import capital
from reportgen.wording.traces import time_of
from reportgen.wording.unit import joined

HEADINGS = ("who", "long", "samples", "lowest", "highest", "passed")


def address_of(test: str, channel: str) -> str:
    """The chart's address: no id of a quantity has two hyphens in a row."""
    return f"trace--{test}--{as_id(channel)}"


def figure(campaign: Campaign, evaluation: Evaluation, test: Test, column: Column) -> Figure | None:
    """The chart of one channel of a test; None where there is no trace of it."""
    shown = [t for t in evaluation.traces if (t.key.test, t.key.name) == (test.id, column.name)]
    if not shown:
        return None
    title = words("trace.title", what=capital(column.name.replace("_", " ")))
    found = _found(campaign, evaluation, shown)
    rows = tuple(_told(campaign, t, several=_several(shown)) for t in shown)
    told = [(row[0], words("trace.alt.passed" if row[-1] else "trace.alt", **_gaps(row))) for row in rows]
    alt = alternative(title, found, told)
    lines = _lines(campaign, evaluation, shown)
    picture, heads = drawing(campaign, lines, alt), tuple(words(f"trace.{head}") for head in HEADINGS)
    address = address_of(test.id, column.name)
    return Figure(address, picture.svg, alt, title, found, rows, heads, _key(lines), explored=picture.explored)


def _found(campaign: Campaign, evaluation: Evaluation, shown: Sequence[TraceShown]) -> str:
    """What was found with the first quantity that looked for a limit along these traces."""
    looked = next((c.quantity for t in shown for c in t.crossings), "")
    if not looked:
        return ""
    return words(
        "trace.found", what=capital(campaign.quantity(looked).title), found=finding_line(campaign, evaluation, looked)
    )


def _told(campaign: Campaign, t: TraceShown, several: bool) -> tuple[str, ...]:
    """A line of the table, under `HEADINGS`."""
    passed = semicolons([_passed(c, t.unit) for c in t.crossings])
    low = bound(t.lowest, t.unit, "below") if t.under else _end(t, t.lowest)
    high = bound(t.highest, t.unit, "above") if t.over else _end(t, t.highest)
    return (_who(campaign, t, several), time_of(t.ends), _samples(t), low, high, passed)


def _passed(c: Crossing, unit: str) -> str:
    said = words("trace.never" if c.past else f"trace.{c.side}", level=_value(c.level, unit), at=time_of(c.at))
    return words("trace.first-of", passed=said, n=number.fixed(c.times, 0)) if c.times > 1 and not c.past else said


def _samples(t: TraceShown) -> str:
    n = number.fixed(t.samples, 0)
    if not t.apart_in_all:
        return n
    apart = number.fixed(t.apart_in_all, 0)
    return words("trace.samples.apart" if t.apart_in_all > 1 else "trace.samples.apart.one", n=n, apart=apart)


def _end(t: TraceShown, value: float | None) -> str:
    """The highest or lowest sample, and where it stands alone how far from its neighbours."""
    said = _value(value, t.unit)
    off = next((abs(off) for _, x, off in t.apart if x == value), None)
    return said if off is None else words("trace.lone", level=said, off=interval.uncertainty(off, t.unit))


def _who(campaign: Campaign, t: TraceShown, several: bool) -> str:
    title = campaign.contender(t.key.contender).title
    if t.key.part:
        title = words("trace.of-part", who=title, part=t.key.part)
    return words("trace.of-pass", who=title, n=t.key.pass_) if several else title


def _several(shown: Sequence[TraceShown]) -> bool:
    return len({t.key.pass_ for t in shown}) > 1


def _value(value: float | None, unit: str) -> str:
    return joined(number.plain(value), unit) if known(value) else number.plain(None)


def _gaps(row: tuple[str, ...]) -> dict[str, str]:
    return dict(zip(("who", "long", "samples", "lowest", "highest", "passed"), row, strict=True))


def _lines(campaign: Campaign, evaluation: Evaluation, shown: Sequence[TraceShown]) -> list[Line]:
    index = {c.id: n for n, c in enumerate(campaign.contenders)}
    several = _several(shown)
    made = []
    for t in shown:
        letter, who = mark_of(index[t.key.contender]).letter, _who(campaign, t, several)
        name = f"{letter}{t.key.pass_}" if several else letter
        made.append(Line(t, index[t.key.contender], name, who, tuple(happened(evaluation, t))))
    return made


def _key(lines: Sequence[Line]) -> str:
    """How to read the marks, in one sentence."""
    shown = [line.shown for line in lines]
    crossings, over = [c for t in shown for c in t.crossings], any(t.over for t in shown)
    limit = "key.trace.passed" if any(not c.past for c in crossings) else "key.trace.limit"
    return sentence([
        words("key.trace"),
        words(limit) if crossings else "",
        words("key.trace.when") if times_of(lines) else "",
        words("key.trace.over") if over else "",
        words("key.trace.under" if over else "key.trace.under.alone") if any(t.under for t in shown) else "",
        words("key.trace.gap") if any(t.gaps for t in shown) else "",
        words("key.trace.apart") if any(t.apart for t in shown) else "",
        words("key.trace.incident") if any(line.happened for line in lines) else "",
    ])  # fmt: skip
