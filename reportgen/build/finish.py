"""From what was made of every campaign to one site: their pages, pages across them, style sheet, files."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, cast

from reportgen.addresses import on_the_web, results_schema_file
from reportgen.build.lasting import clashing_names, lasting_files
from reportgen.build.search_kept import search_index
from reportgen.wording.language import speaking

if TYPE_CHECKING:
    from reportgen.build.memory import Memory
    from reportgen.build.steps import Made
    from reportgen.campaign.declared import Publication
    from reportgen.finding import Finding
    from reportgen.pages.told import Page
    from reportgen.site.texts import SiteTexts
    from reportgen.sources import Workspace
    from reportgen.store.kept import Kept
    from reportgen.theme import Theme

    Across = tuple[tuple[Page, ...], tuple[Finding, ...]]


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
    with speaking(publication.speaks):
        pages, findings = cast("Across", memory.again("pages across campaigns", given, work))
    return pages, (*findings, *clashing_names(made))


def files_across(
    publication: Publication, made: Sequence[Made], across: Sequence[Page], theme: Theme, program: str, kept: Kept
) -> Mapping[str, bytes]:
    """Address → bytes of what belongs to no campaign and is no page of it: the picture for links that are shared, the
    schema of results.json, the feed, the sitemap, what is searched, and pages that lead from old addresses to new ones
    (`across` are the pages across campaigns). Raises `Refused` for an old address that is in use."""
    from reportgen.build.previews_kept import site_preview
    from reportgen.site.framing import Wide
    from reportgen.site.texts import SiteTexts

    cards = tuple(campaign["card"] for campaign in made)
    texts = made[0]["site_texts"] if made else SiteTexts()
    wide = Wide(publication, cards, texts, theme)
    pages = (*across, *(page for campaign in made for page in campaign["pages"]))
    preview = site_preview(publication, cards, theme, program, kept)
    lasting = lasting_files(wide, made, [page.address for page in pages])
    return {**preview, **_schema(publication), **lasting, **search_index(pages, program, kept)}


def _schema(publication: Publication) -> Mapping[str, bytes]:
    """What describes every results.json of the site."""
    from reportgen.record.schema import results_schema

    address = results_schema_file()
    told = results_schema(on_the_web(publication.address, address))
    return {address: (json.dumps(told, ensure_ascii=False, indent=1) + "\n").encode()}


def put_in_place(
    workspace: Workspace,
    shown: Sequence[Made],
    across: Sequence[Page],
    besides: Mapping[str, bytes],
    theme: Theme,
    out: Path,
) -> tuple[int, bool]:
    """Put the whole site at `out` in one exchange; the number of its pages, and whether anything on it is new.

    `besides` are the files across campaigns that are no pages. Raises `Refused` and OSError.
    """
    from reportgen.site.write import exchange
    from reportgen.sources import path_of

    pages = [*across, *(page for made in shown for page in made["pages"])]
    outputs: dict[str, bytes | Path] = {page.address: page.html.encode() for page in pages}
    outputs |= theme.static
    outputs |= besides
    for made in shown:
        outputs |= {f"{made['declared'].campaign.id}/{f.path}": f.data for f in made["open_data"].files}
        outputs |= {address: path_of(workspace, path) for address, path in made["copied"].items()}
        outputs |= made["pictures"]
        outputs |= made["explored"]
        outputs |= made["preview"]
    changed = exchange(out, outputs, _sources(workspace))
    return len(pages), changed


def _sources(workspace: Workspace) -> list[Path]:
    """The author's folders, where no site may stand; in a lone campaign it may stand beside the files."""
    named = ("content", "shared", "themes", *(() if workspace.lone else workspace.campaigns))
    return [workspace.root / name for name in named]
