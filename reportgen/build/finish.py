"""From what was made of every campaign to one site: their pages, pages across them, style sheet, files."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, cast

from reportgen.addresses import results_file

if TYPE_CHECKING:
    from reportgen.build.memory import Memory
    from reportgen.campaign.declared import Publication
    from reportgen.finding import Finding
    from reportgen.pages.told import Page
    from reportgen.site.texts import SiteTexts
    from reportgen.sources import Workspace
    from reportgen.store.kept import Kept
    from reportgen.theme import Theme

    Across = tuple[tuple[Page, ...], tuple[Finding, ...]]

Made = Mapping[str, Any]  # what the steps made of one campaign, by the name the table gives it


def pages_across(
    publication: Publication,
    made: Sequence[Made],
    texts: SiteTexts,
    theme: Theme,
    memory: Memory,
    program: str,
    kept: Kept,
) -> Across:
    """The pages that belong to no campaign, and what there is to say about the texts on them. Raises `Refused`.

    `program` is the digest of the code and its libraries, `kept` where charts are kept.
    """
    from reportgen.build.charts_kept import across
    from reportgen.site.wide import site_pages

    given = (publication, tuple(campaign["card"] for campaign in made), texts, theme)
    work = partial(site_pages, *given, partial(across, program=program, kept=kept))
    return cast("Across", memory.again("pages across campaigns", given, work))


def put_in_place(
    workspace: Workspace, shown: Sequence[Made], across: Sequence[Page], theme: Theme, out: Path
) -> tuple[int, bool]:
    """Put the whole site at `out` in one exchange; the number of its pages, and whether anything on it is new.

    Raises `Refused` and OSError.
    """
    from reportgen.site.write import exchange
    from reportgen.sources import path_of

    pages = [*across, *(page for made in shown for page in made["pages"])]
    outputs: dict[str, bytes | Path] = {page.address: page.html.encode() for page in pages}
    outputs |= theme.static
    for made in shown:
        outputs[results_file(made["declared"].campaign.id)] = made["record"].encode()
        outputs |= {address: path_of(workspace, path) for address, path in made["copied"].items()}
        outputs |= made["pictures"]
        outputs |= made["explored"]
    changed = exchange(out, outputs, _sources(workspace))
    return len(pages), changed


def _sources(workspace: Workspace) -> list[Path]:
    """The author's folders, where no site may stand; in a lone campaign it may stand beside the files."""
    named = ("content", "shared", "themes", *(() if workspace.lone else workspace.campaigns))
    return [workspace.root / name for name in named]
