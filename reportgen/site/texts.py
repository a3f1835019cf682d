"""The author's pages that belong to no campaign, and the handbook: which files they are and where they stand."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from reportgen.addresses import as_id
from reportgen.campaign.declared import ProseFile
from reportgen.sources import Workspace, carried, list_files, read_text

_NUMBERED = re.compile(r"^\d+[-_. ]+")  # `10-readings.md`: the number orders, and is no part of the address


@dataclass(frozen=True)
class SiteText:
    """A Markdown file and the address of its page."""

    id: str
    address: str
    prose: ProseFile


@dataclass(frozen=True)
class SiteTexts:
    """`pages` in the order of their names, `about` first; `handbook` in the order of its index."""

    pages: tuple[SiteText, ...] = ()
    handbook: tuple[SiteText, ...] = ()

    @property
    def addresses(self) -> Mapping[str, str]:
        """What `page:` may name besides a campaign's own pages: id → address on the site."""
        fixed = {"archive": "index.html", "methods": "methods/index.html", "instruments": "instruments/index.html"}
        found = {t.id: t.address for t in self.pages}
        if self.handbook:
            found["handbook"] = self.handbook[0].address
        return {**found, **fixed}


def site_texts(ws: Workspace) -> SiteTexts:
    """The Markdown of `content/` and of its handbook; without one there, the handbook that the program carries.

    Raises `Refused` for a file that can't be read as text.
    """
    pages = [_page(ws, path) for path in _markdown(ws, "content")]
    pages.sort(key=lambda t: (t.id != "about", t.id))
    handbook = [_chapter(ws, path, path) for path in _markdown(ws, "content/handbook")]
    if not handbook:
        ours = Workspace(carried("handbook"), ())
        handbook = [_chapter(ours, path, f"handbook/{path}") for path in _markdown(ours, "")]
    return SiteTexts(tuple(pages), tuple(_as_listed(handbook)))


def _as_listed(chapters: list[SiteText]) -> list[SiteText]:
    """The index first, then chapters in the order the index links to them, then the rest by file name."""
    listed = next((t.prose.text for t in chapters if t.id == "index"), "")

    def place(chapter: SiteText) -> tuple[bool, int]:
        at = listed.find(f"({chapter.prose.path.rpartition('/')[2]}")
        return chapter.id != "index", at if at >= 0 else len(listed)

    return sorted(chapters, key=place)


def _markdown(ws: Workspace, folder: str) -> list[str]:
    """The Markdown files right in a folder, by name."""
    before = f"{folder}/" if folder else ""
    found = (path for path in list_files(ws, folder) if path.endswith(".md"))
    return sorted(path for path in found if "/" not in path.removeprefix(before))


def _page(ws: Workspace, path: str) -> SiteText:
    id = as_id(_stem(path))
    address = "about.html" if id == "about" else f"about/{id}.html"
    return SiteText(id, address, ProseFile(id, path, read_text(ws, path)))


def _chapter(ws: Workspace, path: str, shown: str) -> SiteText:
    id = as_id(_stem(path))
    return SiteText(id, f"handbook/{id}.html", ProseFile(id, shown, read_text(ws, path)))


def _stem(path: str) -> str:
    return _NUMBERED.sub("", path.rpartition("/")[2].removesuffix(".md"))
