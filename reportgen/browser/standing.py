"""A compiled site as it stands on disk: what every check of files is told."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from urllib.parse import SplitResult, unquote, urlsplit

from reportgen.browser.document import Document, read_page


@dataclass(frozen=True)
class Standing:
    """`pages`: what stands in each, by its address from the site's root; `files`: the addresses of everything."""

    root: Path
    pages: Mapping[str, Document]
    files: frozenset[str]

    def text(self, address: str) -> str:
        return (self.root / address).read_text(encoding="utf-8", errors="replace")

    def bytes(self, address: str) -> bytes:
        return (self.root / address).read_bytes()

    @cached_property
    def at(self) -> str:
        """The whole address the site says it will stand at, "" where it says none: its first page's canonical one."""
        first = self.pages.get("index.html")
        return first.canonical.removesuffix("index.html") if first else ""

    def kind(self, address: str) -> str:
        """What the page says it is; where it says nothing, its address with every name left out."""
        said = self.pages[address].kind
        return said or re.sub(r"[^/]+(?=/|\.html$)", "*", address)

    def kinds(self) -> dict[str, tuple[str, ...]]:
        """The pages of each kind, the longest first: what can go wrong goes wrong there."""
        found: dict[str, list[str]] = {}
        for address, page in self.pages.items():
            if page.forward is None:
                found.setdefault(self.kind(address), []).append(address)
        return {
            kind: tuple(sorted(found[kind], key=lambda a: (-(self.root / a).stat().st_size, a)))
            for kind in sorted(found)
        }


def read_site(root: Path) -> Standing:
    """Everything under `root`, each page read."""
    files = frozenset(path.relative_to(root).as_posix() for path in root.rglob("*") if path.is_file())
    pages = sorted(name for name in files if name.endswith(".html"))
    read = {name: read_page((root / name).read_text(encoding="utf-8", errors="replace")) for name in pages}
    return Standing(root, read, files)


def parted(target: str) -> SplitResult:
    """The parts of a link (RFC 3986, 3); one that can't be parted, such as `http://[a`, is all path."""
    try:
        return urlsplit(target)
    except ValueError:
        return SplitResult("", "", target, "", "")


def reached(page: str, target: str) -> tuple[str, str]:
    """The address on the site and the anchor that a relative link on `page` names (RFC 3986, 5.2)."""
    parts = parted(target)
    path = unquote(parts.path)
    wanted = posixpath.normpath(posixpath.join(posixpath.dirname(page), path)) if path else page
    return wanted, unquote(parts.fragment)
