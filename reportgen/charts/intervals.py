"""A measured quantity: every pass, the value, its interval, and who can't be told apart."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.campaign.declared import Campaign, Quantity
from reportgen.charts import plate as ink
from reportgen.charts import readings
from reportgen.charts.brackets import COLUMN, Groups, brackets, tie_groups
from reportgen.charts.convert import draw
from reportgen.charts.figure import Drawing
from reportgen.charts.open_ends import open_ends
from reportgen.charts.order import in_order
from reportgen.charts.plate import Layer, Plate, Row
from reportgen.charts.readings import has_value, in_lines
from reportgen.charts.scale import Axis, axis, known
from reportgen.charts.shared_axes import Beside, Reach
from reportgen.charts.side import NAMES, figures, foot, named, names, room_for, x_axis
from reportgen.charts.words import sentence, words
from reportgen.evaluation.evaluated import Comparison, Result
from reportgen.evaluation.found_between import found_between
from reportgen.metrology.unit import convert, parse_unit
from reportgen.prose.amounts import read_once
from reportgen.prose.table_notes import read_roughly
from reportgen.wording import interval
from reportgen.wording.listing import and_list


def drawing(
    campaign: Campaign, quantity: Quantity, results: Sequence[Result], pairs: Sequence[Comparison], alt: str,
    beside: Beside | None = None,
) -> Drawing:  # fmt: skip
    """The drawing; `results` are one a contender, of one part; `beside` is what it shares with other charts."""
    ordered = in_order(quantity, results)
    lines = in_lines(named(campaign, ordered), ordered, value_text)
    groups = tie_groups(quantity, ordered, pairs)
    band = band_of(quantity, ordered)
    numbers = room_for([line.printed for line in lines])
    right = max(_right(numbers, groups), beside.right if beside else 0.0)
    unit = _unit(quantity, ordered)
    last = max((line.named.y for line in lines), default=0)
    sheet = Plate(NAMES, right, 22, foot(unit, quantity.better), last + 26, _axis(ordered, band, beside))
    layers = [
        *_band(sheet, quantity, band),
        *x_axis(sheet, unit, quantity.better),
        *readings.intervals(sheet, lines),
        *readings.passes(sheet, lines),
        *open_ends(sheet, lines),
        *names(sheet, [line.named for line in lines]),
        *figures(sheet, [(line.named, line.printed) for line in lines], sheet.width + numbers, unit),
        *brackets(sheet, {line.result.contender: line.named.y for line in lines}, groups, sheet.width + numbers + 12),
    ]
    return draw(sheet, layers, "intervals", alt)


def reach(quantity: Quantity, title: str, results: Sequence[Result], pairs: Sequence[Comparison]) -> Reach | None:
    """What its drawing needs, so that others can share its axis; None where no value or bound has a place."""
    ordered = in_order(quantity, results)
    shown = _shown(ordered, band_of(quantity, ordered))
    if not shown:
        return None
    right = _right(room_for([value_text(r) for r in ordered]), tie_groups(quantity, ordered, pairs))
    return Reach(quantity.id, title, _unit(quantity, ordered), min(shown), max(shown), right)


def _unit(quantity: Quantity, results: Sequence[Result]) -> str:
    return next((r.estimate.unit for r in results if r.estimate), quantity.unit)


def _right(numbers: float, groups: Groups) -> float:
    """Px beside the field, for numbers so wide and the brackets."""
    return max(numbers + COLUMN * len(groups) + 5, 16)


def value_text(result: Result) -> str:
    """The number beside a line, without its unit, rounded as in the sentences; "" where there is none."""
    e = result.estimate
    if e is None or not has_value(result):
        return ""
    if limits := found_between(result):
        return interval.as_typed(*limits)
    if read_once(result):
        return interval.value_only(e.value, None, "", decimals=e.decimals)
    if result.kind != "measured":
        return interval.value_only(e.value, None, "", decimals=interval.decimals_of_mean(e.value))
    return interval.value_only(e.value, result.u, "", low=result.low, high=result.high)


def band_of(quantity: Quantity, ordered: Sequence[Result]) -> tuple[float, float] | None:
    """From the best value to as far behind as would begin to matter; None without `matters` or a ranked value."""
    values = [r.estimate for r in ordered if r.rank and has_value(r) and r.estimate]
    best = max if quantity.better == "higher" else min
    leader = best(values, key=lambda e: e.value or 0.0, default=None)
    if quantity.matters is None or quantity.better == "neither" or leader is None or leader.value is None:
        return None
    width = float(quantity.matters.value)
    if quantity.matters.unit != leader.unit:
        width = convert(width, parse_unit(quantity.matters.unit), parse_unit(leader.unit), difference=True)
    return (leader.value, leader.value + width) if quantity.better == "lower" else (leader.value - width, leader.value)


def _axis(results: Sequence[Result], band: tuple[float, float] | None, beside: Beside | None = None) -> Axis:
    """Holds all that is drawn, here and in the charts that share it."""
    return axis([*_shown(results, band), *((beside.low, beside.high) if beside else ())])


def _shown(results: Sequence[Result], band: tuple[float, float] | None) -> list[float]:
    """Every value drawn, where each bound begins, and beyond them room for an open end.

    A bound so far off that it would press several values together (more than twice their spread away) is left outside:
    its open end then begins behind a break, at the edge on which the bound lies.
    """
    shown: list[float] = list(band or ())
    bounds: list[float] = []
    valued = [r for r in results if has_value(r)]
    for r in results:
        numbers = (r.low, r.high, r.estimate.value) if r.estimate and has_value(r) else ()
        shown += [v for v in (*numbers, *(p.value for p in r.by_pass if not p.limit)) if known(v)]
        bounds += [r.estimate.value] if r.estimate and r.estimate.limit and known(r.estimate.value) else []
        bounds += [p.value for p in r.by_pass if p.limit and known(p.value)]
    spread = max(shown) - min(shown) if len(valued) > 1 else 0.0
    reach = 2 * spread if spread else float("inf")
    shown += [v for v in bounds if min(shown, default=v) - reach <= v <= max(shown, default=v) + reach]
    limits = {r.estimate.limit for r in results if r.estimate}
    room = 0.2 * (max(shown) - min(shown)) if shown else 0.0
    if "above" in limits and shown:
        shown.append(max(shown) + room)
    if "below" in limits and shown and min(shown) - room > 0:
        shown.append(min(shown) - room)
    return shown


def _band(sheet: Plate, quantity: Quantity, band: tuple[float, float] | None) -> list[Layer]:
    if band is None or quantity.matters is None:
        return []
    row: Row = {"x": band[0], "x2": band[1], "text": words("matters", amount=quantity.matters.text)}
    late = sheet.x.at(band[0], sheet.width) > sheet.width * 0.45
    return [
        ink.boxes(sheet, "matters", [row], y=-4.0, y2=sheet.height, ink=ink.INK, opacity=ink.FAINT),
        ink.text(sheet, "matters-said", [row], "x2" if late else "x", -11.0, align="right" if late else "left",
                 size=ink.SMALL, opacity=ink.LIGHT),
    ]  # fmt: skip


def key(quantity: Quantity, results: Sequence[Result], groups: Groups, beside: Beside | None = None) -> str:
    """How to read the marks that this chart really holds, in one sentence."""
    repeated = any(len(r.by_pass) > 1 for r in results)
    units = any(len({p.specimen for p in r.by_pass}) > 1 for r in results)
    values = [r for r in results if has_value(r)]
    has = {r.covers for r in values if known(r.low)}
    scale = _axis(results, band_of(quantity, in_order(quantity, results)), beside)
    parts = [
        words("key.pass") if repeated else words("key.single") if values else "",
        words("key.excluded") if any(p.excluded for r in results for p in r.by_pass) else "",
        words("key.value.specimens" if units else "key.value") if repeated and values else "",
        words("key.bar.mean" if repeated else "key.bar") if "instrument and scatter" in has else "",
        words(_thin(values)) if "instrument" in has else "",
        words("key.arrow") if any(r.estimate and r.estimate.limit for r in results) else "",
        words("key.break") if any(_broken(r, scale) for r in results) else "",
        words("key.tie" if "instrument and scatter" in has else "key.tie.once") if groups else "",
        words("key.band") if band_of(quantity, in_order(quantity, results)) else "",
        words("key.shared", names=_quoted(beside.titles)) if beside else "",
    ]
    return sentence(parts)


def _quoted(titles: Sequence[str]) -> str:
    return and_list([words("quoted", title=title) for title in titles])


def _thin(values: Sequence[Result]) -> str:
    """What a thin line holds: the instrument alone, or what a laboratory states, or no more than its rounding."""
    if any(map(read_roughly, values)):
        return "key.thin.rough"
    laboratories = [r.laboratory for r in values if r.laboratory]
    if not laboratories:
        return "key.thin"
    return "key.thin.stated" if any(one.uncertainty for one in laboratories) else "key.thin.rounding"


def _broken(result: Result, scale: Axis) -> bool:
    """Whether a result's limit lies outside the axis."""
    e = result.estimate
    return e is not None and e.limit is not None and known(e.value) and not scale.holds(e.value)
