"""What CLDR says through Babel, against CLDR as Chromium's ICU has it (ECMA-402, `Intl`); and text that runs both ways.

ICU carries its own copy of CLDR and its own engines for plurals, numbers, dates and bidirectional text.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from decimal import Decimal
from typing import TYPE_CHECKING, Any

import pytest

from reportgen.browser.chromium import started
from reportgen.finding import Place
from reportgen.languages import load_language
from reportgen.languages.by_cldr import known
from reportgen.wording import interval, number
from reportgen.wording.language import say, speaking

if TYPE_CHECKING:
    from playwright.sync_api import Page

pytestmark = pytest.mark.browser

TAGS = ("ar", "cs", "de", "en", "fr", "he", "ja", "lt", "lv", "pl", "sl")
WHOLE = (*range(131), 200, 201, 202, 1000, 1003, 1011, 1_000_000)
DECIMALS = ("0.5", "1.0", "1.5", "2.0", "6.2", "11.0")


@pytest.fixture(scope="module")
def page() -> Iterator[Page]:
    with started() as browser:
        yield browser.new_page()


@pytest.mark.parametrize("tag", TAGS)
def test_plural_categories_are_those_of_icu(page: Page, tag: str) -> None:
    language = known(tag)
    assert language is not None
    script = "([tag, numbers]) => numbers.map(n => new Intl.PluralRules(tag).select(n))"
    assert [language.plural(n) for n in WHOLE] == page.evaluate(script, [tag, list(WHOLE)])
    # a printed 1.0 isn't 1: `v` counts the decimals shown (UTS 35, part 3, plural operands)
    script = """([tag, texts]) => texts.map(t => {
      const digits = {minimumFractionDigits: t.split('.')[1].length};
      return new Intl.PluralRules(tag, digits).select(Number(t));
    })"""
    assert [language.plural(Decimal(t)) for t in DECIMALS] == page.evaluate(script, [tag, list(DECIMALS)])


@pytest.mark.parametrize("tag", TAGS)
def test_decimal_signs_dates_lists_and_direction_are_those_of_icu(page: Page, tag: str) -> None:
    language = known(tag)
    assert language is not None
    told: dict[str, Any] = page.evaluate(
        """([tag, letters]) => ({
          number: new Intl.NumberFormat(tag + '-u-nu-latn').format(1.5),
          day: new Intl.DateTimeFormat(tag + '-u-nu-latn', {dateStyle: 'long', timeZone: 'UTC'})
            .format(new Date(Date.UTC(2026, 4, 2))),
          lists: [2, 4].map(n => new Intl.ListFormat(tag).format(letters.slice(0, n))),
          direction: (l => (l.getTextInfo ? l.getTextInfo() : l.textInfo).direction)(new Intl.Locale(tag)),
        })""",
        [tag, list(_letters(tag))],
    )
    assert told["number"] == f"1{language.decimal_sign}5"
    assert told["day"] == language.day(date(2026, 5, 2))
    assert told["lists"] == [_listed(language.phrases(), _letters(tag)[:n]) for n in (2, 4)]
    assert told["direction"] == ("rtl" if language.right_to_left else "ltr")


def _letters(tag: str) -> str:
    """ICU puts a hyphen before Latin letters in Hebrew lists, beyond CLDR's patterns."""
    return "אבגד" if tag == "he" else "abcd"


def _listed(phrases: dict[str, Any], items: str) -> str:
    before, *others = items
    for i, item in enumerate(others, 1):
        place = "two" if len(items) == 2 else "start" if i == 1 else "end" if i == len(others) else "middle"
        before = phrases[f"list.and.{place}"].format(before=before, last=item)
    return before


def test_in_text_from_right_to_left_each_number_and_name_runs_its_own_way(page: Page) -> None:
    arabic, _ = load_language(None, "ar", Place("content/publication.yaml"))
    with speaking(arabic):
        gap = interval.difference(-1.1, 0.2, -1.5, -0.7, "g")
        sentence = say("first.winner", winner="Corvane (Sol)", place=say("place.lower"), value=gap)
        bound = interval.bound(12.5, "g", "above")
        alone = number.fixed(-2.3, 1)
        rank = interval.rank_range((1, 2))
    assert _drawn(page, alone) == "−2.3"
    assert _drawn(page, rank) == "1–2"
    assert _drawn(page, bound).startswith("12.5 g")  # the words stand to its right: they are read first
    drawn = _drawn(page, sentence)
    assert drawn.endswith("Corvane (Sol)")
    assert "−1.10 g" in drawn
    assert "−0.70" in drawn
    assert drawn.index("−0.70") < drawn.index("−1.50") < drawn.index("−1.10 g") < drawn.index("Corvane")


def test_formulas_inside_a_phrase_are_drawn_from_left_to_right(page: Page) -> None:
    arabic, _ = load_language(None, "ar", Place("content/publication.yaml"))
    with speaking(arabic):
        covers, weighed = say("covers.about.instrument"), say("weighed.mean", u="0.31", count="4")
    assert "95%" in _drawn(page, covers)
    assert _drawn(page, weighed) == "0.31 ÷ √4"


def test_without_such_care_the_minus_would_stand_on_the_wrong_side(page: Page) -> None:
    """What the test above is for: left bare, the same browser draws the sign behind its number."""
    assert _drawn(page, "−2.3") == "2.3−"


def _drawn(page: Page, text: str) -> str:
    """The characters of a line from left to right, as a page that runs from right to left shows them."""
    page.set_content(
        '<!doctype html><html lang="ar" dir="rtl"><body style="width: 200em"><p id="line"></p></body></html>'
    )
    places = page.evaluate(
        """text => {
          const line = document.getElementById('line'); line.textContent = text;
          const node = line.firstChild, found = [];
          for (let i = 0; i < text.length; i++) {
            const range = document.createRange(); range.setStart(node, i); range.setEnd(node, i + 1);
            const box = range.getBoundingClientRect();
            if (box.width > 0) found.push([box.left, text[i]]);
          }
          return found;
        }""",
        text,
    )
    return "".join(character for _, character in sorted(places)).replace("\u00a0", " ")
