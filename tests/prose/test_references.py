"""Prose can't drift from data: what references print, and what the author is told."""

from __future__ import annotations

from dataclasses import replace

import pytest

from reportgen.campaign.declared import Claim, Method, ProseFile
from reportgen.finding import Finding, Place
from reportgen.prose.checked import check_references
from reportgen.prose.markdown import render
from reportgen.prose.references import resolver, site_resolver
from reportgen.prose.text import Text
from tests.prose.builder import Told, told

NB = "\u00a0"
PAGE = "stoves/index.html"


@pytest.fixture
def stoves() -> Told:
    t = told(corvane=14.4, ostler=17.0).pair("corvane", "ostler", "better", 1.2).first("corvane")
    claim = Claim("c1", {"the box": "Boils fast"})
    contenders = (replace(t.campaign.contenders[0], claims=(claim,)), *t.campaign.contenders[1:])
    methods = {f"weigh.{v}": Method("weigh", v, "Weigh before and after") for v in (1, 2)}
    return replace(t, campaign=replace(t.campaign, contenders=contenders, methods=methods))


def rendered(t: Told, text: str, page: str = PAGE) -> Text:
    return render(ProseFile("conclusions", "stoves/conclusions.md", text), resolver(t.declared, t.evaluation, page))


def shown(t: Told, text: str) -> str:
    return rendered(t, text).markup.replace(NB, " ").strip()


def finding(t: Told, text: str) -> Finding:
    (found,) = rendered(t, text).findings
    return found


def test_a_question_mark_asks_for_the_value_and_links_to_where_it_was_worked_out(stoves: Told) -> None:
    assert shown(stoves, "It burned [?](value:gas-burned/corvane).") == (
        '<p>It burned <a href="tests/gas-burned.html#result-gas-burned-corvane">14.40 g</a>.</p>'
    )


def test_the_link_is_relative_to_the_page_the_text_stands_on(stoves: Told) -> None:
    text = rendered(stoves, "[?](value:gas-burned/corvane)", "stoves/contenders/corvane.html")
    assert 'href="../tests/gas-burned.html#result-gas-burned-corvane"' in text.markup


def test_a_number_that_agrees_by_its_digits_prints_what_was_computed(stoves: Told) -> None:
    text = rendered(stoves, "[14.4 g](value:gas-burned/corvane), [14 g](value:gas-burned/corvane)")
    assert text.findings == ()
    assert text.markup.count(f">14.40{NB}g<") == 2


def test_a_number_that_no_longer_agrees_is_told_with_its_place_and_the_page_prints_the_computed(stoves: Told) -> None:
    text = "First line.\n\nThe Corvane burned [14.2 g](value:gas-burned/corvane) of gas."
    told_ = finding(stoves, text)
    assert (told_.severity, told_.place) == ("warning", Place("stoves/conclusions.md", 3, 20))
    assert told_.says.replace(NB, " ") == "The text says 14.2 g; the readings give 14.40 g."
    assert "14.2" not in shown(stoves, text)
    assert "14.40 g" in shown(stoves, text)


def test_two_references_to_one_value_have_two_places(stoves: Told) -> None:
    text = "[1 g](value:gas-burned/corvane) and\n[2 g](value:gas-burned/corvane), [3 g](value:gas-burned/corvane)"
    places = [(f.place.line, f.place.column) for f in rendered(stoves, text).findings]
    assert places == [(1, 1), (2, 1), (2, 34)]


# IEEE/ASTM SI 10: 1 oz = 28.349 523 125 g exactly; 14.4 g are 0.5079 oz.
def test_a_number_typed_in_another_unit_is_converted_before_it_is_held_against_the_result(stoves: Told) -> None:
    assert rendered(stoves, "[0.51 oz](value:gas-burned/corvane)").findings == ()
    assert "0.508 oz" in shown(stoves, "[0.51 oz](value:gas-burned/corvane)")
    assert "readings give" in finding(stoves, "[0.6 oz](value:gas-burned/corvane)").says
    assert "is in s" in finding(stoves, "[14.4 s](value:gas-burned/corvane)").says


def test_an_interval_typed_in_parentheses_is_printed_as_computed(stoves: Told) -> None:
    assert ">14.40 g (13.80 to 15.00)</a>" in shown(stoves, "[14.4 g (14 to 15)](value:gas-burned/corvane)")


