"""How makers' claims would stand with the other of two records: told where the outcome or the chance would change."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from reportgen.campaign.declared import Declared
from reportgen.evaluation.claims import claim_outcomes
from reportgen.evaluation.evaluated import ClaimOutcome
from reportgen.evaluation.told import QuantityTold
from reportgen.metrology.unit import Unit
from reportgen.wording.interval import probability
from reportgen.wording.language import say
from reportgen.wording.met import Met


def claims_otherwise(
    declared: Declared,
    said: str,
    now: Sequence[QuantityTold],
    then: Sequence[QuantityTold],
    units: Mapping[str, Unit],
) -> Iterable[Met]:
    """A sentence for each claim that the record `said` would move."""
    before, after = claim_outcomes(declared, now, units), claim_outcomes(declared, then, units)
    for one, other in zip(before, after, strict=True):
        if _stands(one) == _stands(other):
            continue
        contender = declared.campaign.contender(one.contender)
        claim = next(c for c in contender.claims if c.id == one.claim)
        gaps = {
            "other": said,
            "claim": next(iter(claim.says.values())),
            "name": contender.title,
            "then": _stands(other),
            "now": _stands(one),
        }
        if one.outcome == other.outcome and one.probability is not None and other.probability is not None:
            gaps |= {"then": probability(other.probability), "now": probability(one.probability)}
            yield Met("records.chance", gaps)
            continue
        yield Met("records.claim", gaps)


def _stands(outcome: ClaimOutcome) -> str:
    """ "undecided (chance 74 %)"."""
    word = say(f"outcome.{outcome.outcome}".replace(" ", "-"))
    if outcome.probability is None:
        return word
    return say("outcome.chance", outcome=word, probability=probability(outcome.probability))
