"""Photographs and moments of films as pages show them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from reportgen.addresses import from_to, photo_file
from reportgen.campaign.declared import Campaign, Moment, Photo
from reportgen.campaign.moments import address_of
from reportgen.pages.words import words
from reportgen.pictures import Size, sizes_of
from reportgen.prose.specimens import day_of
from reportgen.wording.moment import spelled_out

_IN_TEXT = 960  # pixels across: what a page takes that can't choose


@dataclass(frozen=True)
class PhotoShown:
    """A photograph as `parts/photo.html` takes it.

    `small` and `plain` list its sizes (the smaller format, and what every browser shows), `src` is one of them for who
    can't choose, `href` the largest. Width and height keep its place on the page free. `tall`: it stands upright.
    """

    small: str
    plain: str
    src: str
    href: str
    width: str
    height: str
    tall: bool
    alt: str
    caption: str
    credit: str


@dataclass(frozen=True)
class FilmShown:
    """A moment in a film: the words of its link, where it opens, and a still of it where there is one."""

    text: str
    href: str
    still: PhotoShown | None


def photos_shown(campaign: Campaign, page: str, ids: Iterable[str]) -> tuple[PhotoShown, ...]:
    """The campaign's photographs of these ids, as `page` shows them."""
    return tuple(photo_shown(campaign.id, page, campaign.photo(id)) for id in ids)


def photo_shown(campaign: str, page: str, photo: Photo, alt: str = "") -> PhotoShown:
    """One photograph on `page`; `alt` stands for the author's words about it where a text has its own."""
    sizes = sizes_of(photo.width, photo.height)
    ending = "png" if photo.exact else "jpg"
    middle = next((s for s in sizes if s.width >= _IN_TEXT), sizes[-1])
    taken = day_of(photo.taken)

    def way(size: Size, kind: str) -> str:
        return from_to(page, photo_file(campaign, photo.id, f"{size.width}.{kind}"))

    return PhotoShown(
        small=", ".join(f"{way(s, 'webp')} {s.width}w" for s in sizes),
        plain=", ".join(f"{way(s, ending)} {s.width}w" for s in sizes),
        src=way(middle, ending),
        href=way(sizes[-1], ending),
        width=str(sizes[-1].width),
        height=str(sizes[-1].height),
        tall=photo.height > photo.width,
        alt=alt or photo.shows,
        caption=photo.caption,
        credit=words("photo.credit.both", by=photo.by, taken=taken) if photo.by and taken
        else words("photo.credit.by", by=photo.by) if photo.by
        else words("photo.credit.taken", taken=taken) if taken else "",
    )  # fmt: skip


def film_shown(campaign: Campaign, page: str, moment: Moment | None, beside: Iterable[str] = ()) -> FilmShown | None:
    """The way to a moment in a film, None where there is none; which film is said where there are several.

    Its still isn't shown again where it is among the photographs `beside`, which are ids.
    """
    if moment is None:
        return None
    film, at = campaign.film(moment.film), spelled_out(moment.seconds)
    text = words("film.at.of", film=film.title, at=at) if len(campaign.films) > 1 else words("film.at", at=at)
    still = film.stills.get(moment.seconds, "")
    shown = photos_shown(campaign, page, [still] if still and still not in beside else [])
    return FilmShown(text, address_of(film, moment), shown[0] if shown else None)