def test_words_without_a_number_stay_the_authors(stoves: Told) -> None:
    text = rendered(stoves, "It burned [*less*](value:gas-burned/corvane).")
    assert "<em>less</em></a>" in text.markup
    assert text.findings == ()


def test_a_value_that_does_not_exist_yet_is_told() -> None:
    t = told(corvane=14.0, ostler="not yet tested")
    assert "has no result: not yet tested" in finding(t, "[12 g](value:gas-burned/ostler)").says
    assert "12 g" not in shown(t, "[12 g](value:gas-burned/ostler)")


def test_a_limit_typed_as_a_number_is_told() -> None:
    t = told(corvane=14.0, ostler="over 999")
    assert "more than 999 g" in shown(t, "[?](value:gas-burned/ostler)")
    assert "more than" in finding(t, "[1200 g](value:gas-burned/ostler)").says


def test_a_difference_is_held_against_the_comparison(stoves: Told) -> None:
    assert ">2.6 g</a>" in shown(stoves, "[?](comparison:gas-burned/corvane/ostler)")
    assert ">2.6 g</a>" in shown(stoves, "[?](comparison:gas-burned/ostler/corvane)")
    assert rendered(stoves, "[2.6 g less](comparison:gas-burned/corvane/ostler)").findings == ()
    assert "readings give 2.6 g" in finding(stoves, "[3.6 g](comparison:gas-burned/corvane/ostler)").says.replace(
        NB, " "
    )


def test_who_is_first_is_held_against_the_readings(stoves: Told) -> None:
    assert ">Corvane Sol</a>" in shown(stoves, "[?](first:gas-burned)")
    wrong = finding(stoves, "[Ostler Mk II](first:gas-burned)")
    assert "by the readings it is Corvane Sol" in wrong.says
    assert ">Corvane Sol</a>" in shown(stoves, "[Ostler Mk II](first:gas-burned)")


@pytest.mark.parametrize(
    ("reference", "address"),
    [
        ("[it](test:gas-burned)", "tests/gas-burned.html"),
        ("[it](contender:corvane)", "contenders/corvane.html"),
        ("[it](claim:corvane/c1)", "contenders/corvane.html#claim-c1"),
        ("[it](method:weigh)", "../methods/weigh.2.html"),
        ("[it](method:weigh.1)", "../methods/weigh.1.html"),
        ("[it](instrument:bench-scale)", "../instruments/bench-scale.html"),
        ("[it](page:about)", "../about.html"),
        ("[it](page:method)", "method.html"),
        ("[it](figure:gas-burned)", "tests/gas-burned.html#figure-gas-burned"),
        ("[it](raw/gas.csv)", "files/raw/gas.csv"),
        ("[it](https://example.org/)", "https://example.org/"),
    ],
)
def test_references_lead_to_the_addresses_of_the_site(stoves: Told, reference: str, address: str) -> None:
    text = rendered(stoves, reference)
    assert text.findings == ()
    assert text.markup == f'<p><a href="{address}">it</a></p>\n'


def test_spaces_and_underscores_in_a_reference_are_the_same_name(stoves: Told) -> None:
    assert "14.40 g" in shown(stoves, "[?](value:gas_burned/corvane) [?](<value:gas burned/corvane>)")
    assert rendered(stoves, "[?](<value:gas burned/corvane>)").findings == ()


@pytest.mark.parametrize(
    ("reference", "says", "do"),
    [
        ("[?](value:gas-burnt/corvane)", "No quantity is called “gas-burnt”.", "Did you mean “gas-burned”?"),
        ("[?](value:gas-burned/corvan)", "No contender is called “corvan”.", "Did you mean “corvane”?"),
        ("[?](value:gas-burned)", "“value:gas-burned” isn't whole.", "Write value:quantity/contender."),
        ("[x](method:weight)", "No method is called “weight”.", "Did you mean “weigh”?"),
        ("[x](claim:corvane/c9)", "No claim is called “c9”.", "There is: c1."),
        ("[x](page:abuot)", "No page is called “abuot”.", "Did you mean “about”?"),
        ("![x](figure:noise)", "No quantity is called “noise”.", "There is: gas-burned."),
    ],
)
def test_an_unknown_reference_is_an_error_with_its_place(stoves: Told, reference: str, says: str, do: str) -> None:
    found = finding(stoves, f"Some words,\nthen {reference}.")
    assert (found.severity, found.rule) == ("error", "unknown-reference")
    assert found.place == Place("stoves/conclusions.md", 2, 6)
    assert (found.says, found.do) == (says, do)


