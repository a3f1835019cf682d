"""A site is opened as a reader's browser opens it, and nothing leaves the machine.

What each check holds pages to stands with it in `reportgen/browser/` (success criteria of WCAG 2.2, clauses of RFC 4287).
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from reportgen.browser.inspect import CHECKS, Fault, Inspected, inspect_site
from reportgen.browser.once_a_kind import walked
from reportgen.browser.opened import Tab
from tests.browser.faulty import FORWARDS, PAGES, SAYS, SOUND, write

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def inspected(tmp_path_factory: pytest.TempPathFactory) -> Inspected:
    """One browser for all: what is found on each page."""
    site = tmp_path_factory.mktemp("site")
    write(site)
    return inspect_site(site)


def test_every_page_is_opened_but_those_that_forward(inspected: Inspected) -> None:
    assert inspected.pages == len(PAGES)


def test_nothing_is_found_on_a_sound_page_or_one_that_forwards_well(inspected: Inspected) -> None:
    assert [f for f in inspected.faults if f.page in ("index.html", "old.html")] == []


@pytest.mark.parametrize(("page", "sort", "says"), SAYS)
def test_a_fault_is_found_where_it_is(inspected: Inspected, page: str, sort: str, says: str) -> None:
    assert [f for f in inspected.faults if (f.page, f.sort) == (page, sort) and says in f.says]


def test_nothing_else_is_found_than_was_put_there(inspected: Inspected) -> None:
    put = {(page, sort) for page, sort, _ in SAYS}
    follows = {  # what one fault brings with it
        ("textless.html", "accessibility"),  # axe sees the pictures too
        ("twice.html", "accessibility"),
        ("jump.html", "accessibility"),
        ("box.html", "accessibility"),
        ("box.html", "paper"),  # what scrolls is cut on paper
        ("keys.html", "accessibility"),
        ("away.html", "failed request"),
        ("away.html", "script error"),  # the page's policy forbids it too
        ("heavy.html", "things move"),  # what came was no picture
        ("wide.html", "paper"),
        ("wide.html", "text spacing"),
        ("less-wide.html", "text spacing"),
        ("small.html", "keyboard"),
        ("old-nowhere.html", "dead link"),
        ("old-circle-2.html", "forwarding"),
    }
    assert {(f.page, f.sort) for f in inspected.faults} - put - follows == set()


def test_every_check_has_a_fault_that_it_finds() -> None:
    never_put = {"page says too little"}  # tests/browser/test_on_disk.py
    assert set(CHECKS) - {sort for _, sort, _ in SAYS} - never_put - {"too heavy before the first picture"} == set()
    assert {name for name, _, _ in SAYS} <= {page[0] for page in PAGES} | {*FORWARDS, "feed.xml", "sitemap.xml"}


def test_one_page_of_each_kind_is_measured(inspected: Inspected) -> None:
    kinds = {kind or "plain" for _, kind, _, _ in PAGES}
    assert {m.kind for m in inspected.measured} == kinds
    sound = next(m for m in inspected.measured if m.kind == "sound")
    assert sound.painted > 0.4  # one way to and fro takes 400 ms
    assert (sound.shift, sound.requests, sound.sheets) == (0, 1, 1)
    heavy = next(m for m in inspected.measured if m.kind == "campaign")
    assert heavy.bytes_loaded > 151_000


def test_a_page_that_never_finishes_loading_is_told_and_stops_no_other(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("a.html", "b.html"):
        page = SOUND.format(name=name, kind=name, head="", body='<a href="#m">Here</a>').replace("index.html#m", "#m")
        (tmp_path / name).write_text(page, encoding="utf-8")

    def late(tab: Tab, address: str) -> Iterator[Fault]:
        if address == "a.html":
            tab.page.wait_for_selector("blink", timeout=1)
        yield from walked(tab, address)

    monkeypatch.setattr("reportgen.browser.inspect.walked", late)
    found = inspect_site(tmp_path)
    assert [(f.page, f.sort) for f in found.faults] == [("a.html", "script error")]
    assert "can't be checked" in found.faults[0].says
    assert [m.page for m in found.measured] == ["b.html"]


def test_a_page_is_opened_and_found_whatever_signs_its_name_holds(tmp_path: Path) -> None:
    """RFC 3986, 2.1: on the web these signs are written with percent signs; on disk they stand as they are."""
    at, odd, written = "https://example.org/a/", "it's 50% #1 ?.html", "it%27s%2050%25%20%231%20%3F.html"
    for name, address in (("index.html", "index.html"), (odd, written)):
        head = f'<link rel="canonical" href="{at}{address}">'
        page = SOUND.format(name=name, kind=name[:2], body=f'<p><a href="{written}">Odd</a></p>', head=head)
        (tmp_path / name).write_text(page, encoding="utf-8")
    listed = "".join(f"<url><loc>{at}{address}</loc></url>" for address in ("index.html", written))
    names = 'xmlns="http://www.sitemaps.org/schemas/sitemap/0.9"'
    (tmp_path / "sitemap.xml").write_text(f"<urlset {names}>{listed}</urlset>", encoding="utf-8")
    inspected = inspect_site(tmp_path, only_look=True)
    assert (inspected.pages, inspected.faults) == (2, ())
