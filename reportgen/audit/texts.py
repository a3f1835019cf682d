"""Rules on the author's texts: links that lead nowhere, pictures without words, numbers typed by hand."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Iterable
from urllib.parse import unquote

from reportgen.audit.case import Case, Seen
from reportgen.prose.written import link_places, picture_places, typed_numbers

OUTSIDE = re.compile(r"[a-z][a-z0-9+.-]*:|//|#")  # an address elsewhere, or one of our references


def numbers_that_disagree(case: Case) -> Iterable[Seen]:
    """Numbers typed by hand beside a contender's name that no result agrees with."""
    for file in case.declared.campaign.prose:
        for place, words in typed_numbers(file, case.declared.campaign, case.evaluation):
            yield Seen(place, f"“{words}” is typed by hand and agrees with no result.")


def dead_links(case: Case) -> Iterable[Seen]:
    """Links to files that aren't there, and pictures."""
    for file in case.declared.campaign.prose:
        folder = posixpath.dirname(file.path)

        def lacking(target: str, folder: str = folder) -> bool:
            path = posixpath.normpath(posixpath.join(folder, unquote(target.partition("#")[0])))
            return not OUTSIDE.match(target) and path not in case.files

        for place, target in link_places(file):
            if lacking(target):
                yield Seen(place, f"The link to `{target}` leads nowhere.")
        for place, target, _ in picture_places(file):
            if lacking(target):
                yield Seen(place, f"The picture `{target}` isn't there.")


def pictures_without_words(case: Case) -> Iterable[Seen]:
    """Pictures without alternative text."""
    for file in case.declared.campaign.prose:
        for place, target, words in picture_places(file):
            if not words.strip() and not target.startswith(("figure:", "photo:")):
                yield Seen(place, f"The picture `{target}` has no words for those who can't see it.")
