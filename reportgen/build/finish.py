"""From what was made of every campaign to one site: pages of campaigns, pages across them, style sheet, files."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from reportgen.addresses import results_file

if TYPE_CHECKING:
    from reportgen.campaign.declared import Publication
    from reportgen.sources import Workspace


def finish(
    workspace: Workspace, publication: Publication, shown: Sequence[Mapping[str, Any]], theme: Any, out: Path
) -> int:
    """Put the whole site at `out` in one exchange; the number of its pages."""
    from reportgen.site.wide import site_pages
    from reportgen.site.write import exchange
    from reportgen.sources import read_bytes

    pages = [page for made in shown for page in made["pages"]]
    pages += site_pages(workspace, publication, tuple(made["card"] for made in shown), theme)
    outputs = {page.address: page.html.encode() for page in pages} | dict(theme.static)
    for made in shown:
        outputs[results_file(made["declared"].campaign.id)] = made["record"].encode()
        outputs |= {address: read_bytes(workspace, path) for address, path in made["copied"].items()}
    exchange(out, outputs, _sources(workspace))
    return len(pages)


def _sources(workspace: Workspace) -> list[Path]:
    """The author's folders, where no site may stand; in a lone campaign it may stand beside the files."""
    named = ("content", "shared", "themes", *(() if workspace.lone else workspace.campaigns))
    return [folder for name in named if (folder := workspace.root / name).is_dir()]
