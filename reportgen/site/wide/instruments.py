"""The instruments: a list of all, and a page each: what it can tell, how well, and where it was used."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from reportgen.addresses import from_to, instrument_page
from reportgen.campaign.declared import Instrument
from reportgen.finding import Finding
from reportgen.metrology.stated import REACTION
from reportgen.pages.photos import PhotoShown, photo_shown
from reportgen.pages.told import Page
from reportgen.prose.accuracy import accuracy_in_short, accuracy_said
from reportgen.prose.amounts import typed
from reportgen.prose.specimens import day_of
from reportgen.prose.steps import reads_in
from reportgen.site.card import Card, CardTest
from reportgen.site.framing import Wide, frame_of
from reportgen.site.wide.calibrations import Known, PointShown, known_of, points_of
from reportgen.site.wide.newest import newest_first
from reportgen.site.wide.uses import Use, uses
from reportgen.site.words import words
from reportgen.theme import Frame, Link, render
from reportgen.wording.count import in_words
from reportgen.wording.number import plain
from reportgen.wording.sentence import capital
from reportgen.wording.unit import joined

_INDEX = "instruments/index.html"


@dataclass(frozen=True)
class Listed:
    """An instrument in the list."""

    link: Link
    resolution: str
    accuracy: str
    campaigns: tuple[Link, ...]


@dataclass(frozen=True)
class Described:
    """An instrument as some campaigns describe it; "" is what was not said and needs no saying."""

    title: str
    model: str
    serial: str
    resolution: str
    range: str
    accuracy: str
    accuracy_known: bool
    by_hand: str
    shared: str
    calibrated: str
    source: str
    notes: str
    origin: str
    uses: tuple[Use, ...]
    photo: PhotoShown | None
    known: tuple[Known, ...] = ()
    points: tuple[PointShown, ...] = ()


@dataclass(frozen=True)
class InstrumentsView:
    """What `wide/instruments.html` is told."""

    frame: Frame
    title: str
    instruments: tuple[Listed, ...]


@dataclass(frozen=True)
class InstrumentView:
    """What `wide/instrument.html` is told: one description, or more where campaigns differ, which `differ` says."""

    frame: Frame
    title: str
    described: tuple[Described, ...]
    differ: str


Used = list[tuple[Card, tuple[CardTest, ...]]]


def instrument_pages(wide: Wide) -> tuple[tuple[Page, ...], tuple[Finding, ...]]:
    """The list and every instrument's page; none at all where no campaign names an instrument."""
    found = _found(wide)
    if not found:
        return (), ()
    pages = [Page(_INDEX, render(wide.theme, "wide/instruments.html", _list(wide, found), _INDEX))]
    for id, variants in found.items():
        page = instrument_page(id)
        title = capital(variants[0][0].title)
        view = InstrumentView(
            frame=frame_of(wide, page, title, trail=[(words("instruments"), _INDEX)]),
            title=title,
            described=tuple(_described(page, instrument, used) for instrument, used in variants),
            differ=_differ(variants),
        )
        pages.append(Page(page, render(wide.theme, "wide/instrument.html", view, page)))
    return tuple(pages), ()


def _found(wide: Wide) -> dict[str, list[tuple[Instrument, Used]]]:
    """By id: every description of it, the newest campaign's first, with the campaigns that have it so."""
    found: dict[str, list[tuple[Instrument, Used]]] = {}
    for card in newest_first(wide.cards):
        for use in card.instruments:
            variants = found.setdefault(use.instrument.id, [])
            same = next((used for instrument, used in variants if _alike(instrument, use.instrument)), None)
            if same is None:
                same = []
                variants.append((use.instrument, same))
            same.append((card, use.tests))
    return dict(sorted(found.items(), key=lambda item: (item[1][0][0].title.casefold(), item[0])))


def _alike(one: Instrument, other: Instrument) -> bool:
    """Whether two campaigns say the same of it; each has made a picture of its own of the photograph."""
    return replace(one, photo=None) == replace(other, photo=None)


def _list(wide: Wide, found: dict[str, list[tuple[Instrument, Used]]]) -> InstrumentsView:
    listed = []
    for id, variants in found.items():
        newest = variants[0][0]
        cards = [card for _, used in variants for card, _ in used]
        listed.append(
            Listed(
                Link(capital(newest.title), from_to(_INDEX, instrument_page(id))),
                reads_in(newest) or words("not-noted"),
                accuracy_in_short(newest),
                tuple(Link(card.title, from_to(_INDEX, card.address)) for card in cards),
            )
        )
    title = words("instruments")
    return InstrumentsView(frame_of(wide, _INDEX, title), title, tuple(listed))


def _differ(variants: Sequence[tuple[Instrument, Sequence[object]]]) -> str:
    """That comparisons describe it differently, "" where they don't."""
    n = sum(len(used) for _, used in variants)
    return words("one-of", n=capital(in_words(n))) if len(variants) > 1 else ""


def _described(page: str, i: Instrument, used: Used) -> Described:
    day = day_of(i.calibrated)
    return Described(
        title=i.title,
        model=i.model,
        serial=i.serial,
        resolution=words("resolution", step=reads_in(i)) if reads_in(i) else words("resolution.unknown"),
        range=_range(i),
        accuracy=_accuracy(i),
        accuracy_known=i.accuracy.known,
        by_hand=words("by-hand", reaction=_reaction(i)) if i.by_hand else "",
        shared=words(f"shared.{i.shared}") if i.accuracy.known and i.accuracy.text else "",
        calibrated=words("calibrated.by", day=day, by=i.calibrated_by) if day and i.calibrated_by
        else words("calibrated", day=day) if day else words("not-calibrated"),
        source=i.source,
        notes=i.notes,
        origin=words("ready-made") if i.origin == "ready-made" else "",
        uses=uses(page, used),
        photo=photo_shown(used[0][0].id, page, i.photo) if i.photo else None,
        known=known_of(i),
        points=points_of(i),
    )  # fmt: skip


def _accuracy(i: Instrument) -> str:
    if not i.accuracy.known:
        return words("unknown-accuracy")
    return (
        words("accuracy", text=accuracy_said(i.accuracy.text)) if i.accuracy.text else words("accuracy.by-calibration")
    )


def _reaction(i: Instrument) -> str:
    return typed(i.reaction) if i.reaction else joined(plain(REACTION), "s")


def _range(i: Instrument) -> str:
    if i.low and i.high:
        return words("range", low=typed(i.low), high=typed(i.high))
    if i.high:
        return words("range.to", high=typed(i.high))
    return words("range.from", low=typed(i.low)) if i.low else ""
