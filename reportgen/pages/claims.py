"""What a maker claims of a contender, and what was found of it."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import claim_anchor, from_to, test_page
from reportgen.campaign.declared import Campaign, Contender, Test
from reportgen.evaluation.evaluated import Result
from reportgen.pages.identity import Fact
from reportgen.pages.limits import CaveatMark, marks
from reportgen.pages.titles import heading
from reportgen.pages.told import Told
from reportgen.pages.traces import working
from reportgen.prose.claim import evidence, outcome_line, result_for
from reportgen.prose.sentences import claim_in_short
from reportgen.theme import Link
from reportgen.wording.decision import outcome
from reportgen.wording.sentence import capital


@dataclass(frozen=True)
class ClaimShown:
    """`sources` are the maker's words, each with where they stand; `outcome` one word; `evidence` what it rests on."""

    anchor: str
    sources: tuple[Fact, ...]
    bound: str
    outcome: str
    code: str
    evidence: str
    marks: tuple[CaveatMark, ...]
    test: Link | None


def claims_of(told: Told, page: str, c: Contender) -> tuple[ClaimShown, ...]:
    """Every claim of the contender as `page` shows it, in its order."""
    outcomes = {o.claim: o for o in told.evaluation.claims if o.contender == c.id}
    made = []
    for claim in c.claims:
        found = outcomes.get(claim.id)
        result = result_for(told.evaluation, found, claim) if found and claim.quantity else None
        test = _test_of(told.campaign, claim.quantity)
        made.append(
            ClaimShown(
                anchor=claim_anchor(claim.name),
                sources=tuple(Fact(source, said) for source, said in claim.says.items()),
                bound=claim_in_short(claim),
                outcome=capital(outcome_line(c, claim, found, result) if found else outcome("not tested")),
                code=(found.outcome if found else "not tested").replace(" ", "-"),
                evidence=evidence(told.campaign, c, claim, found, result) if found else "",
                marks=marks(told.evaluation.caveats_on(claim.quantity, found.rests_on)) if found else (),
                test=_leads_to(told, page, claim.quantity, test, result) if test else None,
            )
        )
    return tuple(made)


def _leads_to(told: Told, page: str, quantity: str, test: Test, result: Result | None) -> Link:
    """From a claim to the working of the result it is held against; to the test where there is none."""
    title = heading(told.campaign.quantity(quantity), result.part if result else "")
    if result is None or result.missing:
        return Link(title, from_to(page, test_page(told.campaign.id, test.id)))
    return Link(title, working(told.campaign, page, test.id, quantity, result.contender, result.part))


def _test_of(campaign: Campaign, quantity: str) -> Test | None:
    return next((t for t in campaign.tests if any(q.id == quantity for q in t.quantities)), None)
