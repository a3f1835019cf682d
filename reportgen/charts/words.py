"""What charts say in English: fixed words with named gaps, in one table."""

from __future__ import annotations

from collections.abc import Mapping

PHRASES: Mapping[str, str] = {
    "lower": "← less is better",
    "higher": "more is better →",
    "grade.lower": "← better",
    "grade.higher": "better →",
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
    "key.value.specimens": "the upright line is the mean of what each specimen gave",
    "key.bar": "the bar behind it is its 95\u00a0% range",
    "key.thin": "the thin line is what the instrument alone leaves open",
    "key.arrow": "an arrow begins where the meter stopped",
    "key.break": "behind a double stroke it begins further off than the axis reaches",
    "key.tie": "a bracket joins those that can’t be told apart",
    "key.tie.once": "a bracket joins those whose order a repeat may change",
    "key.band": "the grey band is as wide as a difference that would matter",
    "key.yes": "A filled dot is a yes, an open one a no, in the order of the passes",
    "key.count": "A bar is the count, from zero",
    "key.count.mean": "A bar is the mean count, from zero",
    "key.small-pass": "each dot is one pass",
    "key.grade": "Each dot is one pass at the grade it got",
    "key.grade.middle": "the line above them marks the middle grade",
    "key.order": "A line joins two that were set side by side, the one further right being more",
    "key.order.alike": "a double line joins two that were about alike",
    "key.order.both-ways": "a crossed line joins two on which the looks don’t agree",
    "key.order.follows": "a dashed line joins two whose order only follows from others",
    "key.order.places": "without a line two were never compared, wherever they stand",
    "order.less": "← less",
    "order.more": "more →",
    "key.overview": "A block reaches from the best to the worst place that its contenders may hold",
    "key.overview.tie": "those in one block may change places in a repeat",
    "key.overview.open": "where blocks overlap, so do the places",
    "key.money": "Each mark is one contender, the upright line its interval",
    "key.money.range": "a lying line is a price range",
    "key.money.beaten": "an open mark is beaten by one that costs no more, is better in something and worse in nothing",
    "of": "{yes} of {of}",
    "place.head": "place",
    "overview.title": "Who may stand where",
    "overview.first": "{name} alone is first in {quantities}.",
    "overview.no-first": "Nobody is alone in first place in any quantity.",
    "money.title": "Price against {what}",
    "money.axis": "price, {currency}",
    "money.lower": "↓ less is better",
    "money.higher": "↑ more is better",
    "money.beaten": "{name} is beaten by {by} at no higher price.",
    "price": "Price",
    "beaten": "Beaten by",
    "quantity": "Quantity",
    "money.none-beaten": "None is beaten by another at no higher price.",
    "absent.nothing": "nothing has been read yet",
    "absent.no-ranks": "nothing here is ranked",
    "absent.one-rank": "one quantity is ranked, and its own chart shows it",
    "absent.many": "with more than {n} contenders the table reads better than a chart of places",
    "absent.no-prices": "prices are not given for two contenders or more",
    "absent.currencies": "the prices are in different currencies",
    "absent.grades": "no grades are declared",
    "alt.row": "{name}: {said}",
    "alt.more": "and {n} more in the table",
}


def words(key: str, **gaps: str) -> str:
    """The words of `key` with their gaps filled; KeyError for what isn't in the table."""
    return PHRASES[key].format_map(gaps)


def sentence(parts: list[str]) -> str:
    """Phrases joined into one sentence: a capital in front, commas between, a full stop."""
    told = "; ".join(p for p in parts if p)
    return f"{told[:1].upper()}{told[1:]}." if told else ""
