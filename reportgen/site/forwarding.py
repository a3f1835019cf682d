"""Pages at addresses that things had before: each says where it went, and leads there.

Works from disk and without scripts; where one runs, the place on the page is kept as well.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import combinations, product

from reportgen.addresses import (
    contender_page,
    from_to,
    instrument_page,
    method_page,
    on_the_web,
    side_by_side_page,
    test_page,
)
from reportgen.pages.told import Page
from reportgen.site.card import Card
from reportgen.site.framing import Wide, frame_of
from reportgen.site.words import words
from reportgen.theme import Frame, Link, render


@dataclass(frozen=True)
class Moved:
    """An address that a page had before, where it stands now, and what it is the page of. `path` is what the campaign
    `campaign` says so under, by `Declared.at`."""

    old: str
    new: str
    title: str
    campaign: str
    path: str


@dataclass(frozen=True)
class MovedView:
    """What `wide/moved.html` is told."""

    frame: Frame
    title: str
    to: Link


def moved(cards: Iterable[Card], addresses: Iterable[str]) -> tuple[Moved, ...]:
    """Every address that one of these pages had before, in the order of the alphabet; the same twice is there once."""
    found: dict[str, Moved] = {}
    there = sorted(address for address in addresses if address.endswith(".html"))
    for card in cards:
        for one in (*_of_campaign(card, there), *_shared(card)):
            found.setdefault(one.old, one)
    return tuple(sorted(found.values(), key=lambda m: m.old))


def forwarding_pages(wide: Wide, found: Iterable[Moved]) -> tuple[Page, ...]:
    """A page for each of these."""
    return tuple(_page(wide, one) for one in found)


def in_use(found: Iterable[Moved], addresses: Iterable[str]) -> Iterator[Moved]:
    """Those whose old address is another page's now."""
    there = {address.casefold() for address in addresses}
    return (one for one in found if one.old.casefold() in there)


def clashes(cards: Sequence[Card]) -> Iterator[tuple[Card, str, str, str]]:
    """Former names of what campaigns share that lead nowhere alone: card, path, name, and what stands in the way
    ("" for another thing of that name, else whose former name it is as well)."""
    now = {m.address for card in cards for m in _names(card)}
    had: dict[str, tuple[str, str]] = {}
    for card in cards:
        for name in _names(card):
            for old, address in name.before:
                first = had.setdefault(address, (name.address, name.title))
                if address in now:
                    yield card, name.path.replace("{old}", old), old, ""
                elif first[0] != name.address:
                    yield card, name.path.replace("{old}", old), old, first[1]


@dataclass(frozen=True)
class _Named:
    """A thing that more than one campaign can name: its address, its title, and each id it had with that address."""

    address: str
    title: str
    path: str  # with {old} for the id it had
    before: tuple[tuple[str, str], ...]


def _names(card: Card) -> Iterator[_Named]:
    before = tuple((old, f"{old}/") for old in card.formerly)
    yield _Named(f"{card.id}/", card.title, f"former/campaign/{card.id}/{{old}}", before)
    for use in card.methods:
        m = use.method
        before = tuple((old, method_page(old, m.version)) for old in m.formerly)
        yield _Named(method_page(m.id, m.version), m.title, f"method/{m.id}.{m.version}/formerly", before)
    for used in card.instruments:
        i = used.instrument
        before = tuple((old, instrument_page(old)) for old in i.formerly)
        yield _Named(instrument_page(i.id), i.title, f"instrument/{i.id}/formerly", before)


def _shared(card: Card) -> Iterator[Moved]:
    for name in _names(card):
        if name.address.endswith(".html"):
            for old, address in name.before:
                yield Moved(address, name.address, name.title, card.id, name.path.replace("{old}", old))


def _of_campaign(card: Card, addresses: Sequence[str]) -> Iterator[Moved]:
    """Pages of the campaign by every name that it, or what they are of, had."""
    others = _other_names(card)
    here = f"{card.id}/"
    for address in addresses:
        if not address.startswith(here):
            continue
        title, known = others.get(address, (card.title, ((address, ""),)))
        for (said, path), campaign in product(known, (card.id, *card.formerly)):
            old = f"{campaign}/{said.removeprefix(here)}"
            if old != address:
                told = path or f"former/campaign/{card.id}/{campaign}"
                yield Moved(old, address, title, card.id, told)


def _other_names(card: Card) -> dict[str, tuple[str, tuple[tuple[str, str], ...]]]:
    """By the address of a page: what it is of, and each address it has or had inside the campaign, with the path under
    which that is said ("" for the one it has)."""
    found = {}
    for t in card.tests:
        had = ((test_page(card.id, old), f"former/test/{t.id}/{old}") for old in t.formerly)
        found[t.address] = (t.title, ((t.address, ""), *had))
    for p in card.products:
        had = ((contender_page(card.id, old), f"former/contender/{p.id}/{old}") for old in p.formerly)
        found[p.sheet] = (p.title, ((p.sheet, ""), *had))
    for one, two in combinations(card.products, 2):
        now = side_by_side_page(card.id, one.id, two.id)
        known = {now: ""}
        for first, second in product((one.id, *one.formerly), (two.id, *two.formerly)):
            whose = f"{one.id}/{first}" if first != one.id else f"{two.id}/{second}"
            known.setdefault(side_by_side_page(card.id, first, second), f"former/contender/{whose}")
        title = words("moved.pair", first=one.title, second=two.title)
        found[now] = (title, tuple(known.items()))
    return found


def _page(wide: Wide, one: Moved) -> Page:
    title = words("moved.title")
    frame = replace(
        frame_of(wide, one.old, title), canonical=on_the_web(wide.publication.address, one.new), shared=None
    )
    view = MovedView(frame, title, Link(one.title, from_to(one.old, one.new)))
    return Page(one.old, render(wide.theme, "wide/moved.html", view, one.old))
