"""Rules speak of where text begins and ends, never of left and right, so that a right-to-left page is a mirror image.

CSS Logical Properties and Values 1: `inline-start` follows the writing direction (section 2); four-value shorthands are
physical (4.4: top, right, bottom, left), so their second and fourth value must agree.
"""

from __future__ import annotations

import re

import pytest

from reportgen.theme import load_theme
from tests.theme.themes import OURS

PHYSICAL = re.compile(
    r"(?<![\w-])(?:(?:margin|padding|border|scroll-margin|scroll-padding)-(?:left|right)|left|right"
    r"|border-(?:top|bottom)-(?:left|right)-radius)(?:-\w+)?\s*:|(?:text-align|float|clear)\s*:\s*(?:left|right)\b"
)
SHORTHAND = re.compile(r"(?<![\w-])(?:margin|padding|inset|border-width|scroll-margin)\s*:\s*([^;{}]+)")


OF_ONE_WAY = re.compile(r'\[dir="(?:rtl|ltr)"\][^{}]*\{[^{}]*\}')  # a rule for pages of one direction may


def sides(value: str) -> list[str]:
    return re.findall(r"(?:[\w.%-]+\([^()]*(?:\([^()]*\)[^()]*)*\)|[^\s()]+)", value)


def test_the_search_finds_what_it_is_for() -> None:
    assert PHYSICAL.search("a { margin-left: 1em }")
    assert PHYSICAL.search("a{left:0}")
    assert PHYSICAL.search("a { text-align: right }")
    assert not PHYSICAL.search("a { margin-inline-start: 0; @bottom-left { } text-align: start }")
    assert not PHYSICAL.search(OF_ONE_WAY.sub("", '[dir="rtl"] .a [dir] h2 { margin-left: 0; }'))
    assert PHYSICAL.search(OF_ONE_WAY.sub("", '[dir="rtl"] .a { top: 0 } .b { margin-left: 0 }'))
    assert sides("0.1rem calc(1em + 2px) 0 min(1px, 2px)") == ["0.1rem", "calc(1em + 2px)", "0", "min(1px, 2px)"]


@pytest.mark.parametrize("theme", OURS)
def test_no_rule_speaks_of_left_or_right(theme: str) -> None:
    styles = load_theme(None, theme).styles
    found = {name: PHYSICAL.findall(OF_ONE_WAY.sub("", text)) for name, text in styles.items()}
    assert {name: left for name, left in found.items() if left} == {}


@pytest.mark.parametrize("theme", OURS)
def test_a_shorthand_of_four_is_the_same_on_both_sides(theme: str) -> None:
    lopsided = [
        (name, value)
        for name, text in load_theme(None, theme).styles.items()
        for value in SHORTHAND.findall(text)
        if len(found := sides(value)) == 4 and found[1] != found[3]
    ]
    assert lopsided == []
