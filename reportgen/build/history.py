"""What other campaigns tell one of how far passes scatter: only those tested before it, by the same procedure.

Campaigns are worked out in the order they were tested, so a campaign is told of earlier ones alone and nothing can go
in circles. What it is told is part of what its results are made of, and so of every key under which they are kept.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from math import sqrt
from typing import TYPE_CHECKING

from reportgen.evaluation.history import Asked, History, PastLeftOut, PastScatter

if TYPE_CHECKING:
    from reportgen.campaign.declared import Campaign, Declared, Method, Test
    from reportgen.evaluation.evaluated import Evaluation, ScatterUsed

Others = Sequence[tuple["Declared", "Evaluation"]]


def in_order_of_testing(campaign: Campaign) -> tuple[str, str]:
    """What sorts campaigns so that each comes after all that were tested before it; undated ones come first."""
    tested = campaign.tested
    return (tested.first, tested.last) if tested else ("", "")


def history_of(declared: Declared, others: Others) -> History:
    """What `others` tell of the quantities for which this campaign's methods look back."""
    campaign = declared.campaign
    now = campaign.tested.first if campaign.tested else ""
    known: dict[Asked, list[PastScatter]] = {}
    left_out: dict[Asked, list[PastLeftOut]] = {}
    for method, quantity in _asked(campaign):
        asked = method.id, method.version, quantity
        for other, evaluation in others if now else ():
            _tell(other.campaign, evaluation, method, asked, now, known, left_out)
    return History(
        {asked: tuple(reversed(found)) for asked, found in known.items()},
        {asked: tuple(found) for asked, found in left_out.items()},
        undated=not now,
    )


def _asked(campaign: Campaign) -> Iterable[tuple[Method, str]]:
    for test in campaign.tests:
        method = campaign.methods.get(f"{test.method}.{test.method_version}")
        if method is not None:
            yield from ((method, q.id) for q in test.quantities if method.looks_back(q.id))


def _tell(
    other: Campaign,
    evaluation: Evaluation,
    method: Method,
    asked: Asked,
    now: str,
    known: dict[Asked, list[PastScatter]],
    left_out: dict[Asked, list[PastLeftOut]],
) -> None:
    used = list(_used(other, evaluation, asked))
    if not used or (other.tested and other.tested.last and other.tested.last >= now):
        return
    said = PastLeftOut(other.id, other.title, "undated")
    if not other.tested or not other.tested.last:
        left_out.setdefault(asked, []).append(said)
    elif not _alike(other.methods[f"{method.id}.{method.version}"], method):
        left_out.setdefault(asked, []).append(replace(said, why="another procedure"))
    else:
        known.setdefault(asked, []).extend(used)


def _used(other: Campaign, evaluation: Evaluation, asked: Asked) -> Iterable[PastScatter]:
    """What passes of the quantity showed there, part by part; nothing where there were no repeats, or where those that
    scatter are specimens."""
    quantity = asked[2]
    if any(result.by_specimens for result in evaluation.results if result.quantity == quantity):
        return
    tests = [t for t in other.tests if (t.method, t.method_version) == asked[:2]]
    for test, unit in ((t, q.unit) for t in tests for q in t.quantities if q.id == quantity):
        for scatter in evaluation.scatters:
            if scatter.quantity == quantity and scatter.seen and scatter.seen.within_degrees > 0:
                yield _past(other, test, scatter, unit)


def _past(other: Campaign, test: Test, scatter: ScatterUsed, unit: str) -> PastScatter:
    seen = scatter.seen
    assert seen is not None
    hidden = seen.rounding
    plain, within = (s if s * s >= 3.0 * hidden else sqrt(s * s + hidden) for s in (seen.sd, seen.within_sd))
    return PastScatter(
        other.id, other.title, plain, seen.degrees, within, float(seen.within_degrees), unit,
        test.scatter == "relative",
    )  # fmt: skip


def _alike(one: Method, other: Method) -> bool:
    """Whether it is the same procedure, wherever it is written down: a version that was changed on the quiet isn't."""
    return replace(one, origin="") == replace(other, origin="")
