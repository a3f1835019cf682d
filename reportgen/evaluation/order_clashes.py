"""Looks that can't hold together: a pair said two ways in one look, or contenders that lead round in a circle."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reportgen.campaign.declared import Declared
from reportgen.evaluation.orders import Said, all_said
from reportgen.finding import Finding
from reportgen.intake.reading import Reading, Readings
from reportgen.judgement.orders.looks import Clash, Look, clashes


def order_clashes(declared: Declared, readings: Readings) -> Iterable[Finding]:
    """One finding for each clash within a look, at the later of the two rows, with the place of the other."""
    orders = [q for t in declared.campaign.tests for q in t.quantities if q.kind == "order"]
    kinds = {(q.test, name): q.id for q in orders for name in q.reads}
    by_look: dict[tuple[str, str], list[Reading]] = {}
    for reading in readings.readings.values():
        quantity = kinds.get((reading.key.test, reading.key.name))
        if quantity:
            by_look.setdefault((quantity, reading.key.part), []).append(reading)
    for each in by_look.values():
        each.sort(key=lambda r: (r.at.file, r.order))
        said = all_said(each)
        at = {s.look: s for s in said}
        yield from (_told(clash, at) for clash in clashes(s.look for s in said))


def _told(clash: Clash, at: Mapping[Look, Said]) -> Finding:
    one, other = at[clash.one], at[clash.other]
    words = f"“{other.reading.key.contender} {other.saying.text}”"
    before = f"“{one.reading.key.contender} {one.saying.text}” in {one.reading.at}"
    if len(clash.round_) == 2:
        says = f"{words} doesn't go together with {before}: one pair can't be said two ways in one look."
    else:
        says = f"{words} closes a circle with {before}: from the least on, {' – '.join(clash.round_)}."
    return Finding(
        "error",
        "order-circle",
        other.reading.at,
        says,
        "Within one look an order can't turn back on itself.",
        "Correct one of the two, or give them passes of their own if they were separate looks.",
        f"test/{other.reading.key.test}",
    )
