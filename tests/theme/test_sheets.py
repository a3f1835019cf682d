"""A page asks for the rules it needs: a file of styles may say which templates it is for.

Compression as hosts send it: RFC 1952 (gzip) at the highest level of RFC 1951's deflate. The budget of 14 kB of
HTML and style before the first picture (`browser/weight.py`) leaves a sheet some 5 kB, as the longest text before one takes 8.2.
"""

from __future__ import annotations

import gzip
import re
from pathlib import Path

import pytest

from reportgen.theme import load_theme
from reportgen.theme.load import Theme
from reportgen.theme.render import render
from reportgen.theme.sheets import BELOW, page_templates, paper_sheet, served, sheets, sheets_below, styles_for

THEME = load_theme(None)
TEMPLATES = {
    "base.html": "",
    "campaign.html": '{% extends "base.html" %}{% from "parts/figure.html" import figure %}',
    "text.html": '{% extends "base.html" %}',
    "wide/archive.html": '{%- extends "base.html" -%}',
    "parts/figure.html": '{% from "parts/caveat.html" import raised %}',
    "parts/caveat.html": "",
    "view/tail.html": "",
}


def test_a_file_that_names_no_template_serves_every_page() -> None:
    assert all(list(styles_for({"10.css": "a{}"}, TEMPLATES, page)) == ["10.css"] for page in TEMPLATES)


def test_a_file_serves_pages_that_draw_on_its_template_at_any_depth() -> None:
    styles = {"10.css": "a{}", "40.css": "/* for: parts/caveat.html */ b{}"}
    assert list(styles_for(styles, TEMPLATES, "campaign.html")) == ["10.css", "40.css"]
    assert list(styles_for(styles, TEMPLATES, "text.html")) == ["10.css"]


def test_a_star_stands_for_any_name() -> None:
    assert served("/* for: wide/*.html,\n parts/name.html */ a{}") == ("wide/*.html", "parts/name.html")
    assert list(styles_for({"1.css": "/* for: wide/*.html */"}, TEMPLATES, "wide/archive.html")) == ["1.css"]


def test_a_comment_that_only_begins_with_for_names_no_template() -> None:
    assert served("/* For reading in the sun: darker. */ a{}") == ()


def test_files_stand_in_the_order_of_their_names_and_print_in_a_sheet_of_its_own() -> None:
    styles = {"90-print.css": "c { d: e }", "50.css": "b{}", "10.css": "a{}"}
    assert sheets(styles, TEMPLATES)["text.html"] == "a{}b{}\n"
    assert paper_sheet(styles) == "c{d:e}\n"


def test_rules_for_below_are_a_second_sheet_of_the_pages_they_serve() -> None:
    styles = {"60-below.css": "/* for: parts/figure.html */ b{c:d}", "70.css": "a{}"}
    parted = {**TEMPLATES, "campaign.html": f"{TEMPLATES['campaign.html']}<p></p>{BELOW}<p></p>"}
    assert sheets(styles, parted)["campaign.html"] == "a{}\n"
    assert sheets_below(styles, parted) == {"campaign.html": "b{c:d}\n"}
    assert sheets(styles, TEMPLATES)["campaign.html"] == "b{c:d}a{}\n"
    assert sheets_below(styles, TEMPLATES) == {}


def test_the_second_sheet_comes_where_the_template_wants_it() -> None:
    text = f"<p>1</p>\n{BELOW}\n<p>2</p>"
    theme = Theme("x", "X", {"page.html": text}, {"60-below.css": "b{c:d}"}, {}, {"page.html": "page.html"})
    link = '<link rel="stylesheet" href="../static/x/page-below.css">'
    assert render(theme, "page.html", None, "a/b.html").strip() == text.replace(BELOW, link)
    assert theme.static["static/x/page-below.css"] == b"b{c:d}\n"
    plain = Theme("x", "X", {"page.html": text}, {}, {}, {"page.html": "page.html"})
    assert "below" not in render(plain, "page.html", None, "a/b.html")


def test_parts_and_what_the_viewer_shows_are_no_pages() -> None:
    assert page_templates(TEMPLATES) == ("base.html", "campaign.html", "text.html", "wide/archive.html")


SHEET = 6000  # bytes, compressed: that leaves 8 kB to a page before its first picture; `inspect` holds all to 14


@pytest.mark.parametrize("page", page_templates(THEME.templates))
def test_a_sheet_is_small_enough_to_come_with_its_page(page: str) -> None:
    assert len(gzip.compress(THEME.static[THEME.sheet_of(page)], 9, mtime=0)) <= SHEET


def test_every_template_that_a_file_of_styles_is_for_is_there() -> None:
    assert {name for text in THEME.styles.values() for name in served(text) if "*" not in name} <= set(THEME.templates)


def test_no_rule_waits_for_a_class_that_nothing_writes() -> None:
    """Classes of charts are written by charts/ (their layers) and by the script that points at weights."""
    written = " ".join(THEME.templates.values()) + " ".join(
        f.decode() for n, f in THEME.files.items() if n.endswith(".js")
    )
    rooms = ("charts", "pages", "site", "prose")
    python = " ".join(
        p.read_text()
        for room in rooms
        for p in Path(load_theme.__code__.co_filename).parents[1].glob(f"{room}/**/*.py")
    )
    known = set(re.findall(r"[A-Za-z][\w-]*", written + python)) | {f"c{n}" for n in range(1, 9)}
    known |= {f"tone-{n}" for n in range(5)} | {f"down-{n}" for n in range(1, 13)}
    asked = {
        c
        for text in THEME.styles.values()
        for c in re.findall(r"\.([a-z][\w-]*)(?=[^{}]*\{)", re.sub(r"/\*.*?\*/", "", text, flags=re.S))
    }
    made = {name for name in asked if name.startswith("d-")}  # layers of drawings: put together from what they show
    assert asked - made - known == set()


def test_a_file_that_takes_anothers_place_forgets_nothing_the_other_sets() -> None:
    """What the reading room's file lays out, the field book lays out too, there or elsewhere; but for how wide things may
    become beside a side column, which it has on the other side.
    """
    ours = load_theme(None, "field-book").styles
    replaced = {name for name, text in THEME.styles.items() if ours[name] != text} - {"31-columns.css"}
    assert len(replaced) >= 5
    known = {c for text in ours.values() for c in classes(text)}
    assert {name: left for name in replaced if (left := classes(THEME.styles[name]) - known)} == {}


def classes(style: str) -> set[str]:
    bare = re.sub(r"/\*.*?\*/", "", style, flags=re.S)
    return set(re.findall(r"\.([a-z][\w-]*)(?=[^{}]*\{)", bare))


def test_both_themes_set_pages_with_the_same_templates() -> None:
    """So that what is tested of a page's words and structure holds in both."""
    assert load_theme(None, "field-book").templates == THEME.templates
