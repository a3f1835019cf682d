"""An order that was only seen: a line a contender, and a link for each pair that was set side by side.

Whoever stands further right is more. Places along the line are no measure, and without a link two of them say nothing
of each other: the links are what was seen.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reportgen.campaign.declared import Campaign
from reportgen.charts import plate as ink
from reportgen.charts import said
from reportgen.charts.convert import draw
from reportgen.charts.figure import Drawing
from reportgen.charts.order import by_level
from reportgen.charts.plate import Layer, Plate, Row
from reportgen.charts.readings import CROSS
from reportgen.charts.scale import Axis
from reportgen.charts.side import NAMES, named, names
from reportgen.charts.words import sentence, words
from reportgen.evaluation.evaluated import Comparison, Result
from reportgen.judgement.orders.partial_order import Between, turned
from reportgen.wording.reason import why_missing

PITCH, EDGE = 34.0, 14.0  # px from line to line, and from the field's edge to the first and last level
APART = 1.6  # px from the middle to each line of a double link
MOST_FOLLOWING = 8  # contenders; with more, dashed links would hide what was seen

Spot = tuple[float, float]  # px from the field's left and top


def drawing(campaign: Campaign, results: Sequence[Result], pairs: Sequence[Comparison], alt: str) -> Drawing:
    """The drawing; `results` are one a contender, `pairs` all of them."""
    ordered = by_level(results)
    lines = named(campaign, ordered, PITCH)
    sheet = Plate(NAMES, 12, 4, 30, PITCH * len(lines), Axis(0.0, ink.WIDE - NAMES - 12, (), 0))
    top = max((r.level or 0 for r in ordered), default=0)
    step = (sheet.width - 2 * EDGE) / top if top else 0.0
    at = {
        r.contender: (EDGE + step * r.level if top else sheet.width / 2, line.y)
        for line, r in zip(lines, ordered, strict=True)
        if r.level is not None
    }
    seen = [p.seen for p in pairs if p.seen is not None and p.first in at and p.second in at]
    marks: list[Row] = [
        {"x": at[r.contender][0], "y": line.y, "shape": line.mark.shape, "fill": line.mark.ink,
         "of": line.index, "walk": n, "said": said.of_result(line.contender, r)}
        for n, (line, r) in enumerate(zip(lines, ordered, strict=True))
        if r.contender in at
    ]  # fmt: skip
    missing: list[Row] = [
        {"y": line.y, "text": why_missing(r.missing) or words("not read"), "of": line.index, "walk": n,
         "said": said.of_result(line.contender, r)}
        for n, (line, r) in enumerate(zip(lines, ordered, strict=True))
        if r.contender not in at
    ]  # fmt: skip
    layers = [
        *_links(sheet, at, seen, len(ordered) <= MOST_FOLLOWING),
        ink.points(sheet, "seen", marks, size=90),
        ink.text(sheet, "not-read", missing, 2.0, size=ink.SMALL, opacity=ink.LIGHT),
        ink.rules(sheet, "base", [{"y": sheet.height}], x=0.0, x2=sheet.width, ink=ink.INK, opacity=ink.GRID),
        ink.text(sheet, "less", [{"text": words("order.less")}], 0.0, sheet.height + 15, size=ink.SMALL),
        ink.text(sheet, "more", [{"text": words("order.more")}], sheet.width, sheet.height + 15, align="right",
                 size=ink.SMALL),
        *names(sheet, lines),
    ]  # fmt: skip
    return draw(sheet, layers, "orders", alt)


def key(results: Sequence[Result], pairs: Sequence[Comparison]) -> str:
    """How to read the marks, in one sentence."""
    seen = [p.seen for p in pairs if p.seen is not None]
    follows = len(results) <= MOST_FOLLOWING and any(p.follows for p in seen)
    return sentence([
        words("key.order") if any(p.told in ("less", "more") for p in seen) else "",
        words("key.order.alike") if any(p.told == "alike" for p in seen) else "",
        words("key.order.both-ways") if any(p.told == "both ways" for p in seen) else "",
        words("key.order.follows") if follows else "",
        words("key.order.places"),
    ])  # fmt: skip


def _links(sheet: Plate, at: Mapping[str, Spot], seen: Sequence[Between], following: bool) -> list[Layer]:
    solid: list[Row] = []
    double: list[Row] = []
    dashed: list[Row] = []
    crossed: list[Row] = []
    for pair in seen:
        low = turned(pair) if pair.told == "more" else pair
        one, other = at[low.first], at[low.second]
        if pair.told == "alike":
            double += _double(one, other)
        elif pair.told == "both ways":
            solid.append(_line(one, other))
            crossed.append({"x": (one[0] + other[0]) / 2, "y": (one[1] + other[1]) / 2})
        elif pair.told in ("less", "more") and not pair.follows:
            solid.append(_line(one, other))
        elif pair.told in ("less", "more") and following:
            corner = (other[0], one[1])
            dashed += [_line(one, corner), _line(corner, other)]
    return [
        ink.rules(sheet, "follows", dashed, x2="x2", y2="y2", ink=ink.INK, opacity=ink.LIGHT, dash=(2.0, 3.0)),
        ink.rules(sheet, "links", solid, x2="x2", y2="y2", ink=ink.INK, width=1.4),
        ink.rules(sheet, "alike", double, x2="x2", y2="y2", ink=ink.INK, width=1.0),
        ink.points(sheet, "both-ways", crossed, shape=CROSS, size=40, ink=ink.INK, hollow=True),
    ]


def _line(one: Spot, other: Spot) -> Row:
    return {"x": one[0], "x2": other[0], "y": one[1], "y2": other[1]}


def _double(one: Spot, other: Spot) -> list[Row]:
    """Two lines side by side, as far apart wherever they lead."""
    across, down = other[0] - one[0], other[1] - one[1]
    length = (across**2 + down**2) ** 0.5
    dx, dy = -down / length * APART, across / length * APART
    return [_line((one[0] + s * dx, one[1] + s * dy), (other[0] + s * dx, other[1] + s * dy)) for s in (-1.0, 1.0)]
