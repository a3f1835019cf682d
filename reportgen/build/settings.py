"""What a workspace says of all its campaigns: its publication in its language, its theme, its own texts.

Where something there can't be used, the usual stands in its place, so that all that is wrong is found in one run.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from reportgen.finding import Finding, Refused

if TYPE_CHECKING:
    from reportgen.campaign.declared import Publication
    from reportgen.site.texts import SiteTexts
    from reportgen.sources import Workspace
    from reportgen.theme import Theme


def settings(workspace: Workspace) -> tuple[Publication, tuple[Finding, ...], Theme]:
    """The publication in its language, and its theme; where they can't be used, the usual ones and the findings that
    say so."""
    from reportgen.campaign.declared import Publication
    from reportgen.campaign.publication import load_publication
    from reportgen.theme import load_theme

    try:
        publication, findings = load_publication(workspace)
    except Refused as refused:
        return Publication(), refused.findings, load_theme(None)
    try:
        publication, told = _in_its_language(workspace, publication)
    except Refused as refused:
        told = refused.findings
    findings = (*findings, *told)
    try:
        return publication, findings, load_theme(workspace, publication.theme)
    except Refused as refused:
        return publication, (*findings, *refused.findings), load_theme(None)


def _in_its_language(workspace: Workspace, publication: Publication) -> tuple[Publication, tuple[Finding, ...]]:
    """The publication with the table of its language. Raises `Refused` with every mistake in its files."""
    from reportgen.campaign.publication import language_at
    from reportgen.languages import load_language

    language, told = load_language(workspace, publication.language, language_at(workspace))
    return replace(publication, speaks=language), told


def texts(workspace: Workspace) -> tuple[SiteTexts, tuple[Finding, ...]]:
    """The site's own texts; none, and the findings that say so, where one can't be read."""
    from reportgen.site.texts import SiteTexts, site_texts

    try:
        return site_texts(workspace), ()
    except Refused as refused:
        return SiteTexts(), refused.findings
