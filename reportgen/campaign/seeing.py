"""What tests, contenders and remarks may show: the campaign's photographs and moments in its films."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from reportgen.addresses import as_id
from reportgen.campaign.declared import Film, Moment, Photo
from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.look_up import error
from reportgen.campaign.moments import length, moment_in
from reportgen.campaign.shape import NotThat
from reportgen.campaign.written.pictures import WrittenFilm, WrittenPictured
from reportgen.finding import Finding


@dataclass(frozen=True)
class Seeing:
    """Photographs and films by id."""

    photos: Mapping[str, Photo] = field(default_factory=dict)
    films: Mapping[str, Film] = field(default_factory=dict)


@dataclass(frozen=True)
class Shown:
    """What one thing shows."""

    photos: tuple[str, ...]
    film: Moment | None


def shown_by(written: WrittenPictured, seeing: Seeing, told: list[Finding]) -> Shown:
    """Ids and moment that a record names; what there isn't is told."""
    photos = [id for given in (*written.photo, *written.photos) if (id := _photo(given, seeing, told))]
    film = None
    if written.film is not None:
        try:
            film = moment_in(seeing.films, written.film.text)
        except NotThat as wrong:
            error(told, "no-such-moment", written.film.at, wrong.says, "The link would open the wrong place.", wrong.do)
    return Shown(tuple(dict.fromkeys(photos)), film)


def unknown_photo(name: str, photos: Mapping[str, Photo]) -> tuple[str, str]:
    """What is wrong with a photograph nobody declared, and what to do."""
    do = did_you_mean(as_id(name), photos)
    add = f"add it to campaign.yaml: `photos:` and below it `{as_id(name) or 'name'}: what it shows`."
    return f"there is no photograph “{name}”", f"{do} Or {add}" if do else add.capitalize()


def film_of(entry: Entry[WrittenFilm], photos: Mapping[str, Photo], told: list[Finding]) -> Film:
    """A film of the campaign's, with the stills of its moments."""
    w, id = entry.value, as_id(entry.name.value)
    if not id:
        error(told, "name-without-letters", entry.name.at, f"“{entry.name.value}” gives no id",
              do="Choose a plain name and put this one in `title:`.")  # fmt: skip
    if w.moment and "{seconds}" not in w.moment.value:
        error(told, "moment-without-seconds", w.moment.at, "this address doesn't say where the seconds go",
              "Every moment would open at the film's beginning.",
              "Write {seconds} in their place, or take `moment:` out: then #t= and the seconds are used.")  # fmt: skip
    film = Film(
        id,
        w.title.value if w.title else entry.name.value,
        w.address.value,
        w.moment.value if w.moment else "",
        w.length.value if w.length else None,
    )
    stills = {}
    for still in w.stills:
        try:
            moment_in({id: film}, f"{id} {still.name.value}") if id else None
            seconds = length(still.name.value)
        except NotThat as wrong:
            error(told, "no-such-moment", still.name.at, wrong.says, do=wrong.do)
            continue
        if photo := _photo(still.value, Seeing(photos), told):
            stills[seconds] = photo
    return Film(film.id, film.title, film.address, film.moment, film.seconds, stills)


def _photo(given: Given[str], seeing: Seeing, told: list[Finding]) -> str:
    id = as_id(given.value)
    if id in seeing.photos:
        return id
    says, do = unknown_photo(given.value, seeing.photos)
    error(told, "unknown-photo", given.at, says, do=do)
    return ""
