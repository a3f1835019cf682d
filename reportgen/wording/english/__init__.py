"""Everything the program says in English, as one table: a key, and the words with named gaps.

A gap stands in braces. Where the words depend on a number, an entry holds the forms by plural category (CLDR:
English has `one` and `other`) and the caller gives `n`. Another language is another module with the same keys.
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

from reportgen.wording.english.absent import ABSENT
from reportgen.wording.english.across import ACROSS
from reportgen.wording.english.answers import ANSWERS
from reportgen.wording.english.budgets import BUDGETS
from reportgen.wording.english.charts import CHARTS
from reportgen.wording.english.counted import COUNTED
from reportgen.wording.english.draws import DRAWS
from reportgen.wording.english.exploring import EXPLORING
from reportgen.wording.english.fairness import FAIRNESS
from reportgen.wording.english.finding import FINDING
from reportgen.wording.english.instruments import INSTRUMENTS
from reportgen.wording.english.met import MET
from reportgen.wording.english.money import MONEY
from reportgen.wording.english.open_data import OPEN_DATA
from reportgen.wording.english.orders import ORDERS
from reportgen.wording.english.pages import PAGES
from reportgen.wording.english.paper import PAPER
from reportgen.wording.english.preview import PREVIEW
from reportgen.wording.english.products import PRODUCTS
from reportgen.wording.english.quantities import QUANTITIES
from reportgen.wording.english.reach import REACH
from reportgen.wording.english.reading import READING
from reportgen.wording.english.report_items import REPORT_ITEMS
from reportgen.wording.english.scatter import SCATTER
from reportgen.wording.english.sentences import SENTENCES
from reportgen.wording.english.side_by_side import SIDE_BY_SIDE
from reportgen.wording.english.site import SITE
from reportgen.wording.english.templates_money import TEMPLATES_MONEY
from reportgen.wording.english.templates_wide import TEMPLATES_WIDE
from reportgen.wording.english.templates_workings import TEMPLATES_WORKINGS
from reportgen.wording.english.terms import TERMS
from reportgen.wording.english.verdict import VERDICT
from reportgen.wording.english.view import VIEW
from reportgen.wording.english.words import WORDS
from reportgen.wording.phrase import Forms

DECIMAL_SIGN = "."
SMALL_NUMBERS = (
    *("none", "one", "two", "three", "four", "five", "six"),
    *("seven", "eight", "nine", "ten", "eleven", "twelve"),
)


def plural(n: int | Decimal) -> str:
    """The plural category of a number (CLDR, English cardinal rules: one is `i = 1 and v = 0`, so 1.0 is other)."""
    return "one" if str(n) == "1" else "other"


def inside(title: str) -> str:
    """A title inside a sentence: its capital falls, but not that of an abbreviation (`CO at idle`)."""
    return title[:1].lower() + title[1:] if title[1:2].islower() or title[1:2] == " " else title


PHRASES: Mapping[str, str | Forms] = {
    **WORDS, **ABSENT, **SENTENCES, **ANSWERS, **PRODUCTS, **MET, **FAIRNESS, **ORDERS, **QUANTITIES, **INSTRUMENTS,
    **BUDGETS, **COUNTED, **DRAWS, **MONEY, **VERDICT, **SCATTER, **REACH, **CHARTS, **EXPLORING, **PAGES,
    **OPEN_DATA, **PAPER, **SIDE_BY_SIDE, **ACROSS, **FINDING, **PREVIEW, **SITE, **READING, **VIEW,
    **TEMPLATES_MONEY, **TEMPLATES_WIDE, **TEMPLATES_WORKINGS, **REPORT_ITEMS, **TERMS,
}  # fmt: skip
