"""A measured quantity: every pass, the value, its interval, and who can't be told apart."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reportgen.campaign.declared import Campaign, Quantity
from reportgen.charts import plate as ink
from reportgen.charts.convert import draw
from reportgen.charts.plate import Layer, Plate, Row
from reportgen.charts.scale import axis
from reportgen.charts.side import NAMES, Named, index_of, names, x_axis
from reportgen.charts.ties import tied
from reportgen.charts.words import sentence, words
from reportgen.evaluation.evaluated import Comparison, Result
from reportgen.wording import interval, number

BRACKETS = 3  # columns of brackets at most; more tie groups than that are told by rank ranges
_BAR, _VALUE = 10.0, 18.0  # heights of interval and value line, px


@dataclass(frozen=True)
class Line:
    """One contender's result in its line of the chart."""

    named: Named
    result: Result
    printed: str


def in_order(quantity: Quantity, results: Sequence[Result]) -> list[Result]:
    """Best first as far as values say; then those not ranked; then those without a value. Else the campaign's order."""

    def key(pair: tuple[int, Result]) -> tuple[float, ...]:
        place, r = pair
        value = r.estimate.value if r.estimate else None
        if value is None and not (r.estimate and r.estimate.limit):
            return (3, place)
        if r.blocked:
            return (2, place)
        if quantity.better == "neither":
            return (0, place)
        sign = 1 if quantity.better == "lower" else -1
        if value is None:
            return (1, place)
        limit = {"above": 0.5, "below": -0.5, None: 0}[r.estimate.limit if r.estimate else None] * sign
        return (0, sign * value, limit, place)

    return [r for _, r in sorted(enumerate(results), key=key)]


def svg(campaign: Campaign, quantity: Quantity, results: Sequence[Result], comparisons: Sequence[Comparison], alt: str) -> str:
    """The drawing; `results` one a contender, of one part."""
    ordered = in_order(quantity, results)
    pitch = 38.0 if len(ordered) <= 14 else 30.0
    index = index_of(campaign.contenders)
    lines = [
        Line(
            Named(
                campaign.contender(r.contender), index[r.contender], (n + 0.5) * pitch,
                words("not ranked") if r.blocked else "", bool(r.blocked),
            ),
            r, value_text(r),
        )
        for n, r in enumerate(ordered)
    ]  # fmt: skip
    groups = tied_groups(quantity, ordered, comparisons)
    band = band_of(quantity, ordered)
    columns = len(groups) if groups is not None and len(groups) <= BRACKETS else 0
    figure = 8 + 7.2 * max((len(line.printed) for line in lines), default=0)
    right = figure + 11 * columns + 6
    sheet = Plate(
        NAMES, right, 18 if band else 4, 40, pitch * len(lines), axis([*_shown(ordered), *(band or ())], at_most=4)
    )
    layers = [
        *_band(sheet, quantity, band),
        *x_axis(sheet, "", quantity.unit, quantity.better),
        *_intervals(sheet, lines),
        *_passes(sheet, lines),
        *_limits(sheet, lines),
        *names(sheet, [line.named for line in lines]),
        *_figures(sheet, lines, figure),
        *(_brackets(sheet, lines, groups or (), figure) if columns else []),
    ]
    return draw(sheet, layers, "intervals", alt)


def value_text(result: Result) -> str:
    """The number beside a line, without its unit, rounded as in the sentences."""
    e = result.estimate
    if e is None or e.value is None or e.limit is not None:
        return ""
    return interval.value_only(e.value, result.u, "", low=result.low, high=result.high, decimals=None)


def tied_groups(
    quantity: Quantity, ordered: Sequence[Result], comparisons: Sequence[Comparison]
) -> tuple[tuple[str, ...], ...] | None:
    """Groups of ranked contenders no two of which are told apart; empty where nothing is ranked."""
    ranked = [r.contender for r in ordered if not r.blocked and r.rank is not None]
    if quantity.better == "neither" or len(ranked) < 2:
        return ()
    return tied(ranked, [(c.first, c.second) for c in comparisons if c.resolved])


