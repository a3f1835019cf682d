"""Price against one quantity: nothing is divided, and who is beaten on it at no higher price is shown open."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from reportgen.campaign.declared import Campaign, Contender, Quantity
from reportgen.charts import plate as ink
from reportgen.charts.convert import draw
from reportgen.charts.figure import Drawing
from reportgen.charts.letters import characters, px_of
from reportgen.charts.plate import Plate, Row
from reportgen.charts.readings import has_value
from reportgen.charts.scale import Axis, axis, known
from reportgen.charts.side import fitting, lines_of
from reportgen.charts.words import sentence, words
from reportgen.evaluation.evaluated import Evaluation, Result, ValueForMoney
from reportgen.marks import ContenderMark, mark_of
from reportgen.wording import number
from reportgen.wording.sentence import capital
from reportgen.wording.unit import spelled

_HEIGHT = 220.0


@dataclass(frozen=True)
class Offer:
    """One contender with a price and a result; `beaten_by` cost no more and are resolved better on this quantity."""

    contender: Contender
    index: int
    price: ValueForMoney
    result: Result
    beaten_by: tuple[str, ...] = ()

    @property
    def mark(self) -> ContenderMark:
        return mark_of(self.index)

    @property
    def low(self) -> float:
        return self.price.low or 0.0

    @property
    def high(self) -> float:
        return self.low if self.price.high is None else self.price.high

    @property
    def middle(self) -> float:
        """Of the price range."""
        return (self.low + self.high) / 2

    @property
    def value(self) -> float:
        value = self.result.estimate.value if self.result.estimate else None
        return 0.0 if value is None else value


def offers(campaign: Campaign, evaluation: Evaluation) -> tuple[Quantity | None, tuple[Offer, ...]]:
    """The quantity money is shown against, and every contender that has a price and a value of it.

    It is the first of those the verdict weighs money against that has two such contenders.
    """
    verdict = evaluation.verdict
    for id in verdict.value_quantities if verdict else ():
        made = []
        for n, contender in enumerate(campaign.contenders):
            price = next((v for v in verdict.value if v.contender == contender.id), None) if verdict else None
            result = evaluation.of(id, contender.id)
            if price and known(price.low) and result and has_value(result):
                made.append(Offer(contender, n, price, result, _beaten(evaluation, id, price)))
        if len(made) > 1:
            return campaign.quantity(id), tuple(made)
    return None, ()


def _beaten(evaluation: Evaluation, quantity: str, of: ValueForMoney) -> tuple[str, ...]:
    """Who costs no more, in the same currency, and is resolved better on `quantity`, whatever else was compared."""
    pairs = [c for c in evaluation.comparisons if (c.quantity, c.part) == (quantity, "") and c.resolved and c.favours]
    better = {c.favours for c in pairs if of.contender in (c.first, c.second)} - {of.contender}
    value = evaluation.verdict.value if evaluation.verdict else ()
    cheap = (v for v in value if v.currency == of.currency and known(v.high) and known(of.low) and v.high <= of.low)
    return tuple(v.contender for v in cheap if v.contender in better)


def drawing(quantity: Quantity, shown: Sequence[Offer], met: Mapping[str, str], alt: str) -> Drawing:
    """The drawing; at least two offers in one currency. `met` is what each contender's mark says of itself."""
    unit = next((o.result.estimate.unit for o in shown if o.result.estimate), quantity.unit)
    heights = [v for o in shown for v in (o.value, o.result.low, o.result.high) if known(v)]
    across, up = (
        axis([v for o in shown for v in (o.low, o.high)], at_most=6, margin=0.1),
        axis(heights, at_most=6, margin=0.1),
    )
    widest = max((characters(number.fixed(t, up.decimals)) for t in up.ticks), default=1)
    sheet = Plate(14 + 7 * widest, 14, 28, 42, _HEIGHT, across, up)
    prices: list[Row] = [{"x": t, "text": number.fixed(t, across.decimals)} for t in fitting(across, sheet.width)]
    steps: list[Row] = [{"y": t, "text": number.fixed(t, up.decimals)} for t in up.ticks]
    spans: list[Row] = []
    ranges: list[Row] = []
    solid: list[Row] = []
    beaten: list[Row] = []
    for o in shown:
        x = o.middle
        looks = {"shape": o.mark.shape, "fill": o.mark.ink, "stroke": o.mark.ink, "of": o.index}
        row: Row = {"x": x, "y": o.value, "said": met[o.contender.id], **looks}
        (beaten if o.beaten_by else solid).append(row)
        if known(o.result.low) and known(o.result.high):
            spans.append({"x": x, "y": o.result.low, "y2": o.result.high, **looks})
        if o.high > o.low:
            ranges.append({"x": o.low, "x2": o.high, "y": o.value, **looks})
    left, right = _names(sheet, shown)
    printed = spelled(unit)
    what = capital(quantity.title)
    top = words("axis", what=what, unit=printed) if printed else what
    direction = [words(f"money.{quantity.better}")] if quantity.better != "neither" else []
    currency = shown[0].price.currency
    layers = [
        ink.rules(sheet, "grid", steps, x=0.0, x2=sheet.width, y="y", opacity=ink.GRID, ink=ink.INK),
        ink.rules(sheet, "base", [{}], x=0.0, x2=sheet.width, y=_HEIGHT, ink=ink.INK, opacity=0.5),
        ink.rules(sheet, "price-ticks", prices, y=_HEIGHT, y2=_HEIGHT + 4, ink=ink.INK, opacity=0.5),
        ink.text(sheet, "steps", steps, -7.0, align="right", size=ink.SMALL),
        ink.text(sheet, "prices", prices, "x", _HEIGHT + 13, align="center", size=ink.SMALL),
        ink.text(sheet, "cheaper", [{"text": words("cheaper")}], 0.0, _HEIGHT + 31, size=ink.SMALL),
        ink.text(sheet, "price", [{"text": words("money.axis", currency=currency)}], sheet.width, _HEIGHT + 31,
                 align="right", size=ink.SMALL),
        ink.text(sheet, "what", [{"text": lines_of(top, 34, 1)[0]}], -sheet.left, -18.0, size=ink.SMALL),
        ink.text(sheet, "good", [{"text": t} for t in direction], sheet.width, -18.0, align="right", size=ink.SMALL),
        ink.rules(sheet, "intervals", spans, y2="y2", width=1.5),
        ink.rules(sheet, "price-ranges", ranges, x2="x2", width=1.5),
        ink.points(sheet, "marks", solid, shape="", size=90),
        ink.points(sheet, "marks-beaten", beaten, shape="", size=90, hollow=True, stroke=1.8),
        ink.text(sheet, "names-right", right, "x", size=ink.FIGURE, dx=9),
        ink.text(sheet, "names-left", left, "x", align="right", size=ink.FIGURE, dx=-9),
    ]  # fmt: skip
    return draw(sheet, layers, "money", alt)


