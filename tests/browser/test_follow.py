"""A page that is open follows the files, under the policy that every page of a site carries."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from reportgen.build.progress import Built
from reportgen.finding import Finding, Place, refuse
from reportgen.pages.whereabouts import Whereabouts
from reportgen.view import Shown, serving

if TYPE_CHECKING:
    from playwright.sync_api import Page

pytestmark = pytest.mark.browser

PAGE = """<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Stoves</title>
<meta http-equiv="Content-Security-Policy" content="default-src 'self'; img-src 'self' data:; object-src 'none'">
</head><body><main><h1>{}</h1>{}</main></body></html>"""


@contextmanager
def opened(site: Path, shown: Shown, page: str = "index.html", root: Path | None = None) -> Iterator[Page]:
    """A page of `site` as the local server shows it; the browser has nothing to complain of."""
    from reportgen.browser.chromium import started

    troubles: list[str] = []
    with serving(site, shown, root=root) as address, started() as browser:
        tab = browser.new_page(viewport={"width": 800, "height": 600})
        tab.set_default_timeout(15_000)
        tab.on("console", lambda message: troubles.append(message.text) if message.type == "error" else None)
        tab.goto(address + page)
        yield tab
    assert [t for t in troubles if "404" not in t] == []


def built(site: Path, *findings: Finding, where: Whereabouts | None = None) -> Built:
    return Built(findings, 1, 1, site, where=where)


def test_an_open_page_follows_a_change_and_shows_a_mistake(tmp_path: Path) -> None:
    shown = Shown()
    shown.show(built(tmp_path))
    file = tmp_path / "index.html"
    file.write_text(PAGE.format("212 s", ""))
    with opened(tmp_path, shown) as page:
        assert page.inner_text("h1") == "212 s"
        file.write_text(PAGE.format("213 s", ""))
        shown.show(built(tmp_path))
        page.wait_for_selector("h1:text-is('213 s')")
        shown.show(refuse("unknown-key", Place("campaign.yaml", 4, 1), "“contendres” is no key"))
        page.wait_for_selector(".to-mend.broken li")
        assert "campaign.yaml:4:1" in page.inner_text(".to-mend")
        assert page.inner_text("h1") == "213 s"
        assert page.evaluate("getComputedStyle(document.querySelector('.to-mend')).position") == "fixed"
        shown.show(built(tmp_path))
        page.wait_for_selector(".to-mend", state="detached")


def test_a_finding_stands_beside_the_sentence_it_is_about(tmp_path: Path) -> None:
    text = "<p>Nothing of note.</p><p id='on'>Corvane’s flame burned <a href='#x'>14 g</a> in still air, which is little.</p>"
    (tmp_path / "index.html").write_text(PAGE.format("Stoves", text), encoding="utf-8")
    (tmp_path / "conclusions.md").write_text(
        "# Text\n\nCorvane's flame burned [](value:gas) in *still air*, which is little.\n"
    )
    (tmp_path / "campaign.yaml").write_text("title: Stoves\ncontenders: {a: A}\nmeasure: {t: 'timed, s, lower'}\n")
    shown = Shown()
    finding = Finding(
        "warning", "number-typed", Place("conclusions.md", 3, 9), "“little” is a judgement", "Why so.", "Show it."
    )
    shown.show(built(tmp_path, finding))
    with opened(tmp_path, shown, root=tmp_path) as page:
        beside = page.wait_for_selector("#on + .beside-it.warning")
        assert beside is not None
        assert "Show it." in beside.inner_text()
        assert page.locator(".to-mend li").count() == 0


def test_a_finding_stands_beside_what_its_subject_is_shown_by_and_else_in_the_list(tmp_path: Path) -> None:
    text = "<section id='noise'><h2>Noise</h2><p>71 dB</p></section>"
    (tmp_path / "index.html").write_text(PAGE.format("Stoves", text), encoding="utf-8")
    where = Whereabouts(
        {("", "quantity/noise"): "index.html#noise", ("", "test/mass"): "tests/mass.html"}, folders=("",)
    )
    here = Finding("note", "few", Place("campaign.yaml", 3), "few passes", subject="quantity/noise")
    there = Finding("note", "few", Place("campaign.yaml", 9), "one scale", subject="test/mass")
    shown = Shown()
    shown.show(built(tmp_path, here, there, where=where))
    with opened(tmp_path, shown) as page:
        page.wait_for_selector("#noise h2 + .beside-it.note:has-text('few passes')")
        assert page.locator(".to-mend li").all_text_contents()[0].split() == ["campaign.yaml:9", "one", "scale"]


def test_one_goes_on_reading_at_the_same_thing_whatever_grew_above_it(tmp_path: Path) -> None:
    long = "".join(f"<section id='s{n}'><h2>Part {n}</h2>{'<p>words</p>' * 12}</section>" for n in range(30))
    fold = "<details id='fold'><summary>Workings</summary><p>sums</p></details>"
    file = tmp_path / "index.html"
    file.write_text(PAGE.format("Stoves", fold + long), encoding="utf-8")
    shown = Shown()
    shown.show(built(tmp_path))
    with opened(tmp_path, shown) as page:
        page.click("summary")
        page.evaluate("document.getElementById('s17').scrollIntoView(); scrollBy(0, 40)")
        before = page.evaluate("document.getElementById('s17').getBoundingClientRect().top")
        file.write_text(PAGE.format("Stoves, again", "<p>More.</p>" * 50 + fold + long), encoding="utf-8")
        shown.show(built(tmp_path))
        page.wait_for_selector("h1:text-is('Stoves, again')", state="attached")
        page.wait_for_load_state()
        assert abs(page.evaluate("document.getElementById('s17').getBoundingClientRect().top") - before) < 2
        assert page.evaluate("document.getElementById('fold').open")


def test_a_page_that_is_gone_leads_to_the_nearest_that_stands_and_says_so(tmp_path: Path) -> None:
    (tmp_path / "stoves/tests").mkdir(parents=True)
    (tmp_path / "stoves/index.html").write_text(PAGE.format("All stoves", ""), encoding="utf-8")
    file = tmp_path / "stoves/tests/noise.html"
    file.write_text(PAGE.format("Noise", ""), encoding="utf-8")
    shown = Shown()
    shown.show(built(tmp_path))
    with opened(tmp_path, shown, "stoves/tests/noise.html") as page:
        file.unlink()
        shown.show(built(tmp_path))
        page.wait_for_selector("h1:text-is('All stoves')")
        assert "is gone" in page.inner_text(".moved")
