"""The comparisons of one quantity, pair by pair, with reasons and with what would settle them."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import pair_anchor
from reportgen.campaign.declared import Quantity
from reportgen.evaluation.evaluated import Comparison
from reportgen.judgement.measured import Settle
from reportgen.pages.named import Named, named
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.prose.amounts import typed_apart
from reportgen.prose.by_chance import CODES as BY_CHANCE
from reportgen.prose.by_chance import settle_by_chance
from reportgen.prose.comparison import decided
from reportgen.prose.percent import percent_line
from reportgen.prose.sentences import pair_cell
from reportgen.prose.standing import standing
from reportgen.wording import interval
from reportgen.wording.count import roughly
from reportgen.wording.percent import apart
from reportgen.wording.reason import why
from reportgen.wording.sentence import capital, sentence

IN_THE_MEANING = ("lead-exceeds", "lead-within", "inside-matters", *BY_CHANCE)  # what it means has their numbers


@dataclass(frozen=True)
class PairShown:
    """`anchor` is where words about the pair lead; `difference` is first minus second with its interval; `settle` what
    would settle it, "" where nothing is open; `percent` the difference in percent of second, "" where that has no
    meaning."""

    anchor: str
    first: Named
    second: Named
    difference: str
    decision: str
    open: bool
    means: str
    why: str
    settle: str
    percent: str = ""


def pairs_of(told: Told, page: str, quantity: Quantity, part: str = "") -> tuple[PairShown, ...]:
    """Every pair of the quantity, in the campaign's order."""
    shown = []
    of = [r for r in told.evaluation.results if (r.quantity, r.part) == (quantity.id, part)]
    by_specimens = any(r.by_specimens for r in of)
    for c in told.evaluation.comparisons:
        if (c.quantity, c.part) != (quantity.id, part):
            continue
        means = pair_cell(told.campaign, told.evaluation, c.quantity, c.first, c.second, c.part).means
        shown.append(
            PairShown(
                anchor=pair_anchor(c.quantity, c.first, c.second, c.part),
                first=named(told.campaign, c.first, page),
                second=named(told.campaign, c.second, page),
                difference=difference(c),
                decision=capital(decided(told.campaign, c)),
                open=not c.resolved,
                means=means,
                why=_why(c, means),
                settle=_settle_by_chance(told, c) if c.reason.code in BY_CHANCE else settle(c, quantity, by_specimens),
                percent=percent_line(told.campaign, c),
            )
        )
    return tuple(shown)


def stricter(told: Told, quantity: Quantity, part: str = "") -> str:
    """That pairs without the winner have wider intervals than those with it; "" where all are of one kind."""
    of = [c for c in told.evaluation.comparisons if (c.quantity, c.part) == (quantity.id, part)]
    first = next((f for f in told.evaluation.firsts if (f.quantity, f.part) == (quantity.id, part)), None)
    if first is None or not first.winner:
        return ""
    known = [first.winner in (c.first, c.second) for c in of if c.low is not None]
    return words("pairs.stricter", winner=told.campaign.contender(first.winner).title) if len(set(known)) == 2 else ""


def _why(c: Comparison, means: str) -> str:
    """The rule that decided, where what it means doesn't say it already."""
    reason = why(c.reason.code)
    return "" if reason in means or c.reason.code in IN_THE_MEANING else capital(reason)


def difference(c: Comparison) -> str:
    """First minus second with its interval: the one a repeat must keep to, else the instrument's."""
    if c.difference is None:
        return ""
    low, high = (c.low, c.high) if c.low is not None else (c.differed_low, c.differed_high)
    return interval.difference(c.difference, c.u, low, high, apart(c.unit))


def _settle_by_chance(told: Told, c: Comparison) -> str:
    said = settle_by_chance(standing(told.campaign, told.evaluation, c.quantity, c.part), c)
    return sentence(said) if said else ""


def _otherwise(found: Settle) -> str:
    """What would settle a pair that passes don't; "" where nothing known would."""
    if found.finer:
        return words("settle.finer")
    if found.specimens is not None:
        return words("settle.apart", n=roughly(found.specimens))
    return words("settle.calibration") if found.calibration else ""


def settle(c: Comparison, quantity: Quantity, by_specimens: bool = False) -> str:
    """What would settle the pair, "" where it is settled: so many passes each, or specimens where those scatter."""
    if c.settle is None or c.resolved:
        return ""
    if c.settle.passes is None:
        return _otherwise(c.settle)
    count = roughly(c.settle.passes)
    n = words("settle.of-specimens", n=count) if by_specimens else words("settle.of-passes", n=count)
    if c.settle.at == "matters" and quantity.matters is not None:
        return words("settle.matters", n=n, difference=typed_apart(quantity.matters))
    return words("settle.passes", n=n, difference=interval.value_only(abs(c.settle.difference), c.u, apart(c.unit)))
