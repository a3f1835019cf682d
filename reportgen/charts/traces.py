"""The traces of one channel: a line a contender and pass over time, where limits were passed, gaps as gaps."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.addresses import as_id
from reportgen.campaign.declared import Campaign, Column, Test
from reportgen.charts import plate as ink
from reportgen.charts.convert import draw
from reportgen.charts.figure import Figure
from reportgen.charts.plate import Layer, Plate, Row
from reportgen.charts.scale import Axis, axis, known
from reportgen.charts.side import fitting, lines_of
from reportgen.charts.telling import alternative
from reportgen.charts.words import sentence, words
from reportgen.evaluation.evaluated import Evaluation, TraceShown
from reportgen.marks import mark_of
from reportgen.prose.finding_line import finding_line
from reportgen.wording import number
from reportgen.wording.interval import bound
from reportgen.wording.sentence import capital
from reportgen.wording.traces import time_of, unit_of_times
from reportgen.wording.unit import joined, spelled

_HEIGHT, _ROW = 190.0, 17.0
HEADINGS = tuple(words(f"trace.{h}") for h in ("who", "long", "samples", "lowest", "highest", "passed"))


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
    return Figure(
        address_of(test.id, column.name), _svg(campaign, shown, alt), alt, title, found, rows, HEADINGS, _key(shown)
    )


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
    passed = "; ".join(
        words("trace.never" if c.past else f"trace.{c.side}", level=_value(c.level, t.unit), at=time_of(c.at))
        for c in t.crossings
    )
    low = bound(t.lowest, t.unit, "below") if t.under else _value(t.lowest, t.unit)
    high = bound(t.highest, t.unit, "above") if t.over else _value(t.highest, t.unit)
    return (_who(campaign, t, several), time_of(t.ends), number.fixed(t.samples, 0), low, high, passed)


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


def _svg(campaign: Campaign, shown: Sequence[TraceShown], alt: str) -> str:
    unit, second = unit_of_times(max(t.ends for t in shown))
    index = {c.id: n for n, c in enumerate(campaign.contenders)}
    people = sorted({t.key.contender for t in shown}, key=lambda who: index[who])
    up = axis([*_values(shown)], at_most=5)
    across = axis([0.0, max(t.ends for t in shown) / second], from_zero=True, at_most=6, margin=0.02)
    widest = max((len(number.fixed(t, up.decimals)) for t in up.ticks), default=1)
    head = 26 + _ROW * ((len(people) + 1) // 2)
    sheet = Plate(14 + 7 * widest, 14, head, 42, _HEIGHT, across, up)
    layers = [*_axes(sheet, across, up, unit, shown[0].unit), *_legend(sheet, campaign, people, index, head)]
    stretches = [(mark_of(index[t.key.contender]).ink, s) for t in shown for s in t.stretches if len(s) > 1]
    for n, (colour, stretch) in enumerate(stretches):
        layers.append(ink.lines(sheet, f"trace-{n}", [{"x": x / second, "y": y} for x, y in stretch], ink=colour))
    return draw(sheet, [*layers, *_marks(sheet, campaign, shown, index, second)], "traces", alt)


def _values(shown: Sequence[TraceShown]) -> list[float]:
    drawn = [y for t in shown for stretch in t.stretches for _, y in stretch]
    return [*drawn, *(c.level for t in shown for c in t.crossings)]


def _axes(sheet: Plate, across: Axis, up: Axis, unit: str, unit_up: str) -> list[Layer]:
    steps: list[Row] = [{"y": t, "text": number.fixed(t, up.decimals)} for t in up.ticks]
    times: list[Row] = [{"x": t, "text": number.fixed(t, across.decimals)} for t in fitting(across, sheet.width)]
    above: list[Row] = [{"text": spelled(unit_up)}] if unit_up else []
    return [
        ink.rules(sheet, "grid", steps, x=0.0, x2=sheet.width, y="y", opacity=ink.GRID, ink=ink.INK),
        ink.rules(sheet, "base", [{}], x=0.0, x2=sheet.width, y=_HEIGHT, ink=ink.INK, opacity=0.5),
        ink.text(sheet, "steps", steps, -7.0, align="right", size=ink.SMALL),
        ink.text(sheet, "ticks", times, "x", _HEIGHT + 13, align="center", size=ink.SMALL),
        ink.text(sheet, "unit", [{"text": words("trace.time", unit=unit)}], sheet.width, _HEIGHT + 31,
                 align="right", size=ink.SMALL),
        ink.text(sheet, "what", above, -7.0, -14.0, align="right", size=ink.SMALL),
    ]  # fmt: skip


def _legend(sheet: Plate, campaign: Campaign, people: Sequence[str], index: dict[str, int], head: float) -> list[Layer]:
    """Every contender's mark, letter and name over the field, two in a row."""
    layers: list[Layer] = []
    wide = (ink.WIDE - 12) / 2
    for n, who in enumerate(people):
        mark = mark_of(index[who])
        x, y = n % 2 * wide - sheet.left + 8, 9 - head + n // 2 * _ROW
        text = f"{mark.letter} {lines_of(campaign.contender(who).title, 20, 1)[0]}"
        layers += [
            ink.points(sheet, f"marks-{n}", [{"shape": mark.shape, "fill": mark.ink}], x=x, y=y, size=60),
            ink.text(sheet, f"names-{n}", [{"text": text}], x + 10, y, size=ink.SMALL + 1),
        ]
    return layers


def _marks(
    sheet: Plate, campaign: Campaign, shown: Sequence[TraceShown], index: dict[str, int], second: float
) -> list[Layer]:
    """Limits as hair lines up to where they were passed, a mark there; ends of a scale as a triangle on the trace."""
    limits: list[Row] = []
    passed: list[Row] = []
    ends: list[Row] = []
    for t in shown:
        mark = mark_of(index[t.key.contender])
        for c in t.crossings:
            limits.append({"x": sheet.x.low, "x2": c.at / second, "y": c.level, "stroke": mark.ink})
            if not c.past:
                passed.append({"x": c.at / second, "y": c.level, "shape": mark.shape, "stroke": mark.ink})
        top = max((p for s in t.stretches for p in s), key=lambda p: p[1], default=None)
        if t.over and top:
            ends.append({"x": top[0] / second, "y": top[1]})
    return [
        ink.rules(sheet, "limits", limits, x2="x2", width=0.8, opacity=0.6),
        ink.points(sheet, "passed", passed, shape="", size=80, hollow=True, stroke=1.8),
        ink.points(sheet, "scale-ends", ends, shape="triangle-up", size=60, ink=ink.INK),
    ]


def _key(shown: Sequence[TraceShown]) -> str:
    """How to read the marks, in one sentence."""
    return sentence([
        words("key.trace"),
        words("key.trace.passed") if any(not c.past for t in shown for c in t.crossings) else "",
        words("key.trace.over") if any(t.over for t in shown) else "",
        words("key.trace.gap") if any(t.gaps for t in shown) else "",
    ])  # fmt: skip