def test_a_chart_that_ends_a_paragraph_follows_it_with_the_authors_words(stoves: Told) -> None:
    text = rendered(stoves, "Little gas. ![Gas burned](figure:gas-burned)\n\nMore words.")
    assert [(p.figure, p.words) for p in text.pieces] == [("", ""), ("gas-burned", "Gas burned"), ("", "")]
    assert text.figures == ("gas-burned",)
    assert text.pieces[0].markup == "<p>Little gas. </p>\n"
    assert text.pieces[2].markup == "<p>More words.</p>\n"
    assert '<a href="tests/gas-burned.html#figure-gas-burned">Gas burned</a>' in text.markup


def test_a_chart_in_the_middle_of_a_sentence_is_a_link(stoves: Told) -> None:
    text = rendered(stoves, "See ![the chart](figure:gas-burned) for that.")
    assert text.figures == ()
    assert 'See <a href="tests/gas-burned.html#figure-gas-burned">the chart</a> for that.' in text.markup


def test_a_chart_without_words_gets_the_quantitys_title(stoves: Told) -> None:
    text = rendered(stoves, "![](figure:gas-burned)")
    assert text.pieces[0].words == "gas burned"


def test_a_picture_that_would_be_fetched_from_elsewhere_is_an_error(stoves: Told) -> None:
    assert finding(stoves, "![a flame](https://example.org/flame.png)").severity == "error"


def test_tags_are_shown_as_typed_and_never_become_markup(stoves: Told) -> None:
    text = rendered(stoves, '<script>alert(1)</script>\n\na <b onclick="x">b</b> [c](javascript:alert(1))')
    assert "<script" not in text.markup
    assert "<b" not in text.markup
    assert "href" not in text.markup
    assert "&lt;script&gt;" in text.markup


def test_apostrophes_are_printed_as_a_printer_sets_them_but_for_code(stoves: Told) -> None:
    assert shown(stoves, "It doesn't; testers' `'quoted'` says 'no'.") == (
        "<p>It doesn\u2019t; testers\u2019 <code>'quoted'</code> says 'no'.</p>"
    )


def test_headings_stand_below_the_pages_title_and_have_anchors_of_their_own(stoves: Told) -> None:
    text = rendered(stoves, "# What we *found*\n\n### Gas\n\n# What we found")
    assert [(h.level, h.words, h.anchor) for h in text.headings] == [
        (2, "What we found", "what-we-found"),
        (4, "Gas", "gas"),
        (2, "What we found", "what-we-found-2"),
    ]
    assert '<h2 id="what-we-found">What we <em>found</em></h2>' in text.markup


def test_references_work_inside_tables_and_lists(stoves: Told) -> None:
    text = shown(stoves, "| a |\n|---|\n| [?](value:gas-burned/corvane) |\n\n- [?](value:gas-burned/ostler)\n")
    assert "14.40 g</a></td>" in text
    assert "17.00 g</a></li>" in text


def test_a_page_of_no_campaign_answers_only_for_pages() -> None:
    resolve = site_resolver("handbook/first.html", {"about": "about.html"})
    text = render(ProseFile("first", "content/handbook/first.md", "[us](page:about) [?](value:a/b)"), resolve)
    assert '<a href="../about.html">us</a>' in text.markup
    assert [f.severity for f in text.findings] == ["error"]


def test_all_references_of_a_campaign_are_checked_at_once(stoves: Told) -> None:
    prose = (ProseFile("conclusions", "conclusions.md", "[1 g](value:gas-burned/corvane) [?](value:x/y)"),)
    declared = replace(stoves.declared, campaign=replace(stoves.campaign, prose=prose))
    assert [f.severity for f in check_references(declared, stoves.evaluation)] == ["warning", "error"]


def test_a_block_that_names_its_file_shows_the_name_above_it(stoves: Told) -> None:
    markup = shown(stoves, "# T\n\n```yaml campaign.yaml\ntitle: T\n```\n\n```sh\nreportgen view\n```\n")
    assert markup.index('class="file-name"') < markup.index("campaign.yaml</code>") < markup.index("title: T")
    assert markup.count("file-name") == 1
