"""Pages across campaigns say where to find each, and every link on them leads somewhere."""

from __future__ import annotations

import posixpath
import re
from dataclasses import replace
from decimal import Decimal
from html.parser import HTMLParser
from pathlib import Path

import pytest

from reportgen.campaign.declared import Accuracy, Amount, Calibration, Day, Repeats
from reportgen.site.card import Card
from reportgen.site.texts import SiteTexts, site_texts
from reportgen.site.wide import site_pages
from reportgen.sources import Workspace
from reportgen.theme import Theme, load_theme
from tests.site.cards_for_tests import PUBLICATION, SCALE, card, handbook, texts, written


@pytest.fixture(scope="module")
def theme() -> Theme:
    return load_theme(None)


class Links(HTMLParser):
    """The links, the words and the headings of a page."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.hrefs: list[str] = []
        self.headings: list[str] = []
        self.said: list[str] = []
        self._open = ""
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._open = tag if tag in {"h1", "h2"} else self._open
        self.hrefs += [v for k, v in attrs if k == "href" and v and tag == "a"]
        assert "style" not in dict(attrs)

    def handle_endtag(self, tag: str) -> None:
        self._open = "" if tag == self._open else self._open

    def handle_data(self, data: str) -> None:
        self.said.append(data)
        if self._open and data.strip():
            self.headings.append(data.strip())

    @property
    def words(self) -> str:
        return re.sub(r"\s+", " ", " ".join(self.said))


SHEETS = ("contenders/corvane", "contenders/ostler")


def made(theme: Theme, *cards: Card, own: SiteTexts | None = None) -> dict[str, Links]:
    pages, findings = site_pages(PUBLICATION, cards, own or SiteTexts(), theme)
    assert not findings
    return {page.address: Links(page.html) for page in pages}


def test_the_archive_shows_the_newest_comparison_first_and_an_undated_one_last(theme: Theme) -> None:
    shown = made(theme, card("kettles", "2025-01-10"), card("lamps", ""), card("stoves", "2026-05-02"))["index.html"]
    asked = [h for h in shown.headings if h.startswith("Comparison")]
    assert asked == [f"Comparison of {name}" for name in ("stoves", "kettles", "lamps")]
    assert "Which of the lamps burns least?" in shown.words
    assert "Corvane Sol and Ostler Mk II" in shown.words
    assert "date not noted" in shown.words


def test_a_site_without_comparisons_says_so_and_offers_no_empty_lists(theme: Theme) -> None:
    pages = made(theme)
    assert list(pages) == ["index.html"]
    assert "No comparison has been published" in pages["index.html"].words


def test_every_link_leads_to_a_page_of_the_site_or_of_a_campaign(theme: Theme) -> None:
    own = replace(texts(about="# About\n\n[how](how-we-test.md)", **{"how-we-test": "# How\n\n[who](about.md#us)"}),
                  handbook=handbook(("index", "# Manual\n\n[next](readings.md)"), ("readings", "# Readings")).handbook)  # fmt: skip
    pages = made(theme, card("stoves"), card("kettles", version=2), own=own)
    there = {*pages} | {f"{c}/{p}.html" for c in ("stoves", "kettles") for p in ("index", "tests/gas-burned", *SHEETS)}
    there |= {f"{c}/contenders/{one}.html" for c in ("stoves", "kettles") for one in ("corvane", "ostler")}
    for address, page in pages.items():
        for href in page.hrefs:
            target = posixpath.normpath(posixpath.join(posixpath.dirname(address), href.partition("#")[0]))
            assert not href.partition("#")[0] or target in there, f"{href} on {address}"


def test_each_version_of_a_method_keeps_a_page_that_names_the_comparisons_that_used_it(theme: Theme) -> None:
    pages = made(theme, card("stoves", "2026-05-02", version=2), card("kettles", "2025-01-10", version=1))
    first, second = (pages[f"methods/weigh-before-and-after.{n}.html"] for n in (1, 2))
    assert "Comparison of kettles" in first.words
    assert "Comparison of stoves" not in first.words
    assert "weigh-before-and-after.2.html" in first.hrefs
    assert "../stoves/tests/gas-burned.html" in second.hrefs
    assert (
        "0.9 g from pass to pass (standard deviation, 20 degrees of freedom; 24 passes of 4 stoves)"
        in second.words.replace("\u00a0", " ")
    )
    listed = pages["methods/index.html"]
    assert listed.hrefs.index("weigh-before-and-after.2.html") < listed.hrefs.index("weigh-before-and-after.1.html")


@pytest.mark.parametrize("title", ["Gas burned, canister and all", "iPot’s gas", "الغاز المحترق"])
def test_what_a_method_says_of_a_quantity_calls_it_as_its_campaign_does(theme: Theme, title: str) -> None:
    stoves = card()
    named = replace(stoves, measured=tuple(replace(of, title=title) for of in stoves.measured))
    page = made(theme, named)["methods/weigh-before-and-after.1.html"].words.replace("\u00a0", " ")
    assert f"{title} varies by 0.9 g from pass to pass" in page


def test_an_instrument_of_unknown_accuracy_says_what_follows(theme: Theme) -> None:
    watch = made(theme, card())["instruments/stopwatch.html"].words
    assert "Accuracy not known. What this instrument may be off by is in no interval" in watch
    assert "not noted" in watch
    assert "adds up to 0.2 s either way to each reading" in watch


def grams(number: str) -> Amount:
    return Amount(Decimal(number), "g", f"{number} g")


def test_a_corrected_instrument_says_by_what_how_well_that_is_known_and_until_when(theme: Theme) -> None:
    found = Calibration(
        "a weight of class M1", grams("-0.12"), uncertainty=grams("0.04"), k=Decimal(2), degrees=9,
        expires=Day("2027-04-30", "2027-04-30", "2027-04-30"),
    )  # fmt: skip
    scale = replace(
        SCALE, accuracy=Accuracy(known=True, text=""), calibration=found, drift=grams("0.1"),
        repeatability=Repeats(grams("0.05"), 9),
    )  # fmt: skip
    pages = made(theme, card(scale=scale))
    page = pages["instruments/bench-scale.html"].words.replace("\u00a0", " ")
    for said in (
        "Accuracy known by its calibration",
        "Repeats itself to 0.05 g: the standard deviation of its readings of one and the same thing, with 9 degrees",
        "Compared with a weight of class M1",
        "Correction −0.12 g, added to every reading",
        # JCGM 100, 4.3.3: U = 0.04 g with k = 2 is u = 0.02 g
        "an uncertainty of 0.04 g with k = 2, so a standard uncertainty of 0.02 g with 9 degrees of freedom",
        "Counts until 30 April 2027",
        "Drift at most 0.1 g a year either way",
    ):
        assert said in page, said
    assert "accuracy known by its calibration" in pages["instruments/index.html"].words


def test_the_points_of_a_calibration_stand_on_its_page_with_the_line_through_them(theme: Theme) -> None:
    # four points about the line 0.1 + 0.01·(x − 25): its residuals are ±0.01, so s² = 4·10⁻⁴/2, u of the height
    # s/√4 = 0.0071, u of the slope s/√500 = 0.00063 (JCGM 100, H.3.3, equations H.13)
    points = (("10", "-0.04"), ("20", "0.04"), ("30", "0.14"), ("40", "0.26"))
    found = Calibration(points=tuple((grams(at), grams(add)) for at, add in points), line=True)
    page = made(theme, card(scale=replace(SCALE, calibration=found)))["instruments/bench-scale.html"]
    said = page.words.replace("\u00a0", " ")
    assert "0.1000 g + 0.01000 × (reading − 25 g), the straight line through the 4 points below" in said
    assert "0.0071 g of the first figure, 0.00063 of the second, with 2 degrees of freedom" in said
    assert "10 g −0.04 g 20 g +0.04 g" in said


def test_an_instrument_that_campaigns_describe_differently_shows_each_description(theme: Theme) -> None:
    other = replace(SCALE, accuracy=Accuracy(known=False))
    page = made(theme, card("stoves"), card("kettles", scale=other))["instruments/bench-scale.html"].words
    assert "Two comparisons describe it differently" in page
    assert "±0.3 g, taken as a limit" in page
    assert "not known" in page


def test_the_handbook_leads_from_chapter_to_chapter(theme: Theme) -> None:
    own = handbook(("index", "# Manual"), ("first", "# First campaign"), ("readings", "# Readings"))
    pages = made(theme, own=own)
    assert pages["handbook/index.html"].hrefs.count("first.html") == 2, "listed, and next"
    assert {"index.html", "readings.html"} <= set(pages["handbook/first.html"].hrefs)
    assert "Manual" in pages["handbook/index.html"].headings


def test_the_handbook_follows_the_order_of_its_index_and_lists_what_that_leaves_out(
    theme: Theme, tmp_path: Path
) -> None:
    files = {"a": "# A", "b": "# B", "z": "# Z", "index": "# Manual\n\n[zed](z.md), then [a](a.md#x)"}
    folder = written(tmp_path, {f"content/handbook/{name}.md": text for name, text in files.items()})
    found = site_texts(Workspace(folder, ()))
    assert [t.id for t in found.handbook] == ["index", "z", "a", "b"]
    first = made(theme, own=found)["handbook/index.html"]
    assert [first.hrefs.count(f"{name}.html") for name in "zab"] == [2, 0, 1], "z is linked and next, b is left out"


def test_a_reference_to_nothing_on_a_site_page_is_an_error_with_its_place(theme: Theme) -> None:
    _, findings = site_pages(PUBLICATION, [], texts(about="# About\n\n[x](page:nowhere)"), theme)
    assert [(f.severity, f.place.file, f.place.line) for f in findings] == [("error", "content/about.md", 3)]


def test_site_texts_are_found_with_their_addresses_and_numbers_order_the_handbook(tmp_path: Path) -> None:
    files = {"content/about.md": "# A", "content/How we test.md": "# H", "content/handbook/20-readings.md": "# R",
             "content/handbook/10-first-campaign.md": "# F", "content/handbook/index.md": "# I",
             "content/archive/old/note.md": "# not a page"}  # fmt: skip
    found = site_texts(Workspace(written(tmp_path, files), ()))
    assert [t.address for t in found.pages] == ["about.html", "about/how-we-test.html"]
    assert [t.address for t in found.handbook] == [
        "handbook/index.html",
        "handbook/first-campaign.html",
        "handbook/readings.html",
    ]
    assert found.addresses["handbook"] == "handbook/index.html"


def test_a_cards_digest_changes_with_what_it_says() -> None:
    assert card().digest == card().digest
    assert card().digest != card(title="Another title").digest


def test_site_pages_are_the_same_bytes_each_time(theme: Theme) -> None:
    once, twice = (site_pages(PUBLICATION, [card("b"), card("a")], texts(about="# A"), theme)[0] for _ in range(2))
    assert once == twice


def test_wide_code_and_tables_can_be_reached_by_keyboard(theme: Theme) -> None:
    """WCAG 2.2, 2.1.1: what scrolls must scroll without a mouse."""
    text = "# A\n\n```\nlong\n```\n\n| a | b |\n|---|---|\n| 1 | 2 |\n"
    pages, _ = site_pages(PUBLICATION, [], texts(about=text), theme)
    html = next(p.html for p in pages if p.address == "about.html")
    assert html.count("<pre") == html.count('<pre tabindex="0" role="group" aria-label="Example">') == 1
    assert '<div class="region" tabindex="0" role="group" aria-label="Table"><table>' in html
