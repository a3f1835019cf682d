"""What every page is told, and what a page is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from reportgen.campaign.declared import Campaign, Declared, Publication
from reportgen.charts.figure import Figure
from reportgen.evaluation.evaluated import Evaluation
from reportgen.finding import Finding
from reportgen.intake.raw.rows import RawView
from reportgen.intake.reading import Readings
from reportgen.opendata import OpenData
from reportgen.prose.references import SITE_PAGES
from reportgen.theme import Term, Theme


@dataclass(frozen=True)
class Told:
    """A campaign, whole: declared, read, evaluated, drawn and audited, with the theme it is set in.

    `raw_views` maps a raw file (path from the workspace) to what is shown of it: such a file gets a page with its rows,
    and every trace ends on one of them. `site_pages` are the pages outside the campaign that its texts may name, id →
    address. `open_data` is what the campaign has for others to take. `terms` are those of the author's glossary.
    """

    publication: Publication
    declared: Declared
    readings: Readings
    evaluation: Evaluation
    figures: Mapping[str, Figure]
    findings: tuple[Finding, ...]
    theme: Theme
    open_data: OpenData
    raw_views: Mapping[str, RawView] = field(default_factory=dict)
    issue: int = 1
    site_pages: Mapping[str, str] = field(default_factory=lambda: SITE_PAGES)
    terms: tuple[Term, ...] = ()

    @property
    def campaign(self) -> Campaign:
        """The campaign as declared."""
        return self.declared.campaign


@dataclass(frozen=True)
class Page:
    """A page of the site: its address from the site's root, and its text."""

    address: str
    html: str
