"""The picture and the words for links that are shared: true to the page, inside their sheet, the same bytes each time.

Sources: the Open Graph protocol (ogp.me: og:title, og:type, og:image and og:url are required; an image's address is
whole; og:image:alt is "a description of what is in the image"); PNG (ISO/IEC 15948, IHDR). 1200 by 630 px is common
practice, no source.
"""

from __future__ import annotations

import io
import struct
from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image

from reportgen.marks import mark_of
from reportgen.pages import Told, build_pages
from reportgen.pages.preview import preview_of, sheet_of
from reportgen.pages.preview.fitting import broken, cut, width_of
from reportgen.pages.preview.sheet import Result
from reportgen.pages.preview.sheet import Told as ToldOfPicture
from reportgen.pictures import set_in_pixels
from reportgen.theme import load_theme, render
from reportgen.theme.colours import light_colours
from tests.pages.reading import Element, read

THEME = load_theme(None)
COLOURS = light_colours(THEME)
LONG = "Which of these remarkably WWWWMMMM long-winded questions about stoves %%%% fits into a picture at all? " * 4


def told_so(title: str = "Which?", **more: object) -> ToldOfPicture:
    said = {"publication": "Site", "date": "Tested 2026", "answer": "That one.", "invented": "", **more}
    return ToldOfPicture(title=title, **said)  # type: ignore[arg-type]


def result(name: str, value: float, **more: object) -> Result:
    said = {"printed": f"{value} g", "low": value - 1, "high": value + 1, "limit": None, **more}
    return Result(name, mark_of(0), value=value, **said)  # type: ignore[arg-type]


def drawing(told: ToldOfPicture, right_to_left: bool = False) -> str:
    return render(THEME, "preview.svg", sheet_of(told, COLOURS, right_to_left), "preview.svg")


def opened(svg: str) -> Image.Image:
    return Image.open(io.BytesIO(set_in_pixels(svg))).convert("L")


def ink_in(picture: Image.Image, box: tuple[int, int, int, int]) -> bool:
    return picture.crop(box).getextrema()[0] < 200  # type: ignore[operator]


def test_the_picture_of_a_campaign_says_question_answer_and_results(told: Told) -> None:
    said = " ".join(t.text for t in read(preview_of(told)).all("text"))
    assert "Which stove boils a litre on the least gas?" in said
    assert "Gas burned" in said
    assert "lower is better" in said
    assert {"Corvane Sol", "Ostler Mk II", "Brindle"} <= {t.text for t in read(preview_of(told)).all("text")}
    assert "Stoves, makers and readings are invented." in said


def test_values_are_printed_as_on_the_page(told: Told) -> None:
    pages = {p.address: p.html for p in build_pages(told)}
    sheet = read(pages[f"{told.campaign.id}/contenders/ostler.html"]).one("table", class_="sheet-results")
    value = sheet.all("td", class_="value")[0].all("a")[0].text
    assert value in {t.text for t in read(preview_of(told)).all("text")}


def test_it_is_1200_by_630_and_the_same_each_time(told: Told) -> None:
    png = set_in_pixels(preview_of(told))
    assert png[:8] == b"\x89PNG\r\n\x1a\n"
    assert struct.unpack(">II", png[16:24]) == (1200, 630)
    assert png == set_in_pixels(preview_of(told))
    assert len(png) < 100_000


@pytest.mark.parametrize("right_to_left", [False, True])
def test_however_long_the_texts_nothing_leaves_the_sheet(right_to_left: bool) -> None:
    results = tuple(result(f"A stove with a name {LONG}", 10.0 + n, printed="1 234.56 g/min") for n in range(9))
    more = {"publication": LONG, "date": LONG, "answer": LONG, "invented": LONG, "measured": LONG, "more": "9 stoves"}
    picture = opened(drawing(told_so(LONG, results=results, way="lower is better", **more), right_to_left))
    assert not ink_in(picture, (4, 4, 56, 626))
    assert not ink_in(picture, (1146, 4, 1196, 626))
    assert not ink_in(picture, (4, 604, 1196, 626))


