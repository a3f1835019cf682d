"""Photographs and films as the record keeps them, each told once; rows name them by their ids."""

from __future__ import annotations

import posixpath
from typing import Any

from reportgen.addresses import photo_file, results_file
from reportgen.campaign.declared import Film, Moment, Photo
from reportgen.pictures import sizes_of
from reportgen.record.plain import number


def photo_row(campaign: str, photo: Photo) -> dict[str, Any]:
    """A photograph; `pictures` are its sizes on the site, smallest first, from the folder results.json stands in.

    `file` is the camera's own file, from the campaign's folder; it isn't on the site.
    """
    home = posixpath.dirname(results_file(campaign))
    names = [f"{s.width}.{kind}" for s in sizes_of(photo.width, photo.height) for kind in _kinds(photo)]
    return {
        "id": photo.id,
        "shows": photo.shows,
        "caption": photo.caption or None,
        "by": photo.by or None,
        "taken": photo.taken.text if photo.taken else None,
        "file": photo.file,
        "width": photo.width,
        "height": photo.height,
        "pictures": [posixpath.relpath(photo_file(campaign, photo.id, name), home) for name in names],
    }


def film_row(film: Film) -> dict[str, Any]:
    """A film; `moment` is its address with `{seconds}`, null where a media fragment does."""
    return {
        "id": film.id,
        "title": film.title,
        "address": film.address,
        "moment": film.moment or None,
        "seconds": number(float(film.seconds)) if film.seconds is not None else None,
        "stills": [{"seconds": number(float(at)), "photo": id} for at, id in sorted(film.stills.items())],
    }


def moment_row(moment: Moment | None) -> dict[str, Any] | None:
    """A moment in a film: which, and seconds from its beginning."""
    return {"film": moment.film, "seconds": number(float(moment.seconds))} if moment else None


def _kinds(photo: Photo) -> tuple[str, str]:
    return ("webp", "png" if photo.exact else "jpg")
