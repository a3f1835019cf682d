"""What Unicode's Common Locale Data Repository (CLDR, through Babel) knows of a language: plurals, signs, dates, lists.

Loaded only where a publication isn't in English.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from functools import lru_cache
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from babel import Locale

    from reportgen.wording.phrase import Forms

TRIED = (*range(201), 1000)  # whole numbers among which each category of those a language needs turns up
GIVEN = ("day", "day.month")  # phrases that a date from CLDR makes needless


@dataclass(frozen=True)
class Known:
    """`categories` maps each plural category that whole numbers have in this language to the first such numbers."""

    locale: Locale
    categories: Mapping[str, tuple[int, ...]]

    @property
    def decimal_sign(self) -> str:
        """Between whole digits and decimals, where digits are Western ones (CLDR, numbering system `latn`)."""
        symbols: Mapping[str, str] = self.locale.number_symbols["latn"]
        return symbols["decimal"]

    @property
    def right_to_left(self) -> bool:
        """Whether its lines run from right to left."""
        return bool(self.locale.character_order == "right-to-left")

    def plural(self, n: int | Decimal) -> str:
        """The plural category of a number as it is printed (UTS 35, part 3, "Language Plural Rules")."""
        return str(self.locale.plural_form(n))

    def day(self, of: date) -> str:
        """A date with its month in letters, in Western digits."""
        from babel.dates import format_date

        return format_date(of, format="long", locale=self.locale)

    def month(self, of: date) -> str:
        """A month in letters and its year, in Western digits."""
        from babel.dates import format_skeleton

        return format_skeleton("yMMMM", of, locale=self.locale)

    def phrases(self) -> dict[str, str | Forms]:
        """Phrases that no file needs to give: how a list reads, what stands for dates, the months inside one."""
        found: dict[str, str | Forms] = dict.fromkeys(GIVEN, "")
        months: Mapping[int, str] = self.locale.months["format"]["wide"]
        found |= {f"month.{n}": name for n, name in months.items()}
        for kind, style in (("and", "standard"), ("or", "or")):
            patterns: Mapping[str, str] | None = self.locale.list_patterns.get(style)
            for place, name in (("two", "2"), ("start", "start"), ("middle", "middle"), ("end", "end")):
                if patterns and name in patterns:
                    found[f"list.{kind}.{place}"] = patterns[name].replace("{0}", "{before}").replace("{1}", "{last}")
        return found


@lru_cache(maxsize=8)
def known(tag: str) -> Known | None:
    """What there is of the language with this tag; None for one that CLDR doesn't have."""
    from babel import Locale, UnknownLocaleError

    try:
        locale: Any = Locale.parse(tag.replace("-", "_"))
    except (UnknownLocaleError, ValueError):
        return None
    return Known(locale, _categories(locale))


def _categories(locale: Locale) -> dict[str, tuple[int, ...]]:
    found: dict[str, list[int]] = {}
    for n in TRIED:
        found.setdefault(str(locale.plural_form(n)), []).append(n)
    return {category: tuple(numbers[:3]) for category, numbers in found.items()}
