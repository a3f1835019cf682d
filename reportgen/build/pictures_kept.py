"""Pictures as they are kept: made once of a file's bytes, and again only where they, or the program, have changed."""

from __future__ import annotations

import base64
import json
import posixpath
from collections.abc import Callable, Mapping
from functools import partial
from typing import TYPE_CHECKING
from urllib.parse import unquote

from reportgen.store.kept import Kept, get, key_of, put

if TYPE_CHECKING:
    from reportgen.campaign.declared import Campaign
    from reportgen.sources import Workspace


def pictures(
    workspace: Workspace, campaign: Campaign, named: frozenset[str], files: tuple[str, ...], program: str, kept: Kept
) -> Mapping[str, bytes]:
    """Address on the site → bytes. The camera's own files never leave the author's folder.

    Declared photographs come in the sizes pages need; other pictures that are passed on, in their own. What can't be
    read as a picture is left out, and has been told where the campaign was declared. `named` are the paths that the
    campaign's texts lead to; `program` is the digest of the code and its libraries.
    """
    from reportgen.addresses import photo_file, raw_file
    from reportgen.finding import Place, refuse
    from reportgen.pictures import NotAPicture, draw, sizes_of
    from reportgen.sources import read_bytes

    found: dict[str, bytes] = {}
    for photo in campaign.photos:
        path = posixpath.normpath(posixpath.join(campaign.folder, photo.file))
        data = read_bytes(workspace, path)
        sizes = sizes_of(photo.width, photo.height)
        try:
            made = _kept(kept, key_of("photo", program, data), partial(draw, data, sizes))
        except NotAPicture as wrong:  # what looked whole and isn't
            raise refuse(wrong.rule, Place(path), wrong.says, "No page could show it.", wrong.do) from None
        found |= {photo_file(campaign.id, photo.id, name): picture for name, picture in made.items()}
    declared = {posixpath.normpath(posixpath.join(campaign.folder, photo.file)) for photo in campaign.photos}
    for path in passed_on(campaign, named, files) & are_pictures(workspace, campaign, named, files):
        if path in declared and path not in named:
            continue
        data = read_bytes(workspace, path)
        try:
            made = _kept(kept, key_of("cleaned", program, data), partial(_cleaned, data))
        except NotAPicture:
            continue
        found[raw_file(campaign.id, posixpath.relpath(path, campaign.folder or "."))] = made[""]
    return dict(sorted(found.items()))


def _cleaned(data: bytes) -> dict[str, bytes]:
    """The picture in its own size, under no name of a size."""
    from reportgen.pictures import cleaned

    return {"": cleaned(data)}


def are_pictures(
    workspace: Workspace, campaign: Campaign, named: frozenset[str], files: tuple[str, ...]
) -> frozenset[str]:
    """The files of a campaign that are pictures made of pixels: by their endings, because they are declared so, or,
    of what is passed on, by what is in them."""
    from reportgen.campaign.photos_of import begins_like_a_picture, is_picture

    passed = passed_on(campaign, named, files)
    declared = {posixpath.normpath(posixpath.join(campaign.folder, photo.file)) for photo in campaign.photos}
    return frozenset(
        f for f in files if is_picture(f) or f in declared or (f in passed and begins_like_a_picture(workspace, f))
    )


def passed_on(campaign: Campaign, named: frozenset[str], files: tuple[str, ...]) -> frozenset[str]:
    """What lies in `attachments/` and what texts name, from the workspace."""
    attached = posixpath.join(campaign.folder, "attachments/")
    return frozenset(f for f in files if f.startswith(attached) or f in named)


def named_in_texts(campaign: Campaign) -> frozenset[str]:
    """Paths, from the workspace, that links and pictures of the campaign's texts lead to (in a link a space is %20)."""
    from reportgen.prose.written import link_places, picture_places

    named = {target for text in campaign.prose for _, target in link_places(text)}
    named |= {target for text in campaign.prose for _, target, _ in picture_places(text)}
    return frozenset(posixpath.normpath(posixpath.join(campaign.folder, unquote(t.partition("#")[0]))) for t in named)


def _kept(kept: Kept, key: str, make: Callable[[], dict[str, bytes]]) -> dict[str, bytes]:
    """What is kept under `key`, else what `make` gives, kept from now on."""
    data = get(kept, key)
    if data is not None:
        try:
            return {name: base64.b85decode(text) for name, text in json.loads(data).items()}
        except (ValueError, AttributeError):
            pass
    made = make()
    put(kept, key, json.dumps({name: base64.b85encode(bytes_).decode() for name, bytes_ in made.items()}).encode())
    return made