def test_answer_and_results_dont_run_into_each_other() -> None:
    results = tuple(result(name, 10.0) for name in "ABCDE")
    picture = opened(drawing(told_so(results=results, answer=LONG)))
    assert not ink_in(picture, (604, 200, 656, 626))


@pytest.mark.parametrize("text", ["The quick brown fox jumps", "WWWWMMMM%%%%", "illicit till 1,111.1", "ÄÖÜ ßøæ 12 °C"])
def test_a_line_is_never_wider_than_it_is_taken_for(text: str) -> None:
    """Against the converter itself: what it draws ends where the widths say, or before."""
    size = 40
    svg = drawing(told_so("X")).partition("<rect")[0]
    picture = opened(
        f'{svg}<rect width="1200" height="630" fill="#fff"/><text x="0" y="99" font-size="40">{text}</text></svg>'
    )
    ends = Image.eval(picture, lambda v: 255 - v).getbbox()
    assert ends is not None
    assert ends[2] <= width_of(text, size) + 2
    assert ends[2] >= width_of(text, size) * 0.8


def test_an_open_end_points_where_the_value_lies() -> None:
    over = result("B", 20.0, limit="above", printed="more than 20 g", low=None, high=None)
    sheet = sheet_of(told_so(results=(result("A", 10.0), over)), COLOURS)
    assert sheet.rows[1].open == "above"
    assert sheet.rows[1].low + sheet.rows[1].length == sheet.panel.right - 18


def test_equal_values_and_a_single_one_hold() -> None:
    for results in ((result("A", 0.0, low=None, high=None),), (result("A", 5.0), result("B", 5.0))):
        rows = sheet_of(told_so(results=results), COLOURS).rows
        assert [row.name for row in rows] == [r.name for r in results]
        assert all(row.length >= 0 and row.low <= row.value <= row.low + row.length for row in rows)


def test_what_an_author_typed_is_text_and_never_markup() -> None:
    assert "Stoves &lt;b&gt; &amp; Co" in drawing(told_so("Stoves <b> & Co"))


def test_words_break_between_words_and_too_long_ones_are_cut() -> None:
    lines = broken("one two three four", 10, width_of("one two", 10), 3)
    assert lines == ("one two", "three", "four")
    assert broken("one two three four", 10, width_of("one two", 10), 1) == (
        cut("one two…", 10, width_of("one two", 10)),
    )
    assert broken("", 10, 100, 2) == ("",)
    (only,) = broken("x" * 500, 10, 100, 3)
    assert only.endswith("…")
    assert width_of(only, 10) <= 100


def tags(page: Element) -> dict[str, str]:
    return {m.attrs["property"]: m.attrs["content"] for m in page.all("meta") if "property" in m.attrs}


def test_each_page_says_what_is_shown_where_its_link_is_shared(told: Told) -> None:
    publication = replace(told.publication, address="https://example.org/tests/")
    for page in build_pages(replace(told, publication=publication)):
        said = tags(read(page.html))
        assert {"og:title", "og:type", "og:image", "og:url", "og:image:alt"} <= said.keys()
        assert said["og:url"] == f"https://example.org/tests/{page.address}"
        assert said["og:image"] == f"https://example.org/tests/{told.campaign.id}/preview.png"
        assert said["og:title"] in read(page.html).one("title").text


def test_where_nobody_says_where_the_site_will_stand_nothing_is_promised(told: Told) -> None:
    assert not told.publication.address
    assert not any(tags(read(page.html)) for page in build_pages(told))


def test_the_demonstrations_pictures_are_where_its_pages_say(demo_site: Path) -> None:
    for page in (demo_site / "index.html", demo_site / "demo-campaign" / "index.html"):
        picture = tags(read(page.read_text("utf-8")))["og:image"].removeprefix("https://example.org/tests/")
        with Image.open(demo_site / picture) as shown:
            assert shown.size == (1200, 630)


def test_light_colours_are_those_outside_any_media_rule() -> None:
    css = ":root { --ink: #111111; /* --ink: #222222; */ } @media screen and (prefers-color-scheme: dark) { :root { --ink: #eeeeee; } }"
    assert light_colours(replace(THEME, styles={"10.css": css}))["ink"] == "#111111"
