"""Wherever a page says who is ahead, the words lead to the pair, or the pairs, that are the reason; over the whole
demonstration and its archive. And no listing puts contenders that tie into an order of its own."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from tests.pages.reading import Element, read

AHEAD = re.compile(
    r"\bbeats?\b|\bbetter than\b|\bdid best on\b|\bshare first place\b|\bis (?:lowest|highest)\b"
    r"|\bread (?:lowest|highest|best)\b|\bahead of (?:the other|[A-Z])|\bis behind\b|\bare each behind\b"
)
NOBODY = re.compile(r"(?:^|(?<=\. ))(?:Nothing|Nobody) [^.]*\.")  # that none is ahead is no pair's
BLOCKS = ("p", "td", "dd", "li")
# where words about who is ahead are the reason itself, a key to signs, the rule itself, or the author's own
THE_REASON, A_KEY, THE_AUTHORS_OWN = ("versus",), ("grid-key", "minute"), ("prose", "own", "ours", "caveat", "lead")
COMMON_TO_ALL = ("handbook", "about", "methods", "instruments")


def pages(site: Path) -> Iterator[tuple[str, Element]]:
    """Every page of a campaign, and the archive."""
    for path in sorted(site.rglob("*.html")):
        address = path.relative_to(site).as_posix()
        if address.partition("/")[0].removesuffix(".html") not in COMMON_TO_ALL and "/files/" not in address:
            yield address, read_once(path)


@cache
def read_once(path: Path) -> Element:
    return read(path.read_text(encoding="utf-8"))


def within(element: Element, *classes: str) -> bool:
    at: Element | None = element
    while at is not None:
        if set(at.attrs.get("class", "").split()) & set(classes):
            return True
        at = at.parent
    return False


def sayings(page: Element) -> Iterator[Element]:
    """Every stretch of text by the program that says who is ahead, no larger than it need be."""
    for name in BLOCKS:
        for block in page.all(name):
            if any(block.all(inner) for inner in BLOCKS) or not AHEAD.search(NOBODY.sub("", block.text)):
                continue
            if not within(block, *THE_REASON, *A_KEY, *THE_AUTHORS_OWN):
                yield block


def reasons(site: Path, address: str, block: Element) -> list[Element]:
    """What its links to pairs lead to; fails for a link that leads nowhere."""
    found = []
    for link in block.all("a"):
        path, _, anchor = link.attrs.get("href", "").partition("#")
        if not anchor.startswith(("pair-", "pairs-")):
            continue
        target = posixpath.normpath(posixpath.join(posixpath.dirname(address), path)) if path else address
        held = read_once(site / target).all(id=anchor)
        assert len(held) == 1, (address, link.attrs["href"])
        found += held
    return found


def test_every_word_about_who_is_ahead_leads_to_its_reason(demo_site: Path) -> None:
    looked_at = 0
    for address, page in pages(demo_site):
        for block in sayings(page):
            looked_at += 1
            held = reasons(demo_site, address, block)
            assert held, (address, block.text)
            for row in held:
                rows = [row] if row.name == "tr" else row.one("tbody").all("tr")
                assert rows
                for each in rows:
                    assert len(each.one("th").all("span", class_="letter")) == 2
                    assert each.one("span", class_="decision").text.endswith(".")
    assert looked_at > 100


def test_a_letter_in_the_grid_leads_to_the_row_of_these_two(demo_site: Path) -> None:
    looked_at = 0
    for address, page in pages(demo_site):
        for table in page.all("table", class_="grid"):
            heads = [th.one("span", class_="letter").text for th in table.one("thead").all("th")]
            for row in table.one("tbody").all("tr"):
                for letter, cell in zip(heads, row.all("td"), strict=False):
                    for link in cell.all("a", class_="reason"):
                        looked_at += 1
                        other = link.one("span", aria_hidden="true").text
                        (held,) = reasons(demo_site, address, cell_of(link))
                        assert {x.text for x in held.one("th").all("span", class_="letter")} == {letter, other}
    assert looked_at > 50


def cell_of(link: Element) -> Element:
    """A stretch that holds one link and nothing else."""
    return Element("span", {}, None, [link], [link])


def test_the_archive_gives_each_campaigns_answer_word_for_word(demo_site: Path) -> None:
    archive = read_once(demo_site / "index.html")
    entries = archive.all("article")
    assert len(entries) == len(list(demo_site.glob("*/results.json"))) >= 6
    for entry in entries:
        href = entry.one("h2").one("a").attrs["href"]
        answer = read_once(demo_site / href).one("p", class_="answer")
        assert entry.one("p", class_="finding").text == answer.text


OPENINGS = {
    "hand-pumps": "Of the three we bought, Hulvane Long did best on fill time, ",
    "vacuum-flasks": "Of the four we bought, Veldrake Half and Ismarrel Slim share first place on temperature",
    "cream-whisks": "The four we bought can’t be told apart on time to stiff peaks, and whatever separates them is less",
    "headlamps": "In this run Morrowick 4 read highest on run time, ",
    "demo-campaign": "Of the four we bought, Corvane Sol and Ostler Mk II share first place on gas burned, ahead of ",
}


@pytest.mark.parametrize("campaign", OPENINGS)
def test_the_archive_shows_a_clear_winner_a_shared_first_place_and_a_campaign_of_ties(
    demo_site: Path, campaign: str
) -> None:
    page = read_once(demo_site / campaign / "index.html")
    assert page.one("p", class_="answer").text.startswith(OPENINGS[campaign])
    assert page.one("p", class_="firm").text.startswith("How firm: ")


def test_a_row_of_the_grid_in_which_all_tie_is_one_cell_that_says_what_was_learned(demo_site: Path) -> None:
    grid = read_once(demo_site / "cream-whisks" / "index.html").one("table", class_="grid")
    peaks, table = (row.one("td") for row in grid.one("tbody").all("tr"))
    assert peaks.attrs["colspan"] == table.attrs["colspan"] == "4"
    assert peaks.text.startswith("1–4 can’t be told apart, and nothing that matters separates them")
    assert table.text.startswith("1–4 can’t be told apart; any gap of more than ")


def test_those_who_may_hold_the_same_places_stand_in_the_campaigns_order(demo_site: Path) -> None:
    """In every table of results: by places, and inside the same places by letter, whatever the values are."""
    shared = 0
    for address, page in pages(demo_site):
        for table in page.all("table", class_="results"):
            rows = table.one("tbody").all("tr")
            held = [(places(row), row.one("span", class_="letter").text) for row in rows if places(row)]
            assert held == sorted(held), address
            shared += len(held) - len({place for place, _ in held})
    assert shared > 10


def places(row: Element) -> tuple[int, ...]:
    cell = row.all("td", class_="place")
    found = re.match(r"(\d+)(?:–(\d+))?", cell[0].text) if cell else None
    return (int(found[1]), int(found[2] or found[1])) if found else ()


def test_one_pair_is_spoken_of_in_one_way(demo_site: Path) -> None:
    """What the table says of two contenders that tie, the pairs say in the same words."""
    for address, page in pages(demo_site):
        assert "too close" not in page.text, address
        for row in page.all("table", class_="versus"):
            for decision in row.all("span", class_="decision"):
                assert re.search(r"is ahead|Can’t be told apart|Not enough to say", decision.text), decision.text


def test_why_ranges_may_overlap_is_said_before_any_range_is_seen_and_once(demo_site: Path) -> None:
    html = (demo_site / "demo-campaign" / "tests" / "noise.html").read_text(encoding="utf-8")
    assert html.count('class="beforehand"') == 1
    assert html.index('class="beforehand"') < html.index("<figure") < html.index('class="results')
    assert len(re.findall("ranges? overlap", html, re.IGNORECASE)) <= 1


def test_with_own_scatter_the_page_says_how_far_each_scatters(demo_site: Path) -> None:
    """Where a method gives each contender its own scatter, a range of each leads to it."""
    page = read_once(demo_site / "hand-pumps" / "tests" / "fill-time.html")
    said = page.one("p", id="fill-time-scatter").text
    assert said.startswith("Scatter of one pass, each contender’s own: Grenlock Stub 13 s (4 degrees of freedom), ")
    assert any(link.attrs["href"] == "#fill-time-scatter" for link in page.all("a"))
