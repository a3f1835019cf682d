"""Photographs as later stages know them: their files found, looked at, and told in words."""

from __future__ import annotations

import posixpath
from collections.abc import Sequence
from dataclasses import replace

from reportgen.addresses import as_id
from reportgen.campaign.declared import Photo
from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.campaign.given import Entry
from reportgen.campaign.look_up import error
from reportgen.campaign.written.pictures import WrittenPhoto
from reportgen.finding import Finding, Place, Refused
from reportgen.sources import Workspace, blocks, list_files, read_bytes

ENDINGS = (".jpg", ".jpeg", ".png", ".webp", ".gif", ".tif", ".tiff", ".bmp", ".heic", ".heif", ".avif")
ATTACHMENTS = "attachments"
_BLIND = "Whoever can't see it would be told nothing (WCAG 2.2, 1.1.1)."
_WORDS = "Say what can be seen in it, such as: {id}: The scale's display reads 217.1 g."


def is_picture(path: str) -> bool:
    """Whether a file's ending says that it is a picture made of pixels."""
    return path.lower().endswith(ENDINGS)


def begins_like_a_picture(ws: Workspace, path: str) -> bool:
    """Whether a file is a picture made of pixels by its first bytes, whatever its name says."""
    from reportgen.pictures import begins_like_one

    return begins_like_one(next(blocks(ws, path), b"")[:16])


def photos_of(
    ws: Workspace, folder: str, written: Sequence[Entry[WrittenPhoto | None]], told: list[Finding]
) -> tuple[Photo, ...]:
    """`photos:` of the campaign in `folder`, in its order. What can't be shown is told and left out."""
    found: dict[str, Photo] = {}
    for entry in written:
        id, name = as_id(entry.name.value), entry.name.value
        if not id:
            error(told, "name-without-letters", entry.name.at, f"“{name}” gives no address",
                  do="Choose a plain name, and put this one in `caption:`.")  # fmt: skip
        elif id in found:
            error(told, "duplicate-name", entry.name.at, f"there are two photographs “{id}”", do="Rename one.")
        elif photo := photo_of(id, entry.value, entry.name.at, told):
            seen = looked_at(ws, folder, photo, _file_at(entry), (ATTACHMENTS,), told)
            found[id] = seen or photo
    return tuple(found.values())


def photo_of(id: str, written: WrittenPhoto | None, at: Place, told: list[Finding]) -> Photo | None:
    """A photograph as it is described; None where no words say what it shows, which is told."""
    shows = written.shows.value if written and written.shows else ""
    if not shows or as_id(shows) == id or is_picture(shows):
        says = f"the photograph “{id}” has no words for those who can't see it"
        if shows:
            says = f"“{shows}” is the name of the photograph, not what it shows"
        error(told, "photo-without-words", written.shows.at if written and written.shows else at, says, _BLIND,
              _WORDS.replace("{id}", id))  # fmt: skip
        return None
    w = written
    assert w is not None
    return Photo(
        id,
        w.file.value if w.file else "",
        shows,
        w.caption.value if w.caption else "",
        w.by.value if w.by else "",
        w.taken.value if w.taken else None,
    )


def looked_at(
    ws: Workspace, folder: str, photo: Photo, at: Place, beside: Sequence[str], told: list[Finding]
) -> Photo | None:
    """The photograph with its file (from `folder`) and size; None where it can't be shown, which is told.

    A file that isn't named is looked for by the id, in the folders `beside`, which count from `folder`.
    """
    from reportgen.pictures import NotAPicture, look

    file = photo.file or _found(ws, folder, photo.id, beside, at, told)
    if not file:
        return None
    try:
        seen = look(read_bytes(ws, posixpath.normpath(posixpath.join(folder, file))))
    except Refused as refused:
        told.extend(replace(f, place=at) for f in refused.findings)
        return None
    except NotAPicture as wrong:
        error(told, wrong.rule, at, f"{file}: {wrong.says}", "No page could show it.", wrong.do)
        return None
    return replace(photo, file=file, width=seen.width, height=seen.height, exact=seen.exact)


def _found(ws: Workspace, folder: str, id: str, beside: Sequence[str], at: Place, told: list[Finding]) -> str:
    there = [f for name in beside for f in list_files(ws, posixpath.join(folder, name)) if is_picture(f)]
    inside = [posixpath.relpath(f, folder or ".") for f in there]
    by_id = [f for f in inside if _stem(f) == id]
    if len(by_id) > 1:
        says = f"there are several pictures “{id}”: {', '.join(by_id)}"
        error(told, "two-pictures", at, says, "Which is meant can't be known.", f"Add `file: {by_id[0]}`, or rename.")
    if not by_id:
        do = did_you_mean(id, map(_stem, inside))
        where = " or ".join(posixpath.join(name, id) for name in beside)
        error(told, "missing-photo", at, f"there is no picture {where}.jpg (or .png, .webp …)",
              do=f"{do or 'Put it there.'} Or name it: `file: {beside[0]}/…`.")  # fmt: skip
    return by_id[0] if len(by_id) == 1 else ""


def _stem(path: str) -> str:
    return as_id(posixpath.splitext(posixpath.basename(path))[0])


def _file_at(entry: Entry[WrittenPhoto | None]) -> Place:
    return entry.value.file.at if entry.value and entry.value.file else entry.name.at
