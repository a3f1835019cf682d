"""The notes of the grid: those that could change who is first stand in view, the rest under one fold."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from reportgen.evaluation.evaluated import Caveat, Result
from reportgen.pages.led import led_on
from reportgen.pages.limits import CaveatShown, shown
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.prose.not_in_grid import notes_elsewhere
from reportgen.prose.places import Place, comes_first, placed, shares
from reportgen.theme import Link
from reportgen.wording.count import whole
from reportgen.wording.listing import and_list

FEW = 2  # notes that aren't worth a fold
SAID_OF_ALL = ("caveat", "assumption", "accepted")  # limits in the author's words, not what happened to one run


@dataclass(frozen=True)
class Notes:
    """`folded` stand under `summary`, which counts them and says of what sorts they are; `elsewhere` leads to those
    whose numbers are passed over."""

    in_view: tuple[CaveatShown, ...]
    folded: tuple[CaveatShown, ...]
    summary: str
    elsewhere: tuple[Link, ...]


def notes_of(told: Told, page: str) -> Notes:
    """The notes that limit what the grid shows, in their numbers' order."""
    campaign, evaluation = told.campaign, told.evaluation
    headlines = {t.headline for t in campaign.tests}
    places = {(f.quantity, f.part): placed(campaign, evaluation, f) for f in evaluation.firsts}
    bearing: dict[int, Caveat] = {}
    weighty: set[int] = set()
    for r in evaluation.results:
        for c in evaluation.caveats_on(r.quantity, r.rests_on) if r.quantity in headlines else ():
            bearing[c.number] = c
            if could_change_first(c, r, places.get((r.quantity, r.part))):
                weighty.add(c.number)
    if len(bearing) - len(weighty) <= FEW:
        weighty = set(bearing)
    caveats = {n: shown(campaign, bearing[n], page) for n in sorted(bearing)}
    folded = tuple(caveats[n] for n in caveats if n not in weighty)
    return Notes(
        in_view=tuple(caveats[n] for n in caveats if n in weighty),
        folded=folded,
        summary=_summary({n: c for n, c in bearing.items() if n not in weighty}),
        elsewhere=led_on(page, notes_elsewhere(campaign, evaluation, set(bearing))),
    )


def could_change_first(caveat: Caveat, result: Result, place: Place | None) -> bool:
    """Whether a note on one result could change who is first there: it keeps the result from being ranked, leaves
    passes out, pulls a first place down or one behind up, or limits what a first place means at all.
    """
    if caveat.blocks or caveat.sort == "exclusion":
        return True
    if place is None:
        return False
    if caveat.sort == "records":
        return any(o.moves for o in caveat.otherwise if o.quantity == result.quantity)
    first = result.contender in place.front
    if caveat.pushes:
        better_than_read = caveat.pushes == ("down" if place.s.quantity.better == "higher" else "up")
        return first or ((caveat.pushes == "unknown" or better_than_read) and bool(place.front))
    if not (comes_first(place) or shares(place)):
        return False
    if caveat.sort in ("amendment", "running"):
        return first or caveat.sort == "amendment"
    return caveat.sort in SAID_OF_ALL and (first or not caveat.contender)


def _summary(folded: Mapping[int, Caveat]) -> str:
    """How many, and of what sorts, in the order of their numbers; "" where none is folded."""
    if not folded:
        return ""
    sorts = dict.fromkeys(words(f"notes.{folded[n].sort}") for n in sorted(folded))
    return words("notes.more", count=whole(len(folded)), sorts=and_list(list(sorts)))
