"""A style sheet sent to readers says the same in fewer characters.

CSS Syntax 3: a comment stands for nothing (section 4), strings are one token (4.3.5), the last declaration of a block needs
no semicolon (5.4.5), a number may begin with its point (4.3.12); space between two compound selectors is the descendant
combinator (Selectors 4, 15.1), so it must stay, while around `>` it says nothing (15.2).
"""

from __future__ import annotations

from reportgen.theme.tight import tight


def test_comments_and_space_between_rules_go() -> None:
    assert tight("/* why */\na ,\n b {\n  color : red ;\n}\n") == "a,b{color :red}"
    assert tight("a { b: c }\n\nd { e: f }") == "a{b:c}d{e:f}"


def test_the_last_semicolon_of_a_block_goes_and_the_others_stay() -> None:
    assert tight("@media print { a { b: c; d: e; } }") == "@media print{a{b:c;d:e}}"


def test_a_space_that_joins_selectors_or_terms_stays() -> None:
    assert tight(".a :hover > b { top: calc(1em + 2px); }") == ".a :hover>b{top:calc(1em + 2px)}"


def test_a_nought_before_a_point_goes_and_one_inside_a_number_stays() -> None:
    assert (
        tight("a { margin: 0.5em -0.25em 10.5em 0 calc(1em - 0.1em); }")
        == "a{margin:.5em -.25em 10.5em 0 calc(1em - .1em)}"
    )


def test_strings_stand_as_they_are() -> None:
    assert tight('a::before { content: " ; 0.5 > }/* no */ }\\""; }') == 'a::before{content:" ; 0.5 > }/* no */ }\\""}'
