"""Every reference in a campaign's texts, checked without making a page."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from reportgen.addresses import campaign_page
from reportgen.campaign.declared import Declared, ProseFile
from reportgen.evaluation.evaluated import Evaluation
from reportgen.finding import Finding
from reportgen.prose.markdown import render
from reportgen.prose.references import SITE_PAGES, resolver


def check_references(
    declared: Declared, evaluation: Evaluation, site_pages: Mapping[str, str] = SITE_PAGES
) -> tuple[Finding, ...]:
    """What is wrong with the references in the campaign's texts: unknown ones (errors), numbers that have drifted."""
    resolve = resolver(declared, evaluation, campaign_page(declared.campaign.id), site_pages)
    found = (f for text, line in _texts(declared) for f in render(text, resolve, first_line=line).findings)
    return tuple(dict.fromkeys(found))


def _texts(declared: Declared) -> Iterator[tuple[ProseFile, int]]:
    """The campaign's prose files, and the texts that stand inside its YAML with the line they begin on."""
    for prose in declared.campaign.prose:
        yield prose, 1
    inside = {f"contender/{c.id}/says": c.says for c in declared.campaign.contenders}
    inside |= {f"quantity/{q.id}/says": q.says for t in declared.campaign.tests for q in t.quantities}
    for path, text in inside.items():
        if text:
            place = declared.at(path)
            yield ProseFile(path, place.file, text), max(1, place.line)
