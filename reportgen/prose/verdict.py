"""The campaign as a whole: its answer, how firm it is, conditions, and value for money."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.campaign.declared import Campaign, Must
from reportgen.evaluation.evaluated import Evaluation, FirstPlace, MustOutcome, ValueForMoney
from reportgen.prose import amounts
from reportgen.prose.claim import bound
from reportgen.prose.standing import name, names
from reportgen.wording.count import in_words
from reportgen.wording.language import say, say_of
from reportgen.wording.listing import and_list
from reportgen.wording.sentence import capital, inside, paragraph, sentence

_NAMED_AT_MOST = 3  # quantities; beyond these a count reads better


def campaign_answer(campaign: Campaign, evaluation: Evaluation) -> str:
    """The answer in at most two sentences: who comes first on what, and where nobody does."""
    if all(r.missing for r in evaluation.results):
        return sentence(say("answer.not-tested"))
    if not evaluation.firsts:
        return sentence(say("answer.unranked-only"))
    overall = evaluation.verdict.winner if evaluation.verdict else None
    opening = say("answer.overall", winner=name(campaign, overall)) if overall else ""
    return paragraph(opening, _by_quantity(campaign, evaluation))


def _by_quantity(campaign: Campaign, evaluation: Evaluation) -> str:
    firsts = evaluation.firsts
    winners = list(dict.fromkeys(f.winner for f in firsts if f.winner))
    open_ = [f for f in firsts if not f.winner]
    if not winners:
        return say_of(len(firsts), "answer.nobody", quantities=_titles(campaign, firsts), count=in_words(len(firsts)))
    if len(winners) == 1 and not open_ and len(firsts) > _NAMED_AT_MOST:
        return say("answer.best-on-all", winner=name(campaign, winners[0]), count=in_words(len(firsts)))
    said = [
        say(
            "answer.best-on",
            winner=name(campaign, w),
            quantities=_titles(campaign, [f for f in firsts if f.winner == w]),
        )
        for w in winners
    ]
    if open_:
        said.append(say_of(len(open_), "answer.rest", quantities=_titles(campaign, open_), count=in_words(len(open_))))
    return say("answer.join").join(said)


def how_firm(campaign: Campaign, evaluation: Evaluation) -> str:
    """On what the answer rests: how many tests have repeats, and that it is about what was bought."""
    compared = list(dict.fromkeys(f.test for f in evaluation.firsts))
    if not compared:
        return ""
    by_quantity = {(f.quantity, f.part): f.test for f in evaluation.firsts}
    known = {
        test
        for s in evaluation.scatters
        if s.found.origin != "none" and (test := by_quantity.get((s.quantity, s.part))) is not None
    }
    n, of = len(known), len(compared)
    firm = say("firm.all") if n == of else say("firm.none") if not n else ""
    firm = firm or capital(say_of(n, "firm.some", known=in_words(n), all=in_words(of)))
    several = any(p.specimen != "1" for r in evaluation.results for p in r.by_pass)
    return paragraph(firm, say("firm.bought-several" if several else "firm.bought"))


def must_line(campaign: Campaign, evaluation: Evaluation, outcome: MustOutcome) -> str:
    """A condition of the verdict and whether a contender meets it."""
    must = _must(campaign, outcome.quantity)
    result = evaluation.of(outcome.quantity, outcome.contender)
    return sentence(
        say(
            f"must.{outcome.outcome}".replace(" ", "-"),
            name=name(campaign, outcome.contender),
            quantity=inside(campaign.quantity(outcome.quantity).title),
            bound=bound(must.at_most, must.at_least) if must else "",
            value=amounts.full(result) if result else say("reference.no-result"),
        )
    )


def money_line(campaign: Campaign, verdict_quantity: str, value: ValueForMoney) -> str:
    """Whether someone else costs no more and is resolved better on the quantity the money is judged by."""
    who = name(campaign, value.contender)
    if not value.dominated_by:
        return sentence(say("money.frontier", name=who))
    better = names(campaign, value.dominated_by)
    title = inside(campaign.quantity(verdict_quantity).title) if verdict_quantity else ""
    return sentence(say("money.dominated", name=who, better=better, quantity=title))


def _must(campaign: Campaign, quantity: str) -> Must | None:
    conditions = campaign.verdict.must if campaign.verdict else ()
    return next((m for m in conditions if m.quantity == quantity), None)


def _titles(campaign: Campaign, firsts: Sequence[FirstPlace]) -> str:
    titles = list(dict.fromkeys(inside(campaign.quantity(f.quantity).title) for f in firsts))
    if len(titles) > _NAMED_AT_MOST:
        return say("answer.things", count=in_words(len(titles)))
    return and_list(titles)
