"""The index that readers search, as it is kept: made once for the pages it is of."""

from __future__ import annotations

import base64
import hashlib
import json
from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from reportgen.store.kept import Kept, get, key_of, put

if TYPE_CHECKING:
    from reportgen.pages.told import Page


def search_index(pages: Sequence[Page], program: str, kept: Kept) -> Mapping[str, bytes]:
    """Address → bytes; nothing where the program that makes it isn't installed or doesn't run here."""
    from reportgen.site.searching import NoAnswerError, available, index_of, searched

    if not available():
        return {}
    pages = searched(pages)
    digests = (part for p in pages for part in (p.address, hashlib.sha256(p.html.encode()).digest()))
    key = key_of("search", program, *digests)
    told = get(kept, key)
    if told is not None:
        return {address: base64.b64decode(data) for address, data in json.loads(told).items()}
    try:
        made = index_of(pages)
    except (NoAnswerError, OSError):
        return {}  # the page of the search says so where it is missing
    put(kept, key, json.dumps({address: base64.b64encode(data).decode() for address, data in made.items()}).encode())
    return made
