"""What is put into a page when all of it is there: numbers of figures and tables, ways back from caveats, no-break spaces."""

from __future__ import annotations

import re

import pytest

from reportgen.theme import load_theme
from reportgen.theme.finished import finished, unbroken

NB = "\u00a0"
MARK = '<a href="#caveat-gas" data-at="{}">1</a>'
BOX = '<div id="caveat-gas"><p>Warm.</p>\n<!-- back to caveat-gas -->\n</div>'


def page(html: str) -> str:
    return finished(load_theme(None).environment, html)


def test_figures_and_tables_are_counted_in_their_order_each_sort_for_itself() -> None:
    html = "<!-- figure -->, <!-- table -->, <!-- figure -->, <!-- table -->, <!-- table -->"
    assert page(html) == "Figure 1, Table 1, Figure 2, Table 2, Table 3"


def test_a_caveat_leads_back_to_each_place_that_raises_it() -> None:
    html = page(MARK.format("sentence") + BOX + MARK.format("table") + MARK.format("table"))
    ids = re.findall(r' id="(to-[^"]+)"', html)
    assert ids == ["to-caveat-gas", "to-2-caveat-gas", "to-3-caveat-gas"]
    assert re.findall(r'href="#(to-[^"]+)"', html) == ids
    assert "data-at" not in html
    assert "Back to the sentence" in html


def test_ways_back_to_caveats_whose_names_differ_by_a_number_have_addresses_of_their_own() -> None:
    second = MARK.replace("caveat-gas", "caveat-gas-2").format("table")
    ids = re.findall(r' id="([^"]+)"', page(MARK.format("table") + MARK.format("table") + second))
    assert len({*ids}) == len(ids) == 3


def test_a_caveat_that_nothing_raises_has_no_way_back_and_a_number_of_another_page_none_to_it() -> None:
    other = '<a href="tests/gas.html#caveat-gas" data-at="table">1</a>'
    html = page(BOX + other)
    assert html == '<div id="caveat-gas"><p>Warm.</p>\n</div><a href="tests/gas.html#caveat-gas">1</a>'


@pytest.mark.parametrize(
    "joined",
    ["14.2~g", "7.71~min/g", "95~%", "−2.3~°C", "62 to 79~EUR", "±4~% + 5 digits", "60~dB", "150~kJ/kg", "2~kΩ"],
)
def test_a_number_and_its_unit_stay_on_one_line(joined: str) -> None:
    # SI brochure, 9th edition, 5.4.3: a space between number and unit; 5.4.7: before % too
    assert unbroken(f"<p>{joined.replace('~', ' ')}</p>") == f"<p>{joined.replace('~', NB)}</p>"


@pytest.mark.parametrize(
    "html",
    [
        "<p>2 gates, 3 in all, 4 more</p>",
        "<pre><code>--limit 14 g</code></pre>",
        '<a title="14 g">x</a>',
        "<p>line 7 of the file</p>",
    ],
)
def test_words_and_what_is_typed_as_it_stands_are_let_be(html: str) -> None:
    assert unbroken(html) == html
