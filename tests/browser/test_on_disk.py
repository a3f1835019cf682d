"""What is found in a site's files, without a browser."""

from __future__ import annotations

import gzip
import random
from pathlib import Path

from reportgen.browser.document import read_page
from reportgen.browser.outline import outline
from reportgen.browser.standing import Standing, read_site
from reportgen.browser.weight import FIRST, before_the_first_picture, weight

SVG = '<svg role="img" aria-label="A chart"></svg>'
SIGN = '<svg aria-hidden="true"></svg>'


def standing(site: Path, html: str, name: str = "index.html") -> Standing:
    (site / name).parent.mkdir(parents=True, exist_ok=True)
    (site / name).write_text(html, encoding="utf-8")
    return read_site(site)


def words(number: int) -> str:
    """Text that hardly packs."""
    return "".join(random.Random(2).choices("abcdefghijklmnopqrstuvwxyz0123456789 ", k=number))


def test_a_page_that_says_nothing_of_itself_is_told(tmp_path: Path) -> None:
    says = [fault.says for fault in outline(standing(tmp_path, "<html><p>x"))]
    assert says == [
        "says no language",
        "says no direction of its text",
        "has no title",
        "has no heading of the first level",
    ]


def test_what_comes_after_the_first_picture_weighs_nothing(tmp_path: Path) -> None:
    light = standing(tmp_path, f"<p>x</p>{SVG}{words(30_000)}")
    assert before_the_first_picture(light, "index.html") < 100
    assert list(weight(light)) == []


def test_text_before_the_first_picture_weighs_what_a_host_sends_of_it(tmp_path: Path) -> None:
    before = f"<p>{SIGN}{words(30_000)}</p>"
    heavy = standing(tmp_path, before + SVG)
    assert before_the_first_picture(heavy, "index.html") == len(gzip.compress(before.encode(), 9, mtime=0)) > FIRST
    (fault,) = weight(heavy)
    assert (fault.page, fault.sort) == ("index.html", "too heavy before the first picture")


def test_rules_for_screens_count_and_those_for_paper_do_not(tmp_path: Path) -> None:
    rules = words(25_000)
    (tmp_path / "a.css").write_text(rules)
    on_screen = standing(tmp_path, f'<link rel="stylesheet" href="a.css">{SVG}')
    assert before_the_first_picture(on_screen, "index.html") > len(gzip.compress(rules.encode(), 9, mtime=0))
    on_paper = standing(tmp_path, f'<link rel="stylesheet" media="print" href="a.css">{SVG}')
    assert list(weight(on_paper)) == []


def test_a_picture_is_found_in_its_line_and_a_sign_is_none() -> None:
    assert read_page(f"<p>{SIGN}</p>\n<p>{SVG}").first_picture == (2, 3)


def test_pages_are_of_the_kind_they_say_else_of_their_address(tmp_path: Path) -> None:
    standing(tmp_path, "<p>x", "stoves/tests/noise.html")
    standing(tmp_path, "<p>longer", "lamps/tests/beam.html")
    site = standing(tmp_path, '<html data-kind="test"><p>x', "stoves/tests/gas.html")
    assert site.kinds() == {
        "*/*/*.html": ("lamps/tests/beam.html", "stoves/tests/noise.html"),  # the longest first
        "test": ("stoves/tests/gas.html",),
    }
