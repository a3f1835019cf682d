"""Lines of cost over the stated use, each with the band of what price and use leave open."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass

from reportgen.campaign.declared import Campaign
from reportgen.charts import plate as ink
from reportgen.charts.convert import draw
from reportgen.charts.figure import Drawing
from reportgen.charts.letters import characters, px_of
from reportgen.charts.plate import Layer, Plate, Row
from reportgen.charts.scale import Axis, axis, known
from reportgen.charts.side import fitting, lines_of
from reportgen.charts.spread import spread
from reportgen.evaluation.evaluated import CostOfUse
from reportgen.judgement.money.break_even import CostLine
from reportgen.marks import ContenderMark, mark_of
from reportgen.wording import number
from reportgen.wording.language import say

HEIGHT, _ROW, _HALF = 210.0, 17.0, (ink.WIDE - 12) / 2
LABELS = 14  # at the ends of lines; more would only hide them


@dataclass(frozen=True)
class Line:
    """One contender's line with its mark."""

    cost: CostLine
    index: int

    @property
    def mark(self) -> ContenderMark:
        return mark_of(self.index)

    @property
    def sign(self) -> Row:
        """Its mark."""
        return {"shape": self.mark.shape, "fill": self.mark.ink, "of": self.index}

    def middle(self, uses: float) -> float:
        """Price, of a range its middle, and so many uses."""
        return (self.cost.price_low + self.cost.price_high) / 2.0 + uses * self.cost.cost


def lines_of_cost(campaign: Campaign, cost: CostOfUse) -> tuple[Line, ...]:
    """Those that can be drawn, in the campaign's order."""
    index = {c.id: n for n, c in enumerate(campaign.contenders)}
    return tuple(Line(line, index[line.name]) for line in cost.lines if known(line.cost))


def uses_of(cost: CostOfUse) -> tuple[float, ...]:
    """The numbers of uses that the axis names, and both ends of it."""
    within = {t for t in _across(cost).ticks if cost.low < t < cost.high}
    return tuple(sorted({cost.low, cost.high, *within}))


def _across(cost: CostOfUse) -> Axis:
    return axis((cost.low, cost.high), from_zero=cost.low == 0.0, at_most=6, margin=0.0)


