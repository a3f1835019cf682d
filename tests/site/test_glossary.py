"""The author's glossary as terms that pages explain, and the demonstration's pages that do."""

from __future__ import annotations

import re
from pathlib import Path

from reportgen.campaign.declared import ProseFile
from reportgen.site.glossary import terms_for, terms_in
from reportgen.site.texts import SiteText, SiteTexts
from reportgen.theme import Term

TEXT = """# Words

## Pass

a **pass** is one repeat; *most* tests have
several **passes**, or **single
runs**.

Told at more length.

## Open

too few readings.
"""
GLOSSARY = SiteText("glossary", "about/glossary.html", ProseFile("glossary", "content/glossary.md", TEXT))
TEXTS = SiteTexts((SiteText("about", "about.html", ProseFile("about", "content/about.md", "Hello")), GLOSSARY))


def test_words_in_bold_are_those_a_term_goes_by_and_an_entry_without_any_is_none() -> None:
    meaning = "A pass is one repeat; most tests have several passes, or single runs."
    forms = ("pass", "passes", "single runs")
    assert terms_in(TEXTS) == (Term("pass", "Pass", forms, meaning, "about/glossary.html#pass"),)


def test_the_glossary_explains_nothing_in_itself() -> None:
    assert terms_for("about/glossary.html", TEXTS) == ()
    assert terms_for("about.html", TEXTS) == terms_in(TEXTS)


def test_in_the_demonstration_each_term_leads_to_its_meaning_and_back_and_to_the_glossary(demo_site: Path) -> None:
    glossary = set(re.findall(r'id="([^"]+)"', (demo_site / "about/glossary.html").read_text("utf-8")))
    seen = 0
    for path in sorted(demo_site.glob("demo-campaign/**/*.html")):
        html = path.read_text("utf-8")
        terms = re.findall(r'<a class="term" id="said--([^"]+)" href="#word--([^"]+)">', html)
        assert len(terms) == len(set(terms)), path
        for id, to in terms:
            seen += 1
            assert id == to, path
            assert html.count(f'id="word--{id}"') == html.count(f'href="#said--{id}"') == 1, path
            assert id in glossary, path
            assert f'about/glossary.html#{id}"' in html, path
    assert seen > 20
