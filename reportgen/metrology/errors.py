"""What this library says when it can't answer: what is wrong, and what to do about it."""

from __future__ import annotations

from collections.abc import Iterable


class MetrologyError(Exception):
    """Something asked for has no sound answer. `says` is what is wrong, `do` what mends it ("" for nothing known)."""

    def __init__(self, says: str, do: str = "") -> None:
        self.says = says
        self.do = do
        super().__init__(f"{says}; {do}" if do else says)


class UnitError(MetrologyError):
    """A unit that isn't known, or two units that don't go together."""


class NoValue(MetrologyError):
    """The formula is sound but these readings give no value: a division by nothing, bounds that pull apart.

    `column` counts from 1 in the formula's text; 0 where no formula is involved.
    """

    def __init__(self, says: str, do: str = "", column: int = 0) -> None:
        self.column = column
        super().__init__(says, do)


class FormulaError(MetrologyError):
    """A formula that can't be used; `column` counts characters of its text from 1."""

    def __init__(self, column: int, says: str, do: str = "") -> None:
        self.column = column
        super().__init__(says, do)


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """`did you mean X?` for the nearest of the known words, or the only one that begins so; "" where none is near.

    Capitals don't count against a word.
    """
    from difflib import get_close_matches  # 5 ms that only a misspelling pays

    folded: dict[str, str] = {}
    for each in known:
        folded.setdefault(each.casefold(), each)
    begun = [each for each in folded if len(word) > 2 and each.startswith(word.casefold())]
    near = get_close_matches(word.casefold(), folded, n=1, cutoff=0.7) or (begun if len(begun) == 1 else [])
    return f"did you mean {folded[near[0]]}?" if near else ""
