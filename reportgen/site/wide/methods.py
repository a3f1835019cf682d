"""The methods: a list of all, and a page for every version with the campaigns that used it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reportgen.addresses import from_to, method_page
from reportgen.campaign.declared import EVERY, Method, ProseFile
from reportgen.finding import Finding
from reportgen.pages.told import Page
from reportgen.prose.amounts import typed
from reportgen.prose.markdown import render as render_prose
from reportgen.prose.text import Text
from reportgen.site.card import Card
from reportgen.site.framing import Wide, frame_of
from reportgen.site.wide.across import AcrossShown, across_of
from reportgen.site.wide.newest import newest_first
from reportgen.site.wide.resolving import resolving
from reportgen.site.wide.uses import Use, uses
from reportgen.site.words import words
from reportgen.theme import Frame, Link, render
from reportgen.wording.sentence import capital

_INDEX = "methods/index.html"


@dataclass(frozen=True)
class Listed:
    """A method in the list: its versions, newest first, and the campaigns that used any of them."""

    title: str
    versions: tuple[Link, ...]
    campaigns: tuple[Link, ...]


@dataclass(frozen=True)
class MethodsView:
    """What `wide/methods.html` is told."""

    frame: Frame
    title: str
    methods: tuple[Listed, ...]


@dataclass(frozen=True)
class MethodView:
    """What `wide/method.html` is told; lists may be empty, texts "" where nothing was said."""

    frame: Frame
    title: str
    version: str
    says: str
    steps: tuple[str, ...]
    cautions: tuple[str, ...]
    cannot_tell: tuple[str, ...]
    order: str
    scatter: str
    more: tuple[str, ...]
    changed: str
    versions: tuple[Link, ...]
    across: tuple[AcrossShown, ...]
    uses: tuple[Use, ...]


def method_pages(wide: Wide) -> tuple[tuple[Page, ...], tuple[Finding, ...]]:
    """The list and every version's page; none at all where no campaign names a method."""
    by_version = _by_version(wide)
    if not by_version:
        return (), ()
    pages = [Page(_INDEX, render(wide.theme, "wide/methods.html", _list(wide, by_version), _INDEX))]
    findings: list[Finding] = []
    for (id, version), (method, _) in by_version.items():
        page = method_page(id, version)
        text = _says(wide, method, page)
        findings += text.findings
        view = _view(wide, page, method, text, by_version)
        pages.append(Page(page, render(wide.theme, "wide/method.html", view, page)))
    return tuple(pages), tuple(findings)


ByVersion = dict[tuple[str, int], tuple[Method, list[Card]]]


def _by_version(wide: Wide) -> ByVersion:
    """Every version in use, by title and newest first, with its campaigns, newest first."""
    found: ByVersion = {}
    for card in newest_first(wide.cards):
        for use in card.methods:
            method = use.method
            found.setdefault((method.id, method.version), (method, []))[1].append(card)
    return dict(sorted(found.items(), key=lambda item: (item[0][0], -item[0][1])))


def _list(wide: Wide, by_version: ByVersion) -> MethodsView:
    listed = []
    for id in dict.fromkeys(id for id, _ in by_version):
        versions = [(v, found) for (i, v), found in by_version.items() if i == id]
        cards = {card.id: card for _, (_, cards) in versions for card in cards}
        listed.append(
            Listed(
                versions[0][1][0].title,
                tuple(Link(str(v), from_to(_INDEX, method_page(id, v))) for v, _ in versions),
                tuple(Link(card.title, from_to(_INDEX, card.address)) for card in cards.values()),
            )
        )
    title = words("methods")
    return MethodsView(frame_of(wide, _INDEX, title), title, tuple(sorted(listed, key=lambda m: m.title.casefold())))


def _view(wide: Wide, page: str, method: Method, text: Text, by_version: ByVersion) -> MethodView:
    cards = by_version[method.id, method.version][1]
    tests = {
        card.id: use.tests for card in cards for use in card.methods if use.method.id == method.id
        and use.method.version == method.version
    }  # fmt: skip
    versions = [v for i, v in by_version if i == method.id]
    title = words("method.version", title=method.title, n=str(method.version))
    return MethodView(
        frame=frame_of(wide, page, title, trail=[(words("methods"), _INDEX)]),
        title=method.title,
        version=str(method.version),
        says=text.markup,
        steps=method.steps,
        cautions=method.cautions,
        cannot_tell=method.cannot_tell,
        order=words(f"order.{method.order}"),
        scatter=words(f"scatter.{method.scatter}"),
        more=_more(method, cards),
        changed=method.changed,
        versions=tuple(
            Link(str(v), from_to(page, method_page(method.id, v)), v == method.version) for v in versions
        ) if len(versions) > 1 else (),
        across=across_of(wide, page, method, cards),
        uses=uses(page, ((card, tests[card.id]) for card in cards)),
    )  # fmt: skip


def _more(method: Method, cards: Sequence[Card]) -> tuple[str, ...]:
    """What else the method lays down, a sentence each."""
    lines = [words("chained")] if method.chained else []
    if method.between_sessions:
        lines.append(words("between-sessions", amount=typed(method.between_sessions)))
    if method.between_specimens:
        lines.append(words("between-specimens", amount=typed(method.between_specimens)))
    if EVERY in method.from_past:
        lines.append(words("past-campaigns"))
    for quantity in sorted(set(method.from_past) - {EVERY}):
        lines.append(words("past-campaigns.of-one", quantity=_titled(quantity, cards)))
    for quantity, known in sorted(method.repeatability.items()):
        key = "repeatability" if known.source else "repeatability.plain"
        name = _titled(quantity, cards)
        lines.append(words(key, quantity=name, sd=typed(known.sd), degrees=str(known.degrees), source=known.source))
    return tuple(lines)


def _titled(quantity: str, cards: Sequence[Card]) -> str:
    """A quantity as the newest of the campaigns that measured it calls it; by its id where none did."""
    titles = (of.title for card in cards for of in card.measured if of.id == quantity)
    return next(titles, capital(quantity.replace("-", " ")))


def _says(wide: Wide, method: Method, page: str) -> Text:
    file = ProseFile(method.id, method.origin, method.says)
    return render_prose(file, resolving(wide, page, file.path))
