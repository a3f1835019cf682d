"""All results by one version of a method, across campaigns: a table and a chart a quantity, and what keeps them apart.

Nobody is ranked across campaigns: days, instruments and what was held the same differ, and no declared figure covers
all of it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import sqrt
from statistics import NormalDist

from reportgen.addresses import across_anchor, from_to
from reportgen.campaign.declared import Amount, Method
from reportgen.charts.across import Across, AcrossGroup, AcrossLine
from reportgen.charts.figure import Figure
from reportgen.metrology.errors import UnitError
from reportgen.metrology.unit import alike, convert, parse_unit
from reportgen.prose.amounts import size, typed
from reportgen.prose.specimens import day_of
from reportgen.site.card import Card
from reportgen.site.card_results import CardResult
from reportgen.site.framing import Wide
from reportgen.site.words import words
from reportgen.theme import Link
from reportgen.wording.decision import direction
from reportgen.wording.listing import and_list
from reportgen.wording.percent import apart
from reportgen.wording.sentence import sentence


@dataclass(frozen=True)
class AcrossRow:
    """One contender's result; the links lead to its sheet and to the working.

    `caution`: why it isn't ranked; `here`: it is the product that the page is about.
    """

    contender: Link
    result: Link
    range: str
    caution: str
    here: bool = False


@dataclass(frozen=True)
class AcrossCampaign:
    """The results of one campaign, in the order of its places; `read_with` names the instruments of the test."""

    campaign: Link
    tested: str
    read_with: str
    rows: tuple[AcrossRow, ...]


@dataclass(frozen=True)
class AcrossShown:
    """One quantity. `way` says which direction is better, "" for neither; `notes` what keeps campaigns apart."""

    anchor: str
    title: str
    way: str
    campaigns: tuple[AcrossCampaign, ...]
    figure: Figure | None
    notes: tuple[str, ...]


Found = Sequence[tuple[Card, Sequence[CardResult]]]


def across_of(wide: Wide, page: str, method: Method, cards: Sequence[Card]) -> tuple[AcrossShown, ...]:
    """What `page` shows of a version; quantities that several campaigns measured come first, else as they come."""
    ordered = sorted(by_quantity(method, cards).values(), key=lambda of: len(of) < 2)
    return tuple(replace(_shown(page, method, of), figure=_figure(wide, of) if len(of) > 1 else None) for of in ordered)


def by_quantity(method: Method, cards: Sequence[Card]) -> Mapping[tuple[str, str], Found]:
    """Quantity and part → what each campaign measured of it by this version."""
    found: dict[tuple[str, str], list[tuple[Card, list[CardResult]]]] = {}
    for card in cards:
        of_card: dict[tuple[str, str], list[CardResult]] = {}
        for r in card.results:
            if (r.method, r.version) == (method.id, method.version):
                of_card.setdefault((r.quantity, r.part), []).append(r)
        for key, results in of_card.items():
            found.setdefault(key, []).append((card, results))
    return found


def without_picture(page: str, method: Method, of: Found, product: str) -> AcrossShown:
    """The same as a table alone, for the page of a product."""
    return replace(_shown(page, method, of, product), anchor=f"{method.id}-{method.version}-{anchor_of(of)}")


def anchor_of(of: Found) -> str:
    """Where it stands on the page of its method."""
    one = of[0][1][0]
    return across_anchor(one.quantity, one.part)


def _shown(page: str, method: Method, of: Found, product: str = "") -> AcrossShown:
    one = of[0][1][0]
    return AcrossShown(
        anchor=anchor_of(of),
        title=one.title,
        way=direction(one.better) if one.better != "neither" else "",
        campaigns=tuple(_campaign(page, card, results, product) for card, results in of),
        figure=None,
        notes=_notes(method, of) if len(of) > 1 else (),
    )


def _campaign(page: str, card: Card, results: Sequence[CardResult], product: str) -> AcrossCampaign:
    return AcrossCampaign(
        campaign=Link(card.title, from_to(page, card.address)),
        tested=_day(card),
        read_with=and_list([title for _, title in _instruments(card, results)]),
        rows=tuple(
            AcrossRow(
                Link(r.contender.title, from_to(page, r.contender.sheet)),
                Link(r.whole, from_to(page, r.working)),
                r.range,
                r.caution,
                bool(product) and r.contender.product == product,
            )
            for r in results
        ),
    )


def _day(card: Card) -> str:
    return day_of(card.tested) or words("across.no-day")


def _instruments(card: Card, results: Sequence[CardResult]) -> tuple[tuple[str, str], ...]:
    """Id and title of each instrument that a campaign names for these results."""
    tests = {r.test for r in results}
    used = (use.instrument for use in card.instruments if tests & {t.id for t in use.tests})
    return tuple((instrument.id, instrument.title) for instrument in used)


def _figure(wide: Wide, of: Found) -> Figure | None:
    """The chart, in the newest campaign's unit; None where units don't agree, or fewer than two have a number."""
    unit = next((r.unit for _, results in of for r in results if r.value is not None), None)
    if unit is None or any(r.kind != "measured" for _, results in of for r in results):
        return None
    groups = []
    for card, results in of:
        lines = [line for r in results if r.value is not None and (line := _line(r, unit)) is not None]
        groups += (
            [AcrossGroup(words("across.group", campaign=card.title, day=_day(card)), tuple(lines))] if lines else []
        )
    first = of[0][1][0]
    return wide.draw(Across(anchor_of(of), first.title, unit, first.better, tuple(groups))) if len(groups) > 1 else None


def _line(r: CardResult, unit: str) -> AcrossLine | None:
    line = AcrossLine(
        r.contender.title, r.value, r.low, r.high, r.limit, r.of_scatter, "" if r.limit else r.bare, r.whole
    )
    if r.unit == unit:
        return line
    try:
        here, there = parse_unit(r.unit), parse_unit(unit)
    except UnitError:
        return None
    if not alike(here, there, r.step):
        return None
    value, low, high = (None if v is None else convert(v, here, there, r.step) for v in (r.value, r.low, r.high))
    return replace(line, value=value, low=low, high=high, bare=line.whole)  # its own digits, with its own unit


def _notes(method: Method, of: Found) -> tuple[str, ...]:
    """What differs between the campaigns besides the contenders, and what is known of how much that does."""
    cards = [card for card, _ in of]
    days = {card.tested for card in cards}
    one_day = len(days) == 1 and None not in days and all(d and d.first == d.last != "" for d in days)
    return (
        _of_days(method.between_sessions, one_day, of),
        *_of_instruments(of),
        *([words("across.method.differs")] if _told_differently(method, cards) else []),
        words("across.not-ranked"),
    )


def _of_instruments(of: Found) -> tuple[str, ...]:
    """Whether all were read with the same instruments; nothing where no campaign names any."""
    with_what = {_instruments(card, results) for card, results in of}
    if not any(with_what):
        return ()
    return (words("across.instruments.differ" if len(with_what) > 1 else "across.instruments.same"),)


def _of_days(between: Amount | None, one_day: bool, of: Found) -> str:
    if one_day:
        return words("across.days.one")
    if between is None:
        return words("across.days.unknown")
    most = size(most_by_days(float(between.value)), apart(between.unit))
    key = (
        "across.days.known" if any(r.of_scatter for _, results in of for r in results) else "across.days.known.outside"
    )
    return sentence(words(key, sd=typed(between), most=most))


def most_by_days(sd: float) -> float:
    """How far two results may lie apart, 95 times in 100, by days alone that scatter with `sd`.

    The critical difference of ISO 5725-6:1994, 4.1.4: 1.96 √2 standard deviations, rounded there to 2.8.
    """
    return NormalDist().inv_cdf(0.975) * sqrt(2.0) * sd


def _told_differently(method: Method, cards: Sequence[Card]) -> bool:
    """Whether some campaign's own file says something else of this version than the newest's."""
    of = [replace(use.method, origin="") for card in cards for use in card.methods
          if (use.method.id, use.method.version) == (method.id, method.version)]  # fmt: skip
    return any(one != of[0] for one in of)
