"""What charts say in English: fixed words with named gaps, in one table."""

from __future__ import annotations

from collections.abc import Mapping

PHRASES: Mapping[str, str] = {
    "lower": "← less is better",
    "higher": "more is better →",
    "cheaper": "← cheaper",
    "axis": "{what}, {unit}",
    "matters": "{amount} would matter",
    "not ranked": "not ranked",
    "not read": "not read",
    "unknown limit": "how far isn’t known",
    "contender": "Contender",
    "result": "Result",
    "passes": "Passes",
    "left out": "Left out",
    "place": "Place",
    "key.pass": "Each dot is one pass",
    "key.excluded": "a cross is one that was left out",
    "key.single": "Each upright line is one reading",
    "key.value": "the upright line is their mean",
    "key.bar": "the bar behind it holds the true value 95 times in 100",
    "key.thin": "the thin line is what the instrument alone leaves open",
    "key.arrow": "an arrow begins where the meter stopped",
    "key.tie": "a bracket joins those that can’t be told apart",
    "key.band": "the grey band is as wide as a difference that would matter",
    "alt.row": "{contender}: {result}",
    "alt.more": "and {n} more in the table",
}


def words(key: str, **gaps: str) -> str:
    """The words of `key` with their gaps filled; KeyError for what isn't in the table."""
    return PHRASES[key].format_map(gaps)


def sentence(parts: list[str]) -> str:
    """Phrases joined into one sentence: a capital in front, commas between, a full stop."""
    told = "; ".join(p for p in parts if p)
    return f"{told[:1].upper()}{told[1:]}." if told else ""
