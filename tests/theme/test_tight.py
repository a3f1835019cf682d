"""A style sheet sent to readers says the same in fewer characters.

CSS Syntax 3: a comment stands for nothing (section 4), strings are one token (4.3.5), and space between two
compound selectors is the descendant combinator (Selectors 4, 15.1), so it must stay.
"""

from __future__ import annotations

from reportgen.theme.tight import tight


def test_comments_and_space_between_rules_go() -> None:
    assert tight("/* why */\na ,\n b {\n  color : red ;\n}\n") == "a,b{color :red;}"


def test_a_space_that_joins_selectors_or_terms_stays() -> None:
    assert tight(".a :hover { top: calc(1em + 2px); }") == ".a :hover{top:calc(1em + 2px);}"


def test_strings_stand_as_they_are() -> None:
    assert tight('a::before { content: " ;  /* no */ }\\""; }') == 'a::before{content:" ;  /* no */ }\\"";}'