def drawing(
    campaign: Campaign, cost: CostOfUse, alt: str, out: Collection[str], met: Callable[[CostLine, float], str]
) -> Drawing:
    """The drawing, with `alt` for whoever doesn't see it; of those `out` the key says so.

    `met` says what a line comes to after so many uses.
    """
    lines = lines_of_cost(campaign, cost)
    ends = (cost.low, cost.high)
    up = axis([v for line in lines for n in ends for v in (*line.cost.total(n), line.middle(n))], at_most=5)
    across = _across(cost)
    widest = max((characters(number.fixed(t, up.decimals)) for t in up.ticks), default=1)
    named = [_named(campaign, line, out) for line in lines]
    abreast = _abreast(named)
    head = 32 + _ROW * -(-len(lines) // abreast)
    plate = Plate(14 + 7 * widest, 30, head, 42, HEIGHT, across, up)
    layers = [*_axes(plate, cost), *_legend(plate, lines, named, head, abreast)]
    for n, line in enumerate(lines):
        layers += _band(plate, line, ends)
        whose: Row = {"of": line.index, "walk": n}
        layers += _line(plate, n, line, [
            {"x": uses, "y": line.middle(uses), "said": met(line.cost, uses), **whose} for uses in uses_of(cost)
        ])  # fmt: skip
    layers += _ends(plate, lines, cost.high)
    return draw(plate, layers, "cost", alt)


def _axes(plate: Plate, cost: CostOfUse) -> list[Layer]:
    assert plate.y is not None
    steps: list[Row] = [{"y": t, "text": number.fixed(t, plate.y.decimals)} for t in plate.y.ticks]
    uses: list[Row] = [{"x": t, "text": number.fixed(t, plate.x.decimals)} for t in fitting(plate.x, plate.width)]
    return [
        ink.rules(plate, "grid", steps, x=0.0, x2=plate.width, y="y", opacity=ink.GRID, ink=ink.INK),
        ink.rules(plate, "base", [{}], x=0.0, x2=plate.width, y=HEIGHT, ink=ink.INK, opacity=0.5),
        ink.rules(plate, "notches", uses, y=HEIGHT, y2=HEIGHT + 4, ink=ink.INK, opacity=0.5),
        ink.text(plate, "steps", steps, -7.0, align="right", size=ink.SMALL),
        ink.text(plate, "ticks", uses, "x", HEIGHT + 13, align="center", size=ink.SMALL),
        ink.text(plate, "across", [{"text": say("cost.chart.across")}], plate.width, HEIGHT + 31, align="right",
                 size=ink.SMALL),
        ink.text(plate, "what", [{"text": cost.currency}], -7.0, -14.0, align="right", size=ink.SMALL),
    ]  # fmt: skip


def _named(campaign: Campaign, line: Line, out: Collection[str]) -> str:
    """Its letter and name, and whether it is out."""
    gone = line.cost.name in out
    short = lines_of(campaign.contender(line.cost.name).title, 15 if gone else 20, 1)[0]
    return f"{line.mark.letter} {say('cost.chart.out', name=short) if gone else short}"


def _abreast(named: Sequence[str]) -> int:
    """Two in a row, or one where one of them needs more than half of it."""
    fits = _HALF - 30
    return 2 if all(px_of(text, ink.SMALL + 1) <= fits for text in named) else 1


def _legend(plate: Plate, lines: Sequence[Line], named: Sequence[str], head: float, abreast: int) -> list[Layer]:
    """Every contender's mark, letter and name over the field."""
    layers: list[Layer] = []
    for n, (line, text) in enumerate(zip(lines, named, strict=True)):
        x, y = n % abreast * _HALF - plate.left + 8, 9 - head + n // abreast * _ROW
        layers += [
            ink.points(plate, f"marks-{n}", [line.sign], x=x, y=y, size=60),
            ink.text(plate, f"names-{n}", [{"text": text, "of": line.index}], x + 10, y, size=ink.SMALL + 1),
        ]
    return layers


def _band(plate: Plate, line: Line, ends: tuple[float, float]) -> list[Layer]:
    """What price and use leave open; of a cost that is only a bound the band is open, so none is drawn."""
    band: list[Row] = [] if line.cost.limit else [
        {"x": x, "y": low, "y2": high, "of": line.index} for x in ends for low, high in (line.cost.total(x),)
    ]  # fmt: skip
    return [ink.bands(plate, f"band-{line.index}", band, ink=line.mark.ink)]


def _line(plate: Plate, n: int, line: Line, rows: Sequence[Row]) -> list[Layer]:
    """The line through what it comes to; of a cost that is only a bound it is dashed."""
    dash = (5.0, 3.0) if line.cost.limit else ()
    return [ink.lines(plate, f"line-{n}", rows, ink=line.mark.ink, width=1.6, dash=dash)]


def _ends(plate: Plate, lines: Sequence[Line], uses: float) -> list[Layer]:
    """Mark and letter where each line ends, moved apart."""
    if len(lines) > LABELS or plate.y is None:
        return []
    spots = [(plate.width, HEIGHT - plate.y.at(line.middle(uses), HEIGHT)) for line in lines]
    layers: list[Layer] = []
    for n, (line, y) in enumerate(zip(lines, spread(spots, HEIGHT - 7), strict=True)):
        letter: Row = {"text": line.mark.letter, "of": line.index}
        layers += [
            ink.points(plate, f"end-marks-{n}", [line.sign], x=plate.width + 7, y=y, size=34),
            ink.text(plate, f"end-names-{n}", [letter], plate.width + 13, y, size=ink.SMALL, weight=700),
        ]
    return layers
