"""Everything the program says in English, in one table: a key, and the words with named gaps.

A gap stands in braces. Where the words depend on a number, an entry holds the forms by plural category (CLDR:
English has `one` and `other`) and the caller gives `n`. Another language is another module with the same keys.
"""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

DECIMAL_SIGN = "."
SMALL_NUMBERS = tuple("none one two three four five six seven eight nine ten eleven twelve".split())


def plural(n: int) -> str:
    """The plural category of a whole number (CLDR, English cardinal rules)."""
    return "one" if n == 1 else "other"


PHRASES: Mapping[str, str | Forms] = {
    # numbers and intervals
    "number.unknown": "not known",
    "interval.both": "{value} ({low} to {high})",
    "interval.from": "{value} ({low} or more)",
    "interval.up-to": "{value} ({high} or less)",
    "interval.range": "{low} to {high}",
    "interval.no-u": "{value} (uncertainty not known)",
    "interval.no-u-because": "{value} (uncertainty not known: {why})",
    "interval.u": "{value} ± {u}",
    "limit.above": "more than {value}",
    "limit.below": "less than {value}",
    "limit.above.unknown": "more than the meter can show",
    "limit.below.unknown": "less than the meter can show",
    "probability.over": "over {value}",
    "probability.under": "under {value}",
    "rank.range": "{first}–{last}",
}
