"""What a reference in prose leads to and prints: one function a scheme, in one table."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from reportgen import addresses
from reportgen.addresses import as_id, from_to
from reportgen.campaign.declared import Campaign, Declared, Test
from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.campaign.moments import address_of, moment_in
from reportgen.campaign.seeing import unknown_photo
from reportgen.campaign.shape import NotThat
from reportgen.evaluation.evaluated import Evaluation
from reportgen.finding import Finding
from reportgen.pictures import sizes_of
from reportgen.prose.local import local
from reportgen.prose.percent import percent_between
from reportgen.prose.reference import SCHEMES, Answer, Reference, Resolve
from reportgen.prose.value_reference import (
    Printed,
    asks_for_percent,
    comparison_gap,
    first_words,
    gap_words,
    result_words,
)
from reportgen.wording.moment import spelled_out
from reportgen.wording.sentence import inside

CAMPAIGN_PAGES = ("index", "method", "report-items", "data", "changes")
SITE_PAGES: Mapping[str, str] = {"about": "about.html", "archive": "index.html"}


class UnknownReferenceError(Exception):
    """A reference names nothing; carries what is wrong and what to do about it."""

    def __init__(self, says: str, do: str = "") -> None:
        super().__init__(says)
        self.says, self.do = says, do


@dataclass(frozen=True)
class Known:
    """What references may name: the campaign, what was found about it, and the site's own pages by id."""

    campaign: Campaign
    evaluation: Evaluation
    site_pages: Mapping[str, str]


@dataclass(frozen=True)
class Target:
    """The address on the site that a reference leads to, and what it prints."""

    address: str
    printed: Printed
    figure: str = ""
    photo: str = ""


def resolver(
    declared: Declared, evaluation: Evaluation, from_page: str, site_pages: Mapping[str, str] = SITE_PAGES
) -> Resolve:
    """Answers the references of a text that stands on `from_page` of the site.

    `site_pages` are the pages outside the campaign that `page:` may name, id → address.
    """
    known = Known(declared.campaign, evaluation, site_pages)

    def resolve(reference: Reference) -> Answer:
        if not reference.scheme:
            return local(reference, from_page, declared.campaign.id)
        try:
            found = _BY_SCHEME[reference.scheme](known, reference)
        except UnknownReferenceError as unknown:
            return Answer("", reference.text, finding=_error(reference, unknown.says, unknown.do))
        elsewhere = "://" in found.address
        address = found.address if elsewhere else from_to(from_page, found.address)
        return Answer(address, found.printed.words, found.figure, found.photo, found.printed.finding)

    return resolve


def site_resolver(from_page: str, site_pages: Mapping[str, str]) -> Resolve:
    """Answers the references of a text that belongs to no campaign: `page:` alone has a meaning there."""

    def resolve(reference: Reference) -> Answer:
        if not reference.scheme:
            return local(reference, from_page, "")
        if reference.scheme == "page" and reference.target in site_pages:
            return Answer(from_to(from_page, site_pages[reference.target]), _words(reference, reference.target))
        says = f"“{reference.scheme}:{reference.target}” can't be answered on a page that belongs to no campaign."
        if reference.scheme == "page":
            says = f"No page is called “{reference.target}”."
        return Answer("", reference.text, finding=_error(reference, says, did_you_mean(reference.target, site_pages)))

    return resolve


def _value(known: Known, reference: Reference) -> Target:
    quantity, contender, part = _named(reference, ("quantity", "contender"))
    test = _test_of(known, quantity)
    quantity = as_id(quantity)
    contender = _contender(known, contender)
    results = [r for r in known.evaluation.results if (r.quantity, r.contender) == (quantity, contender)]
    parts = {r.part: r for r in results}
    asked = addresses.part_called(part, parts)
    result = results[0] if not part and len(results) == 1 else parts[asked] if asked is not None else None
    if result is None:
        raise UnknownReferenceError(
            f"“{reference.target}” has no such result.", did_you_mean(part, [r.part for r in results if r.part])
        )
    anchor = addresses.result_anchor(quantity, contender, result.part)
    return Target(f"{addresses.test_page(known.campaign.id, test.id)}#{anchor}", result_words(result, reference))


