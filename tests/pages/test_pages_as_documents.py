"""Every page as a document: read aloud in order, whole, and alive from a disk.

Sources: HTML Living Standard (ids unique, 3.2.6; table captions and scopes, 4.9); WCAG 2.2, 1.3.1, 2.4.1, 2.4.2, 2.4.4,
2.4.6 and 3.1.1; W3C Content Security Policy Level 3 (a policy in a page forbids style attributes).
"""

from __future__ import annotations

import itertools
import posixpath
import re

from reportgen.pages import PAGES, Told, build_pages
from tests.pages.reading import Element

Pages = dict[str, Element]
MADE_ELSEWHERE = re.compile(
    r"^(results\.json|files/readings\.csv|data/\w+\.(csv|parquet)|datapackage\.json|checksums\.sha256|CITATION\.cff"
    r"|citation\.(json|bib)|licence\.txt)$|^\.\./(about/results\.1\.schema\.json$|index\.html|search\.html|static/|instruments/|methods/|about/products/)"
)


def test_every_kind_of_page_is_made(told: Told, pages: Pages) -> None:
    kinds = {kind: [p.address for p in build(told)] for kind, build in PAGES.items()}
    assert all(kinds.values())
    assert sum(map(len, kinds.values())) == len(pages) == 21


def test_the_same_campaign_gives_the_same_bytes(told: Told) -> None:
    assert build_pages(told) == build_pages(told)


def test_each_page_has_one_first_heading_and_leaves_out_no_level(pages: Pages) -> None:
    for address, page in pages.items():
        levels = [int(h.name[1]) for h in page.all() if re.fullmatch(r"h[1-6]", h.name)]
        assert levels.count(1) == 1, address
        assert levels[0] == 1, address
        assert all(b - a <= 1 for a, b in itertools.pairwise(levels)), address
        assert all(h.text for h in page.all() if re.fullmatch(r"h[1-6]", h.name)), address


def test_ids_are_unique_and_labels_name_something(pages: Pages) -> None:
    for address, page in pages.items():
        ids = [e.attrs["id"] for e in page.all() if "id" in e.attrs]
        assert len(ids) == len(set(ids)), address
        assert {e.attrs["aria-labelledby"] for e in page.all() if "aria-labelledby" in e.attrs} <= set(ids), address


def test_every_link_is_relative_and_leads_to_something(pages: Pages) -> None:
    for address, page in pages.items():
        targets = [e.attrs[a] for e in page.all() for a in ("href", "src") if a in e.attrs]
        assert targets, address
        for href in targets:
            assert not re.match(r"[a-z]+:|/", href), f"{address}: {href}"
            path, _, anchor = href.partition("#")
            target = posixpath.normpath(posixpath.join(posixpath.dirname(address), path)) if path else address
            if target in pages:
                assert not anchor or pages[target].all(id=anchor), f"{address}: {href}"
            else:
                assert MADE_ELSEWHERE.search(target), f"{address}: {href}"


def test_links_have_words(pages: Pages) -> None:
    for address, page in pages.items():
        bare = [a.attrs for a in page.all("a") if not (a.text or a.attrs.get("aria-label"))]
        assert bare == [], address


def test_tables_have_captions_and_their_headings_say_what_they_head(pages: Pages) -> None:
    for address, page in pages.items():
        for table in page.all("table"):
            assert table.one("caption").text, address
            assert all(th.attrs.get("scope") in {"col", "row", "rowgroup"} for th in table.all("th")), address


def test_a_page_can_be_walked_by_its_landmarks(pages: Pages) -> None:
    for address, page in pages.items():
        assert page.one("html").attrs["lang"] == "en"
        assert [len(page.all(name)) for name in ("title", "header", "main", "footer")] == [1, 1, 1, 1], address
        assert page.one("a", class_="skip").attrs["href"] == "#" + page.one("main").attrs["id"]
        names = [n.attrs.get("aria-label", "") for n in page.all("nav")]
        assert all(names), address
        assert len(names) == len(set(names)), address


def test_a_region_that_scrolls_can_be_reached_and_has_a_name(pages: Pages) -> None:
    regions = [e for page in pages.values() for e in page.all(class_="region")]
    assert regions
    assert {e.attrs.get("tabindex") for e in regions} == {"0"}
    assert all(e.attrs.get("aria-label") for e in regions)


def test_no_page_needs_a_script_or_carries_a_style_of_its_own(pages: Pages) -> None:
    for address, page in pages.items():
        scripts = [s for s in page.all("script") if not s.attrs.get("type", "").endswith("json")]
        assert all(s.attrs.keys() >= {"src", "defer"} and not s.text for s in scripts), address  # nothing waits for one
        assert [e.name for e in page.all() if "style" in e.attrs or e.name == "style"] == [], address
        assert "integrity" not in {a for e in page.all() for a in e.attrs}, address
        policy = page.one("meta", http_equiv="Content-Security-Policy").attrs["content"]
        assert policy.startswith("default-src 'self'"), address


def test_what_an_author_typed_is_text_and_never_markup(pages: Pages) -> None:
    assert pages["contenders/tamsin.html"].one("h1").text == "D Tamsin <T> & Co"
