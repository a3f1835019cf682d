"""The products: a list by maker, and a page each with what any campaign measured of it, beside what was measured so."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reportgen.addresses import PRODUCTS, from_to, method_page, product_id, product_page
from reportgen.campaign.declared import Method
from reportgen.finding import Finding
from reportgen.pages.told import Page
from reportgen.prose.specimens import day_of
from reportgen.site.card import Card
from reportgen.site.card_things import CardProduct
from reportgen.site.framing import Wide, frame_of
from reportgen.site.wide.across import AcrossShown, Found, anchor_of, by_quantity, without_picture
from reportgen.site.wide.facets import key_of
from reportgen.site.wide.newest import newest_first
from reportgen.site.words import words
from reportgen.theme import Frame, Link, render
from reportgen.wording.listing import commas
from reportgen.wording.money import amount_noted


@dataclass(frozen=True)
class Took:
    """A campaign that a product took part in: the way to its sheet there, when it was, and what it cost then."""

    sheet: Link
    date: str
    prices: str


@dataclass(frozen=True)
class MeasuredSo:
    """A quantity by one version of a method, with the way to all that was measured so; `all` has the chart."""

    method: Link
    shown: AcrossShown


@dataclass(frozen=True)
class ProductView:
    """What `wide/product.html` is told. `none` says that nothing of it was measured as in another campaign, else ""."""

    frame: Frame
    title: str
    maker: str
    took: tuple[Took, ...]
    measured: tuple[MeasuredSo, ...]
    none: str


@dataclass(frozen=True)
class OfMaker:
    """A maker by its name, or that none is noted; each product with the titles of the campaigns it took part in."""

    maker: str
    products: tuple[tuple[Link, str], ...]


@dataclass(frozen=True)
class ProductsView:
    """What `wide/products.html` is told."""

    frame: Frame
    title: str
    says: str
    makers: tuple[OfMaker, ...]


Has = list[tuple[Card, CardProduct]]


def product_pages(wide: Wide) -> tuple[tuple[Page, ...], tuple[Finding, ...]]:
    """The list and every product's page; none at all where there are no campaigns."""
    found = _found(wide)
    if not found:
        return (), ()
    measured = _measured(newest_first(wide.cards))
    pages = [Page(PRODUCTS, render(wide.theme, "wide/products.html", _list(wide, found), PRODUCTS))]
    for id, has in found.items():
        page = product_page(id)
        pages.append(Page(page, render(wide.theme, "wide/product.html", _view(wide, page, id, has, measured), page)))
    return tuple(pages), ()


def _found(wide: Wide) -> dict[str, Has]:
    """Each product with the campaigns it took part in, the newest first; in the order of makers and titles."""
    found: dict[str, Has] = {}
    for card in newest_first(wide.cards):
        for p in card.products:
            found.setdefault(product_id(p.maker, p.title, p.id), []).append((card, p))

    def place(id: str) -> tuple[bool, str, str, str]:
        newest = found[id][0][1]
        return not newest.maker, newest.maker.casefold(), newest.title.casefold(), id

    return {id: found[id] for id in sorted(found, key=place)}


Measured = list[tuple[Method, Found]]


def _measured(cards: Sequence[Card]) -> Measured:
    """Every quantity by every version of a method, with what each campaign measured of it."""
    methods = {(u.method.id, u.method.version): u.method for card in reversed(cards) for u in card.methods}
    return [(method, of) for _, method in sorted(methods.items()) for of in by_quantity(method, cards).values()]


def _view(wide: Wide, page: str, id: str, has: Has, measured: Measured) -> ProductView:
    newest = has[0][1]
    so = tuple(
        MeasuredSo(_way(page, method, of), without_picture(page, method, of, id))
        for method, of in measured
        if len(of) > 1 and any(r.contender.product == id for _, results in of for r in results)
    )
    return ProductView(
        frame=frame_of(
            wide, page, newest.title, words("product.description", name=newest.title), [(words("products"), PRODUCTS)]
        ),
        title=newest.title,
        maker=newest.maker,
        took=tuple(
            Took(
                Link(card.title, from_to(page, p.sheet)),
                day_of(card.date) or words("no-date"),
                commas([amount_noted(q.low, q.high, q.currency) for q in p.prices]),
            )
            for card, p in has
        ),
        measured=so,
        none="" if so else words("product.none"),
    )


def _way(page: str, method: Method, of: Found) -> Link:
    there = f"{method_page(method.id, method.version)}#{anchor_of(of)}"
    title = words("method.version", title=method.title, n=str(method.version))
    return Link(title, from_to(page, there))


def _list(wide: Wide, found: dict[str, Has]) -> ProductsView:
    makers: dict[str, tuple[str, list[tuple[Link, str]]]] = {}
    for id, has in found.items():
        newest = has[0][1]
        cards = commas([card.title for card, _ in has])
        of = makers.setdefault(key_of(newest.maker), (newest.maker, []))[1]
        of.append((Link(newest.title, from_to(PRODUCTS, product_page(id))), cards))
    title = words("products")
    return ProductsView(
        frame=frame_of(wide, PRODUCTS, title, words("products.says")),
        title=title,
        says=words("products.says"),
        makers=tuple(OfMaker(maker or words("products.no-maker"), tuple(of)) for maker, of in makers.values()),
    )