def _comparison(known: Known, reference: Reference) -> Target:
    quantity, one, other, part = _named(reference, ("quantity", "contender", "contender"))
    test = _test_of(known, quantity)
    quantity = as_id(quantity)
    pair = (quantity, _contender(known, one), _contender(known, other), _part(known, quantity, part))
    try:
        if asks_for_percent(reference, known.campaign.quantity(quantity).unit):
            printed, percent = percent_between(known.campaign, known.evaluation, pair)
            return Target(_section(known, test, quantity, pair[3]), gap_words(printed, percent.value, "%", reference))
        gap, difference, unit = comparison_gap(known.campaign, known.evaluation, pair)
    except LookupError as none:
        raise UnknownReferenceError(f"“{reference.target}” can't be answered: {none}.") from None
    return Target(_section(known, test, quantity, pair[3]), gap_words(gap, difference, unit, reference))


def _first(known: Known, reference: Reference) -> Target:
    quantity, part = _named(reference, ("quantity",))
    test = _test_of(known, quantity)
    quantity = as_id(quantity)
    part = _part(known, quantity, part)
    printed = first_words(known.campaign, known.evaluation, quantity, part, reference)
    return Target(_section(known, test, quantity, part), printed)


def _figure(known: Known, reference: Reference) -> Target:
    quantity, part = _named(reference, ("quantity",))
    test = _test_of(known, quantity)
    quantity = as_id(quantity)
    part = _part(known, quantity, part)
    asked = addresses.quantity_anchor(quantity, part)
    printed = Printed(_words(reference, known.campaign.quantity(quantity).title))
    address = f"{addresses.test_page(known.campaign.id, test.id)}#{addresses.figure_anchor(quantity, part)}"
    return Target(address, printed, asked if reference.picture else "")


def _test(known: Known, reference: Reference) -> Target:
    found = {t.id: t for t in known.campaign.tests}
    test = found.get(as_id(reference.target))
    if test is None:
        raise _unknown("test", reference.target, found)
    return Target(addresses.test_page(known.campaign.id, test.id), Printed(_words(reference, inside(test.title))))


def _contender_page(known: Known, reference: Reference) -> Target:
    contender = _contender(known, reference.target)
    address = addresses.contender_page(known.campaign.id, contender)
    return Target(address, Printed(_words(reference, known.campaign.contender(contender).title)))


def _claim(known: Known, reference: Reference) -> Target:
    contender, claim, _ = _named(reference, ("contender", "claim"))
    contender = _contender(known, contender)
    claims = {name: c for c in known.campaign.contender(contender).claims for name in (c.id, c.name) if name}
    if as_id(claim) not in claims:
        raise _unknown("claim", claim, claims)
    found = claims[as_id(claim)]
    sheet = addresses.contender_page(known.campaign.id, contender)
    address = f"{sheet}#{addresses.claim_anchor(found.name or found.id)}"
    return Target(address, Printed(_words(reference, next(iter(found.says.values()), claim))))


def _method(known: Known, reference: Reference) -> Target:
    id_, _, version = reference.target.partition(".")
    id_ = as_id(id_)
    used = {m.version: m for m in known.campaign.methods.values() if m.id == id_}
    method = used.get(int(version)) if version.isdecimal() else used[max(used)] if used and not version else None
    if method is None:
        raise _unknown("method", reference.target, {m.id: m for m in known.campaign.methods.values()})
    return Target(addresses.method_page(id_, method.version), Printed(_words(reference, inside(method.title))))


def _instrument(known: Known, reference: Reference) -> Target:
    instrument = known.campaign.instruments.get(as_id(reference.target))
    if instrument is None:
        raise _unknown("instrument", reference.target, known.campaign.instruments)
    return Target(addresses.instrument_page(instrument.id), Printed(_words(reference, inside(instrument.title))))


