"""Counts: bars, for here length from zero is the point; each pass a dot under them."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.campaign.declared import Campaign, Quantity
from reportgen.charts import plate as ink
from reportgen.charts import readings
from reportgen.charts.brackets import Groups, brackets, places, room_for_brackets
from reportgen.charts.convert import draw
from reportgen.charts.figure import Drawing
from reportgen.charts.intervals import value_text
from reportgen.charts.open_ends import open_ends
from reportgen.charts.order import in_order
from reportgen.charts.plate import Plate, Row
from reportgen.charts.readings import has_value, in_lines
from reportgen.charts.scale import axis, known
from reportgen.charts.side import NAMES, figures, foot, named, names, room_for, x_axis
from reportgen.charts.words import sentence, words
from reportgen.evaluation.evaluated import Result


def drawing(campaign: Campaign, quantity: Quantity, results: Sequence[Result], groups: Groups, alt: str) -> Drawing:
    """The drawing; `results` are one a contender, and a bracket joins each of `groups`."""
    ordered = in_order(quantity, results)
    lines = in_lines(named(campaign, ordered), ordered, value_text)
    numbers = room_for([line.printed for line in lines])
    shown = [v for r in ordered for v in (r.low, r.high, *(p.value for p in r.by_pass)) if known(v)]
    shown += [r.estimate.value for r in ordered if r.estimate and known(r.estimate.value)]
    last = max((line.named.y for line in lines), default=0)
    sheet = Plate(
        NAMES,
        max(numbers + 4, 16) + room_for_brackets(groups),
        6,
        foot(quantity.unit, quantity.better),
        last + 26,
        axis([0.0, *shown], from_zero=True),
    )
    bars: list[Row] = []
    spans: list[Row] = []
    for line in lines:
        r, y, colour = line.result, line.named.y, line.named.mark.ink
        if has_value(r) and r.estimate:
            bars.append({"x": 0, "x2": r.estimate.value, "y": y - 6, "y2": y + 6, "fill": colour, **line.told})
            if known(r.low) and known(r.high):
                spans.append({"x": r.low, "x2": r.high, "y": y, **line.whose})
    layers = [
        *x_axis(sheet, quantity.unit, quantity.better),
        ink.boxes(sheet, "bars", bars, opacity=0.75),
        ink.rules(sheet, "intervals", spans, x2="x2", width=1.4, ink=ink.INK),
        *readings.passes(sheet, lines),
        *open_ends(sheet, lines),
        *names(sheet, [line.named for line in lines]),
        *figures(sheet, [(line.named, line.printed) for line in lines], sheet.width + numbers),
        *brackets(sheet, places([line.named for line in lines], ordered), groups, sheet.width + numbers + 12),
    ]
    return draw(sheet, layers, "counts", alt)


def key(results: Sequence[Result], groups: Groups) -> str:
    """How to read the marks, in one sentence."""
    repeated = any(len(r.by_pass) > 1 for r in results)
    crossed = any(p.excluded for r in results for p in r.by_pass)
    return sentence([
        words("key.count.mean") if repeated else words("key.count"),
        words("key.small-pass") if repeated else "",
        words("key.excluded") if crossed else "",
        words("key.count.range") if any(known(r.low) and known(r.high) for r in results) else "",
        words("key.arrow") if any(r.estimate and r.estimate.limit for r in results) else "",
        words("key.tie") if groups else "",
    ])  # fmt: skip