def _names(sheet: Plate, shown: Sequence[Offer]) -> tuple[list[Row], list[Row]]:
    """Letter and name beside each mark: of the places round it, the one that covers least of what is drawn."""
    if sheet.y is None:
        return [], []
    up = sheet.y
    drawn = [box for o in shown for box in _boxes(sheet, up, o)]
    left: list[Row] = []
    right: list[Row] = []
    for o in sorted(shown, key=lambda one: (-one.value, one.low)):
        text = f"{o.mark.letter} {lines_of(o.contender.title, 16, 1)[0]}"
        x, y, wide = sheet.x.at(o.middle, sheet.width), _HEIGHT - up.at(o.value, _HEIGHT), px_of(text, ink.FIGURE) + 9
        places = [
            (
                Box(x + 8, y + dy - 6, x + wide, y + dy + 6) if after else Box(x - wide, y + dy - 6, x - 8, y + dy + 6),
                after,
                dy,
            )
            for dy in (0.0, -13.0, 13.0, -26.0, 26.0)
            for after in (True, False)
        ]
        field = Box(-4, 0, sheet.width + 12, _HEIGHT)
        box, after, dy = min(places, key=lambda p: sum(p[0].overlap(d) for d in drawn) + 3 * p[0].outside(field))
        drawn.append(box)
        height = up.low + (_HEIGHT - y - dy) / _HEIGHT * (up.high - up.low)
        (right if after else left).append({"x": o.middle, "y": height, "text": text, "of": o.index})
    return left, right


def _boxes(sheet: Plate, up: Axis, o: Offer) -> list[Box]:
    """What one offer draws, in px: its interval and its price range. (Its mark is where its name hangs.)"""
    x, y = sheet.x.at(o.middle, sheet.width), _HEIGHT - up.at(o.value, _HEIGHT)
    low, high = (_HEIGHT - up.at(v if known(v) else o.value, _HEIGHT) for v in (o.result.low, o.result.high))
    return [
        Box(x - 3, min(low, high, y - 5), x + 3, max(low, high, y + 5)),
        Box(sheet.x.at(o.low, sheet.width) - 3, y - 3, sheet.x.at(o.high, sheet.width) + 3, y + 3),
    ]


@dataclass(frozen=True)
class Box:
    """A rectangle in px."""

    left: float
    top: float
    right: float
    bottom: float

    def overlap(self, other: Box) -> float:
        """The area that both cover."""
        wide = min(self.right, other.right) - max(self.left, other.left)
        high = min(self.bottom, other.bottom) - max(self.top, other.top)
        return wide * high if wide > 0 and high > 0 else 0.0

    def outside(self, other: Box) -> float:
        """The area of this one that the other doesn't cover."""
        return (self.right - self.left) * (self.bottom - self.top) - self.overlap(other)


def key(shown: Sequence[Offer], out: Sequence[str] = ()) -> str:
    """How to read the marks, in one sentence."""
    return sentence([
        words("key.money"),
        words("key.money.range") if any(o.high > o.low for o in shown) else "",
        words("key.money.beaten") if any(o.beaten_by for o in shown) else "",
        *out,
    ])  # fmt: skip