def band_of(quantity: Quantity, ordered: Sequence[Result]) -> tuple[float, float] | None:
    """From the leader's value to as far behind as would begin to matter; None without `matters` or a leader."""
    leader = next((r.estimate for r in ordered if r.rank and r.estimate and r.estimate.limit is None), None)
    if quantity.matters is None or quantity.better == "neither" or leader is None or leader.value is None:
        return None
    if quantity.matters.unit != leader.unit:
        from reportgen.metrology.unit import convert, parse_unit

        width = convert(float(quantity.matters.value), parse_unit(quantity.matters.unit), parse_unit(leader.unit))
    else:
        width = float(quantity.matters.value)
    return (leader.value, leader.value + width) if quantity.better == "lower" else (leader.value - width, leader.value)


def _shown(results: Sequence[Result]) -> list[float]:
    """Every number the x axis must hold."""
    found: list[float | None] = []
    for r in results:
        found += [r.low, r.high, r.estimate.value if r.estimate else None, *(p.value for p in r.by_pass)]
    return [v for v in found if number.known(v)]


def _band(sheet: Plate, quantity: Quantity, band: tuple[float, float] | None) -> list[Layer]:
    if band is None or quantity.matters is None:
        return []
    amount = quantity.matters.text or interval.value_only(float(quantity.matters.value), None, quantity.matters.unit)
    low, high = band
    row: Row = {"x": low, "x2": high, "text": words("matters", amount=amount)}
    crowded = sheet.x.at((low + high) / 2, sheet.width) > sheet.width * 0.6
    return [
        ink.boxes(sheet, "matters", [row], y=-4.0, y2=sheet.height, ink=ink.INK, opacity=ink.FAINT),
        ink.text(sheet, "matters-label", [row], "x2" if crowded else "x", -11.0, align="right" if crowded else "left",
                 size=ink.SMALL, opacity=ink.LIGHT),
    ]  # fmt: skip


def _intervals(sheet: Plate, lines: Sequence[Line]) -> list[Layer]:
    """A bar where scatter is in the interval, a thin line where only the instrument is; the value upright in it."""
    bars: list[Row] = []
    thin: list[Row] = []
    ends: list[Row] = []
    values: list[Row] = []
    for line in lines:
        r, y, colour = line.result, line.named.y - 4, line.named.mark.ink
        e = r.estimate
        if e is None or e.value is None or e.limit is not None:
            continue
        if number.known(r.low) and number.known(r.high):
            if r.covers == "instrument and scatter":
                bars.append({"x": r.low, "x2": r.high, "y": y - _BAR / 2, "y2": y + _BAR / 2, "fill": colour})
            else:
                thin.append({"x": r.low, "x2": r.high, "y": y, "stroke": colour})
                ends += [{"x": end, "y": y - 3, "y2": y + 3, "stroke": colour} for end in (r.low, r.high)]
        values.append({"x": e.value, "y": y - _VALUE / 2, "y2": y + _VALUE / 2, "stroke": colour})
    return [
        ink.boxes(sheet, "intervals", bars, opacity=ink.PALE),
        ink.rules(sheet, "intervals-instrument", thin, x2="x2", width=1.4),
        ink.rules(sheet, "interval-ends", ends, y2="y2", width=1.4),
        ink.rules(sheet, "values", values, y2="y2", width=3),
    ]


def _passes(sheet: Plate, lines: Sequence[Line]) -> list[Layer]:
    """Every pass that has a number, under its interval; equal ones one below the other. One reading is its own line."""
    kept: list[Row] = []
    left_out: list[Row] = []
    for line in lines:
        if len(line.result.by_pass) < 2:
            continue
        placed: list[tuple[float, int]] = []
        for p in line.result.by_pass:
            if not number.known(p.value) or p.limit is not None:
                continue
            at = sheet.x.at(p.value, sheet.width)
            taken = {level for x, level in placed if abs(x - at) < 4.5}
            level = next(n for n in range(len(placed) + 1) if n not in taken)
            placed.append((at, level))
            (left_out if p.excluded else kept).append({"x": p.value, "y": line.named.y + 9 + min(level, 2) * 4.0})
    return [
        ink.points(sheet, "passes", kept, shape="circle", size=15, ink=ink.INK, opacity=0.8),
        ink.points(sheet, "passes-left-out", left_out, shape="M-1,-1L1,1M-1,1L1,-1", size=26, ink=ink.INK, hollow=True),
    ]


