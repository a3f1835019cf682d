"""What a campaign's folder gives to be seen: its photographs, its films, its instruments' photographs."""

from __future__ import annotations

import posixpath
from collections.abc import Mapping, Sequence
from dataclasses import replace

from reportgen.campaign.declared import Campaign, Instrument, Photo
from reportgen.campaign.given import Entry
from reportgen.campaign.photos_of import ATTACHMENTS, begins_like_a_picture, is_picture, looked_at, photos_of
from reportgen.campaign.seeing import Seeing, film_of
from reportgen.campaign.written.pictures import WrittenFilm, WrittenPhoto
from reportgen.finding import Finding, Place
from reportgen.sources import Workspace, list_files, read_bytes

OF_INSTRUMENT = "instrument-"


def seeing_of(
    ws: Workspace,
    folder: str,
    photos: Sequence[Entry[WrittenPhoto | None]],
    films: Sequence[Entry[WrittenFilm]],
    told: list[Finding],
) -> Seeing:
    """Photographs and films of the campaign in `folder`, looked at."""
    by_id = {p.id: p for p in photos_of(ws, folder, photos, told)}
    return Seeing(by_id, {f.id: f for f in (film_of(entry, by_id, told) for entry in films)})


def with_instruments_shown(
    ws: Workspace, campaign: Campaign, places: Mapping[str, Place], told: list[Finding]
) -> Campaign:
    """The campaign with the photographs of the instruments it uses, each looked at and among the campaign's own."""
    shown: dict[str, Instrument] = {}
    for id, instrument in campaign.instruments.items():
        photo = instrument.photo and _photo(ws, campaign.folder, instrument, places[f"instrument/{id}"], told)
        shown[id] = replace(instrument, photo=photo or None)
    more = tuple(i.photo for i in shown.values() if i.photo)
    return replace(campaign, instruments=shown, photos=(*campaign.photos, *more))


def tell_of_loose_pictures(ws: Workspace, campaign: Campaign, told: list[Finding]) -> None:
    """Pictures in attachments/ that nobody declared and no text names: the site passes on their pixels alone."""
    from reportgen.pictures import NotAPicture, look

    mentioned = "\n".join(p.text for p in campaign.prose)
    declared = {posixpath.normpath(posixpath.join(campaign.folder, p.file)) for p in campaign.photos}
    for path in list_files(ws, posixpath.join(campaign.folder, ATTACHMENTS)):
        inside = posixpath.relpath(path, campaign.folder or ".")
        if path in declared or not (is_picture(path) or begins_like_a_picture(ws, path)):
            continue
        try:
            look(read_bytes(ws, path))
        except NotAPicture as wrong:
            says = f"{inside} is left out of the site: {wrong.says}"
            why = "It may carry where and with what it was taken, and that can't be taken out."
            told.append(Finding("warning", "picture-left-out", Place(path), says, why, wrong.do))
            continue
        if inside not in mentioned:
            says = f"{inside} is a picture that `photos:` doesn't name; no page shows it"
            why = "The site passes on its pixels alone, without where and with what it was taken."
            do = "Add it to `photos:` with what it shows, or move it out of the campaign."
            told.append(Finding("note", "picture-not-shown", Place(path), says, why, do))


def _photo(ws: Workspace, folder: str, instrument: Instrument, at: Place, told: list[Finding]) -> Photo | None:
    """The instrument's photograph; its file counts from the folder that holds the instrument's description."""
    assert instrument.photo is not None
    home = posixpath.dirname(instrument.origin)
    home = posixpath.dirname(home) if posixpath.basename(home) == "instruments" else home
    found = looked_at(ws, home, instrument.photo, at, (ATTACHMENTS, "instruments"), told)
    if found is None:
        return None
    file = posixpath.relpath(posixpath.join(home, found.file), folder or ".")
    return replace(found, id=OF_INSTRUMENT + found.id, file=file)
