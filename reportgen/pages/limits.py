"""Caveats as pages show them: once in full beside what they limit, elsewhere as a small raised number."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from reportgen.addresses import caveat_anchor
from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Caveat
from reportgen.evaluation.says import says_of
from reportgen.pages.photos import FilmShown, PhotoShown, film_shown, photos_shown
from reportgen.pages.words import words
from reportgen.prose.specimens import specimen_name
from reportgen.wording.count import counted, tells
from reportgen.wording.day import at_time
from reportgen.wording.listing import commas
from reportgen.wording.reason import decided, pushes
from reportgen.wording.sentence import inside, paragraph


@dataclass(frozen=True)
class CaveatShown:
    """`anchor` is its address on this page; `title` says what sort of limit; `about` whom it concerns, with the
    specimen, pass and part where it is about one: "Hollin K8, pass 3"; "" for all."""

    number: str
    anchor: str
    title: str
    about: str
    says: str
    photos: tuple[PhotoShown, ...] = ()
    film: FilmShown | None = None


@dataclass(frozen=True)
class CaveatMark:
    """The raised number, leading to where the caveat stands in full; `sort` tells who only hears it what it leads to,
    and `says` what the caveat says."""

    number: str
    href: str
    sort: str
    says: str


def shown(campaign: Campaign, caveat: Caveat, page: str) -> CaveatShown:
    """The caveat in full: what it says, which way it pushes, and for an exclusion when that was decided.

    `page` is where it stands: ways to its photographs begin there.
    """
    says, when = says_of(caveat), decided(caveat.decided) if caveat.decided else at_time(caveat.when)
    often = counted("time", caveat.times) if caveat.times > 1 and not tells(says, caveat.times) else ""
    if caveat.event and when and ":" not in says:  # the event alone
        says, when = words("when.event", says=says, when=when), ""
    return CaveatShown(
        str(caveat.number),
        caveat_anchor(caveat.name),
        words(f"sort.{caveat.sort}"),
        about_whom(campaign, caveat),
        paragraph(says, often, when, pushes(caveat.pushes)),
        photos_shown(campaign, page, caveat.photos),
        film_shown(campaign, page, caveat.film, caveat.photos),
    )


def about_whom(campaign: Campaign, caveat: Caveat) -> str:
    """Contender, specimen, pass and part, as far as the caveat is about one of each."""
    who = campaign.contender(caveat.contender) if caveat.contender else None
    specimen = specimen_name(who, caveat.specimen) if who and caveat.specimen else ""
    pass_ = inside(words("pass", n=caveat.pass_)) if caveat.pass_ else ""
    return commas([s for s in (who.title if who else "", inside(specimen), pass_, caveat.part) if s])


def marks(caveats: Iterable[Caveat], page: str = "") -> tuple[CaveatMark, ...]:
    """Raised numbers for caveats; `page` is the relative way to where they stand, "" for the same page."""
    return tuple(
        CaveatMark(str(c.number), f"{page}#{caveat_anchor(c.name)}", words(f"sort.{c.sort}"), says_of(c))
        for c in caveats
    )
