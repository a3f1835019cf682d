"""Every page and every style sheet of the demonstration is valid, as the W3C's Nu HTML Checker sees it: no error, no warning.

It holds pages to the HTML standard, ARIA in HTML, SVG 2 and MathML, and rules to the CSS modules it knows.
"""

from __future__ import annotations

from collections.abc import Collection
from pathlib import Path

import pytest

from reportgen.browser.served import served
from tests import checker

# Properties that the checker's list lacks and browsers know: `paint-order` of SVG 2, 13.8, and `math-style` of MathML Core,
# 4.5 (on formulas of pages).
LACKED = tuple(f"Property “{name}” doesn't exist." for name in ("paint-order", "math-style"))

pytestmark = pytest.mark.skipif(bool(checker.why_not()), reason=checker.why_not())


def told_of(site: Path, pages: Collection[str] | None = None, *, one_language: bool = True) -> list[str]:
    """What is said of all of a site, or of those pages and the style sheets, each thing once with the first page it is
    said of. Served: `'self'` of a page's policy means nothing in a file."""
    with served(site) as root:
        names = sorted(p.relative_to(site).as_posix() for p in site.rglob("*") if p.suffix in (".html", ".css"))
        names = [name for name in names if pages is None or name in pages or name.endswith(".css")]
        told = checker.said_of([f"{root}/{name}" for name in names], one_language=one_language)
    first: dict[tuple[str, str], str] = {}
    for one in told:
        if not one.says.endswith(LACKED):
            page = one.url.removeprefix(f"{root}/")
            first.setdefault((one.sort, one.says), f"{page}:{one.line}  {one.sort}: {one.says} {one.near}")
    return sorted(first.values())


def test_pages_and_style_sheets_are_valid(demo_site: Path) -> None:
    assert told_of(demo_site) == []


def test_what_is_not_valid_is_told(tmp_path: Path) -> None:
    """That the checker runs and is heard: a stray end tag, and a rule with a property nobody knows."""
    (tmp_path / "a.html").write_text('<!doctype html><html lang="en"><meta charset="utf-8"><title>x</title><p>x</b>')
    (tmp_path / "a.css").write_text("p { colour: red }")
    rules, page = told_of(tmp_path)
    assert rules.startswith("a.css:1  error: CSS: “colour”")
    assert page.startswith("a.html:")
    assert "Stray end tag “b”" in page