def _limits(sheet: Plate, lines: Sequence[Line]) -> list[Layer]:
    """An open end: from the limit of the meter's scale to the edge of the field, with what is known in words."""
    arrows: list[Row] = []
    heads: dict[str, list[Row]] = {"above": [], "below": []}
    told: list[Row] = []
    for line in lines:
        e, y = line.result.estimate, line.named.y - 4
        if e is None or (e.limit is None and e.value is None):
            said = line.result.missing or words("not read")
            told.append({"y": line.named.y, "text": said})
        elif e.limit is not None:
            edge = sheet.x.high if e.limit == "above" else sheet.x.low
            colour = line.named.mark.ink
            known = number.known(e.value)
            arrows.append({"x": e.value if known else (sheet.x.low + sheet.x.high) / 2, "x2": edge, "y": y, "stroke": colour})
            heads[e.limit].append({"y": y, "fill": colour})
            told.append({"y": y + 14, "text": interval.bound(e.value, e.unit, e.limit)})
    return [
        ink.rules(sheet, "limits", arrows, x2="x2", width=2),
        ink.points(sheet, "limits-above", heads["above"], x=sheet.width - 2, shape="triangle-right", size=50),
        ink.points(sheet, "limits-below", heads["below"], x=2.0, shape="triangle-left", size=50),
        ink.text(sheet, "limits-said", told, sheet.width / 2, align="center", size=ink.SMALL, opacity=0.85),
    ]


def _figures(sheet: Plate, lines: Sequence[Line], width: float) -> list[Layer]:
    """The values at the right, decimal under decimal as far as they share their decimals."""
    rows: list[Row] = [{"y": line.named.y - 4, "text": line.printed} for line in lines if line.printed]
    return [ink.text(sheet, "figures", rows, sheet.width + width, align="right")]


def _brackets(sheet: Plate, lines: Sequence[Line], groups: Sequence[tuple[str, ...]], figure: float) -> list[Layer]:
    """One bracket a tie group: a spine from its first to its last member, a short arm at each member."""
    at = {line.result.contender: line.named.y - 4 for line in lines}
    layers: list[Layer] = []
    for column, group in enumerate(groups):
        x = sheet.width + figure + 10 + 11 * column
        spine: list[Row] = [{"y": at[group[0]], "y2": at[group[-1]]}]
        arms: list[Row] = [{"y": at[name]} for name in group]
        layers += [
            ink.rules(sheet, f"tie-{column + 1}", spine, x=x, y2="y2", ink=ink.INK, width=1.3, cap="square"),
            ink.rules(sheet, f"tie-{column + 1}-arms", arms, x=x - 5, x2=x, ink=ink.INK, width=1.3),
        ]
    return layers


def key(quantity: Quantity, results: Sequence[Result], groups: Sequence[tuple[str, ...]] | None) -> str:
    """How to read the marks that this chart really holds, in one sentence."""
    repeated = any(len(r.by_pass) > 1 for r in results)
    drawn = [r for r in results if r.estimate and r.estimate.value is not None and r.estimate.limit is None]
    has = {r.covers for r in drawn if number.known(r.low)}
    parts = [
        words("key.pass") if repeated else words("key.single"),
        words("key.excluded") if any(p.excluded for r in results for p in r.by_pass) else "",
        words("key.value") if repeated else "",
        words("key.bar") if "instrument and scatter" in has else "",
        words("key.thin") if "instrument" in has else "",
        words("key.arrow") if any(r.estimate and r.estimate.limit for r in results) else "",
        words("key.tie") if groups and len(groups) <= BRACKETS else "",
        words("key.band") if band_of(quantity, in_order(quantity, results)) else "",
    ]
    return sentence(parts)
