"""Everything the program says in English, as one table: a key, and the words with named gaps.

A gap stands in braces. Where the words depend on a number, an entry holds the forms by plural category (CLDR:
English has `one` and `other`) and the caller gives `n`. Another language is another module with the same keys.
"""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.english_answers import ANSWERS
from reportgen.wording.english_budgets import BUDGETS
from reportgen.wording.english_counted import COUNTED
from reportgen.wording.english_draws import DRAWS
from reportgen.wording.english_fairness import FAIRNESS
from reportgen.wording.english_instruments import INSTRUMENTS
from reportgen.wording.english_met import MET
from reportgen.wording.english_money import MONEY
from reportgen.wording.english_orders import ORDERS
from reportgen.wording.english_products import PRODUCTS
from reportgen.wording.english_quantities import QUANTITIES
from reportgen.wording.english_reach import REACH
from reportgen.wording.english_scatter import SCATTER
from reportgen.wording.english_sentences import SENTENCES
from reportgen.wording.english_verdict import VERDICT
from reportgen.wording.english_words import WORDS
from reportgen.wording.phrase import Forms

DECIMAL_SIGN = "."
SMALL_NUMBERS = (
    *("none", "one", "two", "three", "four", "five", "six"),
    *("seven", "eight", "nine", "ten", "eleven", "twelve"),
)


def plural(n: int) -> str:
    """The plural category of a whole number (CLDR, English cardinal rules)."""
    return "one" if n == 1 else "other"


def inside(title: str) -> str:
    """A title inside a sentence: its capital falls, but not that of an abbreviation (`CO at idle`)."""
    return title[:1].lower() + title[1:] if title[1:2].islower() or title[1:2] == " " else title


PHRASES: Mapping[str, str | Forms] = {
    **WORDS, **SENTENCES, **ANSWERS, **PRODUCTS, **MET, **FAIRNESS, **ORDERS, **QUANTITIES, **INSTRUMENTS, **BUDGETS,
    **COUNTED, **DRAWS, **MONEY, **VERDICT, **SCATTER, **REACH,
}  # fmt: skip
