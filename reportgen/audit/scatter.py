"""Rules on scatter: passes that contradict what was assumed of them, and what past campaigns could not tell."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from reportgen.audit.case import Case, Seen
from reportgen.evaluation.evaluated import ScatterUsed
from reportgen.prose.scatter_seen import apart_line, at_odds_line, left_out_lines, trend_line, uneven_line
from reportgen.prose.standing import Standing, standing
from reportgen.wording.language import say
from reportgen.wording.sentence import sentence


def uneven(case: Case) -> Iterable[Seen]:
    """One scatter was taken for all, and one contender scatters much further (Cochran's test, 1 %)."""
    return _each(case, uneven_line)


def climbing(case: Case) -> Iterable[Seen]:
    """All values climb or fall from pass to pass (one common slope, F test, 1 %)."""
    return _each(case, trend_line)


def apart(case: Case) -> Iterable[Seen]:
    """One pass stands apart from the others (Grubbs' test, 1 %); it stays."""
    return _each(case, apart_line)


def contradicted(case: Case) -> Iterable[Seen]:
    """Passes scatter otherwise than was stated, or was seen in past campaigns (F test, 1 %)."""
    return _each(case, at_odds_line)


def past_campaigns(case: Case) -> Iterable[Seen]:
    """A method asks past campaigns, and some with the same method, or all, can't be used."""
    for back in case.evaluation.looked_back:
        quantity = case.declared.campaign.quantity(back.quantity)
        place, subject = case.declared.at(f"quantity/{quantity.id}"), f"quantity/{quantity.id}"
        left_out = list(left_out_lines(back))
        for line in left_out:
            yield Seen(place, sentence(f"{quantity.title}: {line}"), subject)
        used = next((s.found.origin for s in case.evaluation.scatters if s.quantity == quantity.id), "none")
        if not back.campaigns and not left_out and used == "none":
            yield Seen(place, sentence(f"{quantity.title}: {say('past.none')}"), subject)


def _each(case: Case, line: Callable[[Standing, ScatterUsed], str]) -> Iterable[Seen]:
    campaign = case.declared.campaign
    for used in case.evaluation.scatters:
        said = line(standing(campaign, case.evaluation, used.quantity, used.part), used)
        if said:
            title = campaign.quantity(used.quantity).title
            about = f"{title}, {used.part}" if used.part else title
            subject = f"quantity/{used.quantity}"
            yield Seen(case.declared.at(subject), sentence(f"{about}: {said}"), subject)
