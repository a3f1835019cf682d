"""Words of the trade are explained where a page says them first, and long pages have contents of their own."""

from __future__ import annotations

from collections.abc import Iterator

from reportgen.theme.sections import sections_of
from reportgen.theme.terms import MOST, Piece, Term, pieces_of

PASS = Term("pass", "Pass", ("pass", "passes"), "One repeat.")
DEGREES = Term("degrees", "Degrees", ("degree", "degrees of freedom"), "How well a scatter is known.")


def said(markup: str, *terms: Term) -> list[str]:
    return [str(piece.said) for piece in pieces_of(markup, terms) if piece.term]


def whole(pieces: tuple[Piece, ...]) -> str:
    return "".join(piece.markup + (piece.said or "") for piece in pieces)


def test_a_term_is_marked_where_it_is_said_first_and_nowhere_else() -> None:
    first, last = pieces_of("<p>Four passes each.</p><p>A pass more, one pass less.</p>", (PASS,))
    assert (first.markup, first.said, first.term) == ("<p>Four ", "passes", PASS)
    assert last.term is None


def test_nothing_of_the_page_is_lost_or_changed() -> None:
    page = "<h1>Pass</h1><p>Fish &amp; <em>passes</em>, degrees of freedom</p>\n<table><td>pass</td></table>"
    assert whole(pieces_of(page, (PASS, DEGREES))) == page


def test_links_headings_tables_names_and_folds_are_left_alone() -> None:
    for around in ("a", "h2", "table", "figure", "bdi", "details", "code", "nav", "svg"):
        assert said(f"<{around}><p>one pass</p></{around}>", PASS) == [], around
        assert said(f"<p>see <{around}>one pass</{around}> and a pass</p>", PASS) == ["pass"], around
    assert said("<ul><li>one pass</li></ul>", PASS) == []


def test_a_word_is_taken_whole_in_its_own_capitals_and_at_its_longest() -> None:
    assert said("<p>The compass of Pass, a by-pass, passed.</p>", PASS) == []
    assert said("<p>two degrees of freedom</p>", DEGREES) == ["degrees of freedom"]


def test_a_word_is_not_taken_for_one_with_a_mark_on_its_last_letter() -> None:
    """Such marks are no letters (Unicode: Mn), and a word with one is another word: Arabic writes case with them."""
    scatter = Term("scatter", "تشتت", ("تشتت",), "Means.")
    assert said("<p>يُحتسب تشتتًا، وهو تشتت واحد</p>", scatter) == ["تشتت"]
    assert pieces_of("<p>يُحتسب تشتتًا</p>", (scatter,))[0].term is None


def test_a_page_explains_no_more_than_it_can_bear() -> None:
    many = tuple(Term(f"t{n}", f"T{n}", (f"word{n}",), "Means.") for n in range(MOST + 3))
    text = " ".join(term.forms[0] for term in many)
    assert said(f"<p>{text}</p>", *many) == [f"word{n}" for n in range(MOST)]


def test_contents_name_the_sections_in_order_and_stand_under_the_title() -> None:
    page = sections_of(f"<h1>Stoves</h1><p>Two.</p>{''.join(headings('Verdict', 'Boil &amp; burn', 'How'))}")
    assert [(link.text, link.href) for link in page.sections] == [
        ("Verdict", "#s0"),
        ("Boil & burn", "#s1"),
        ("How", "#s2"),
    ]
    assert page.opening == "<h1>Stoves</h1>"


def test_a_template_may_say_where_contents_stand() -> None:
    page = sections_of("<h1>Stoves</h1><p>Answer.</p><!-- contents --><p>More.</p>")
    assert (page.opening, page.rest) == ("<h1>Stoves</h1><p>Answer.</p>", "<p>More.</p>")


def test_a_part_that_has_the_title_of_the_page_for_its_heading_may_name_itself() -> None:
    part = '<div class="quantity" id="of-gas" data-section="Gas &amp; time"><p>One leads.</p></div>'
    page = sections_of(f"<h1>Stoves</h1>{part}{''.join(headings('How', 'Workings'))}")
    assert [(link.text, link.href) for link in page.sections] == [
        ("Gas & time", "#of-gas"),
        ("How", "#s0"),
        ("Workings", "#s1"),
    ]


def test_few_sections_want_no_contents() -> None:
    assert sections_of("".join(headings("One", "Two"))).sections == ()


def headings(*titles: str) -> Iterator[str]:
    return (f'<h2 class="x" id="s{n}">{title}<sup>[1]</sup></h2>' for n, title in enumerate(titles))
