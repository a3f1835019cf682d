"""A text that is too long is cut between letters, as readers take them, and reads on where its script does."""

from __future__ import annotations

import pytest

from reportgen.charts.letters import characters, cut, length, px_of
from reportgen.charts.side import lines_of

FAMILY = "\U0001f468\u200d\U0001f469\u200d\U0001f467"  # joined by U+200D: one letter (Unicode Annex 29, GB11)
FLAG = "\U0001f1e6\U0001f1f9"  # two regional indicators: one letter (GB12)


def test_what_fits_stays_whole() -> None:
    assert cut("Tamsin Lee", 12) == "Tamsin Lee"
    assert cut("", 3) == ""


def test_what_is_cut_is_no_longer_than_its_place() -> None:
    for name in (
        "Wieselburgeramerikanische",
        "WWWWWWWWWWWWWWWW",
        "iiiiiiiiiiiiiiiiiiiiiiiiiiiiiiii",
        "焚き火ストーブ丸型大型",
    ):
        assert cut(name, 12).endswith("…")
        assert length(cut(name, 12)) <= 12


def test_wide_letters_take_more_room_than_narrow_ones() -> None:
    assert px_of("WWWW", 13) > px_of("焚火焚火", 13) * 0.98 > px_of("aaaa", 13) > px_of("iiii", 13)
    assert length("a\u0308") == length("a"), "an accent has no width of its own"


def test_marks_of_direction_take_no_room() -> None:
    """U+2066 to U+2069 are default-ignorable code points: nothing is drawn for them (Unicode Standard, 5.21)."""
    apart = "\u2068−2.30\u2069"
    assert (characters(apart), length(apart), px_of(apart, 13)) == (5, length("−2.30"), px_of("−2.30", 13))


@pytest.mark.parametrize("one", [FAMILY, FLAG, "e\u0301", "\U0001f44d\U0001f3fd"])
def test_nothing_is_cut_inside_one_letter(one: str) -> None:
    text = one * 12
    kept = cut(text, 9).removesuffix("…")
    assert 0 < len(kept) < len(text)
    assert kept == one * (len(kept) // len(one))


def test_an_ellipsis_stands_where_the_text_reads_on() -> None:
    """A mark that runs to the left (U+200F) keeps it on the left of a text in Arabic (Unicode Annex 9, N1)."""
    assert cut("موقد كورفان سول الكبير", 10).endswith("…\u200f")
    assert cut("Corvane Sol the Greater", 10).endswith("e…")


def test_a_long_name_stands_on_two_lines_the_second_with_all_the_rest() -> None:
    assert lines_of("Brindle Hearth") == ("Brindle", "Hearth")
    assert lines_of("One two three four five six seven")[0] == "One two"
    assert lines_of("One two three four five six seven")[1].startswith("three f")
    assert len(lines_of("One two three four five six seven")) == 2
