"""A bound held against one contender's result: measured, counted, or how many of so many."""

from __future__ import annotations

from collections.abc import Sequence
from typing import get_args

from reportgen.addresses import part_called
from reportgen.evaluation.evaluated import Keys, Result
from reportgen.evaluation.told import QuantityTold
from reportgen.judgement.claim import Conformance, conformance
from reportgen.judgement.claim_counted import count_conformance, share_conformance
from reportgen.judgement.measured import Reason
from reportgen.metrology.formulas.near_nothing import Doubt

NOTHING: Keys = frozenset()
Bounds = tuple[float | None, float | None]  # at least, at most, in the quantity's unit


class NotThat(Exception):
    """A claim or condition that nothing could be held against, and what to do."""

    def __init__(self, rule: str, says: str, do: str = "") -> None:
        super().__init__(says)
        self.rule, self.says, self.do = rule, says, do


def held_against(
    quantity: str, contender: str, claimed: Bounds, told: Sequence[QuantityTold], part: str = ""
) -> tuple[Conformance, Keys]:
    """What a result says of a claim or condition, and what that rests on. `part`: the part it is about, where the
    quantity has a result for each. Raises `NotThat` for a part or a share that there can't be."""
    mine = [q for q in told if q.quantity == quantity]
    if part:
        mine = _of_part(mine, part)
    if len(mine) != 1:
        return _not_tested("parts-apart"), NOTHING
    result = next(r for r in mine[0].results if r.contender == contender)
    measured = next((m for m in mine[0].measured if m.name == contender), None)
    if result.blocked:
        return _not_tested("blocked"), result.rests_on
    if result.why_no_u in get_args(Doubt):
        return _not_tested("no-interval"), result.rests_on
    if result.kind != "measured":
        return _of_kind(result, claimed), result.rests_on
    if measured is None or mine[0].judged is None:
        return _not_tested("no-result"), result.rests_on
    at_least, at_most = claimed
    single = mine[0].judged.singles[contender]
    rules = mine[0].rules
    relative = rules is not None and rules.scatter == "relative"
    found = conformance(measured, single, at_least=at_least, at_most=at_most, relative=relative)
    return found, result.rests_on


def _not_tested(code: str) -> Conformance:
    return Conformance("not tested", None, "", Reason(code))


def _of_part(mine: Sequence[QuantityTold], part: str) -> list[QuantityTold]:
    known = dict.fromkeys(r.part for q in mine for r in q.results if r.part)
    asked = part_called(part, known)
    if asked is None:
        do = f"Name one of them: {', '.join(known)}." if known else "Take `part:` out."
        raise NotThat("unknown-part", f"there is no result for a part “{part}”", do)
    return [q for q in mine if any(r.part == asked for r in q.results)]


def _of_kind(result: Result, claimed: Bounds) -> Conformance:
    """Yes/no and counts are exact; a grade or an order is no number."""
    at_least, at_most = claimed
    if result.missing:
        return _not_tested("no-result")
    if result.kind == "yes/no" and result.yes is not None and result.of:
        if any(x is not None and not 0.0 <= x <= 1.0 for x in claimed):
            raise NotThat("claim-share", "how often something happens is a share, from 0 % to 100 %",
                          "Write it in percent, such as `at least: 90 %`.")  # fmt: skip
        return share_conformance(result.yes, result.of, at_least=at_least, at_most=at_most)
    if result.kind == "count":
        counts = [p.value for p in result.by_pass if p.value is not None and not p.excluded]
        if any(p.limit for p in result.by_pass if not p.excluded) or not counts:
            return _bounded(result, claimed)
        return count_conformance([round(n) for n in counts], at_least=at_least, at_most=at_most)
    return _not_tested("no-number")


def _bounded(result: Result, claimed: Bounds) -> Conformance:
    """Of a count that is only a bound, what the bound alone decides."""
    at_least, at_most = claimed
    over = [p.value for p in result.by_pass if p.value is not None and p.limit == "above" and not p.excluded]
    if at_most is not None and any(n >= at_most for n in over):
        return Conformance("contradicted", None, "this run", Reason("bound-decides", {"at_most": at_most}))
    numbers = {k: x for k, x in (("at_least", at_least), ("at_most", at_most)) if x is not None}
    return Conformance("undecided", None, "this run", Reason("bound-too-close", numbers))