def _page(known: Known, reference: Reference) -> Target:
    page, hash_, anchor = reference.target.partition("#")
    own = {p: addresses.campaign_page(known.campaign.id, p) for p in CAMPAIGN_PAGES}
    address = {**known.site_pages, **own}.get(page)
    if address is None:
        raise _unknown("page", page, {**known.site_pages, **own})
    return Target(address + hash_ + anchor, Printed(_words(reference, page)))


def _photo(known: Known, reference: Reference) -> Target:
    photos = {p.id: p for p in known.campaign.photos}
    photo = photos.get(as_id(reference.target))
    if photo is None:
        raise UnknownReferenceError(*unknown_photo(reference.target, photos))
    largest = sizes_of(photo.width, photo.height)[-1]
    address = addresses.photo_file(known.campaign.id, photo.id, f"{largest.width}.{'png' if photo.exact else 'jpg'}")
    return Target(address, Printed(_words(reference, photo.shows)), photo=photo.id if reference.picture else "")


def _film(known: Known, reference: Reference) -> Target:
    if reference.picture:
        says = "A moment in a film is no picture."
        raise UnknownReferenceError(says, "Leave the `!` out, or show a still of it: ![…](photo:id).")
    films = {f.id: f for f in known.campaign.films}
    try:
        moment = moment_in(films, reference.target.replace("/", " "))
    except NotThat as wrong:
        raise UnknownReferenceError(f"{wrong.says}.", wrong.do) from None
    words = _words(reference, spelled_out(moment.seconds))
    return Target(address_of(films[moment.film], moment), Printed(words))


_BY_SCHEME: Mapping[str, Callable[[Known, Reference], Target]] = {
    "value": _value,
    "figure": _figure,
    "method": _method,
    "test": _test,
    "contender": _contender_page,
    "claim": _claim,
    "instrument": _instrument,
    "page": _page,
    "comparison": _comparison,
    "first": _first,
    "photo": _photo,
    "film": _film,
}
assert set(_BY_SCHEME) == set(SCHEMES)


def _named(reference: Reference, kinds: tuple[str, ...]) -> tuple[str, ...]:
    """The names a reference is made of, and a part or "" behind them."""
    names = reference.target.split("/")
    if not len(kinds) <= len(names) <= len(kinds) + 1 or not all(names):
        shape = "/".join(kinds)
        raise UnknownReferenceError(
            f"“{reference.scheme}:{reference.target}” isn't whole.", f"Write {reference.scheme}:{shape}."
        )
    return (*names, *[""] * (len(kinds) + 1 - len(names)))


def _test_of(known: Known, quantity: str) -> Test:
    quantities = {q.id: t for t in known.campaign.tests for q in t.quantities}
    test = quantities.get(as_id(quantity))
    if test is None:
        raise _unknown("quantity", quantity, quantities)
    return test


def _contender(known: Known, contender: str) -> str:
    found = {c.id: c for c in known.campaign.contenders}
    if as_id(contender) not in found:
        raise _unknown("contender", contender, found)
    return as_id(contender)


def _part(known: Known, quantity: str, part: str) -> str:
    parts = [r.part for r in known.evaluation.results if r.quantity == quantity]
    asked = addresses.part_called(part, parts)
    if asked is None:
        raise _unknown("part", part, {p: p for p in parts if p})
    return asked


def _section(known: Known, test: Test, quantity: str, part: str) -> str:
    page = addresses.test_page(known.campaign.id, test.id)
    return f"{page}#{addresses.quantity_anchor(quantity, part)}"


def _unknown(kind: str, name: str, known: Mapping[str, object]) -> UnknownReferenceError:
    says = f"No {kind} is called “{name}”." if name else f"The {kind} isn't named."
    return UnknownReferenceError(says, did_you_mean(name, known))


def _words(reference: Reference, title: str) -> str:
    return title if reference.asks else reference.text


def _error(reference: Reference, says: str, do: str) -> Finding:
    return Finding(
        "error",
        "unknown-reference",
        reference.place,
        says,
        "A reference that leads nowhere would leave a dead link or a number that nobody can check.",
        do,
    )
