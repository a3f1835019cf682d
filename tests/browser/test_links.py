"""Links are followed as a browser follows them from disk (RFC 3986, 5.2; HTML, section 7.4.6.4 on fragments)."""

from __future__ import annotations

import pytest

from reportgen.browser.document import read_page
from reportgen.browser.links import dead_links

PAGES = {
    "index.html": '<a href="stoves/index.html#caveat-1">x</a>',
    "stoves/index.html": '<p id="caveat-1">x</p>',
}
FILES = [*PAGES, "static/a.css", "stoves/files/two words.csv"]


def dead(address: str, html: str) -> list[str]:
    pages = {name: read_page(text) for name, text in {**PAGES, address: html}.items()}
    return [says for page, _, says in dead_links(pages, [*FILES, address]) if page == address]


@pytest.mark.parametrize(
    "link",
    [
        "../index.html",
        "#here",
        "",
        "index.html#caveat-1",
        "files/two%20words.csv",
        "../static/a.css?v=1",
        "https://example.org/gone",
        "mailto:a@example.org",
    ],
)
def test_links_that_lead_somewhere(link: str) -> None:
    assert dead("stoves/data.html", f'<p id="here"><a href="{link}">x</a>') == []


@pytest.mark.parametrize(
    ("link", "wrong"),
    [
        ("index.htm", "leads nowhere"),
        ("../../index.html", "leads nowhere"),
        ("index.html#caveat-2", "anchor that isn't there"),
        ("#there", "anchor that isn't there"),
        ("/index.html", "server's root"),
        ("files/Two%20words.csv", "leads nowhere"),
        ("http://[gone", "leads nowhere"),
    ],
)
def test_links_that_lead_nowhere(link: str, wrong: str) -> None:
    (says,) = dead("stoves/data.html", f'<p id="here"><a href="{link}">x</a>')
    assert wrong in says


@pytest.mark.parametrize(
    "tag",
    [
        '<img src="{}" alt="x">',
        '<img srcset="static/a.css 480w, {} 960w" alt="x">',
        '<source srcset="{}">',
        '<link rel="stylesheet" href="{}">',
        '<script src="{}"></script>',
    ],
)
def test_what_a_page_fetches_must_be_there(tag: str) -> None:
    assert dead("a.html", tag.format("static/a.css")) == []
    assert dead("a.html", tag.format("static/b.css")) == ["the link “static/b.css” leads nowhere"]


def test_one_anchor_twice_on_a_page_is_told_with_its_line() -> None:
    assert read_page('<p id="a">\n<p id="a">').repeated == [(2, "a")]
