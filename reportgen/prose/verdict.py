"""The campaign as a whole: its answer, how firm it is, and conditions."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.campaign.declared import Campaign, Must
from reportgen.evaluation.evaluated import Evaluation, FirstPlace, MustOutcome
from reportgen.evaluation.results import NOT_YET_TESTED
from reportgen.prose import amounts
from reportgen.prose.claim import bound
from reportgen.prose.standing import name, names
from reportgen.wording.count import in_words
from reportgen.wording.language import say, say_of
from reportgen.wording.listing import and_list
from reportgen.wording.sentence import capital, inside, paragraph, sentence

_NAMED_AT_MOST = 3  # quantities; beyond these a count reads better


def campaign_answer(campaign: Campaign, evaluation: Evaluation) -> str:
    """The answer in at most two sentences: first on what the campaign asks first, then on everything else."""
    if all(r.missing for r in evaluation.results):
        return sentence(say("answer.not-tested"))
    if not evaluation.firsts:
        return sentence(say("answer.unranked-only"))
    overall = evaluation.verdict.winner if evaluation.verdict else None
    if overall:
        return paragraph(say("answer.overall", winner=name(campaign, overall)), _wins(campaign, evaluation.firsts))
    asked = _asked_first(campaign, evaluation.firsts)
    others = [f for f in evaluation.firsts if f is not asked]
    if asked.winner or not _shares(campaign, asked) or not others:
        return paragraph(_wins(campaign, evaluation.firsts), _open(campaign, evaluation.firsts))
    wins, rest = _wins(campaign, others), _open(campaign, others)
    return paragraph(_open(campaign, [asked]), say("answer.join").join(filter(None, (wins, rest))))


def _asked_first(campaign: Campaign, firsts: Sequence[FirstPlace]) -> FirstPlace:
    """What the campaign asks first: the headline of its first test, else the first quantity that was compared."""
    headline = campaign.tests[0].headline
    return next((f for f in firsts if f.quantity == headline), firsts[0])


def _shares(campaign: Campaign, first: FirstPlace) -> bool:
    """Is first place shared by some, with others beaten to it?"""
    shared = first.winner is None and first.reason.code == "lead-within"
    return shared and len(first.may_be_first) < _ranked(campaign, first)


def _wins(campaign: Campaign, firsts: Sequence[FirstPlace]) -> str:
    winners = list(dict.fromkeys(f.winner for f in firsts if f.winner))
    if len(winners) == 1 and len(firsts) > _NAMED_AT_MOST and all(f.winner for f in firsts):
        return say("answer.best-on-all", winner=name(campaign, winners[0]), count=in_words(len(firsts)))
    said = [
        say(
            "answer.best-on" if w == winners[0] else "answer.best-on.too",
            winner=name(campaign, w),
            quantities=_titles(campaign, [f for f in firsts if f.winner == w]),
        )
        for w in winners
    ]
    return say("answer.join").join(said)


def _open(campaign: Campaign, firsts: Sequence[FirstPlace]) -> str:
    """Where nobody comes first alone. Those who share a first place that others were beaten to are named."""
    open_ = [f for f in firsts if not f.winner]
    shared = [f for f in open_ if _shares(campaign, f)]
    if open_ and len(shared) == len(open_) <= _NAMED_AT_MOST:
        groups = list(dict.fromkeys(f.may_be_first for f in shared))
        return say("answer.join").join(
            say(
                "answer.shared",
                names=names(campaign, group),
                quantities=_titles(campaign, [f for f in shared if f.may_be_first == group]),
            )
            for group in groups
        )
    if not open_:
        return ""
    key = "answer.nobody" if len(open_) == len(firsts) else "answer.rest"
    return say_of(len(open_), key, quantities=_titles(campaign, open_), count=in_words(len(open_)))


def _ranked(campaign: Campaign, first: FirstPlace) -> int:
    return len(campaign.contenders) - len(first.unranked)


def how_firm(campaign: Campaign, evaluation: Evaluation) -> str:
    """On what the answer rests: how much of it has repeats, and that it is about what was bought."""
    compared = {(f.quantity, f.part) for f in evaluation.firsts}
    if not compared:
        return paragraph(_running(campaign, evaluation))
    known = compared & {(s.quantity, s.part) for s in evaluation.scatters if s.found.origin != "none"}
    n, of = len(known), len(compared)
    firm = say("firm.all") if n == of else say("firm.none") if not n else ""
    firm = firm or capital(say_of(n, "firm.some", known=in_words(n), all=in_words(of)))
    several = any(len({p.specimen for p in r.by_pass}) > 1 for r in evaluation.results)
    alone = "firm.bought-apart" if campaign.of_products else "firm.bought"
    bought = say("firm.bought-several" if several else alone)
    return paragraph(firm, bought, _running(campaign, evaluation), _untested(campaign, evaluation))


def _running(campaign: Campaign, evaluation: Evaluation) -> str:
    """Whose run still goes on, and in what."""
    going = [r for r in evaluation.results if r.running]
    if not going:
        return ""
    who = tuple(dict.fromkeys(r.contender for r in going))
    titles = list(dict.fromkeys(inside(campaign.quantity(r.quantity).title) for r in going))
    return say_of(len(who), "firm.running", names=names(campaign, who), quantities=and_list(titles))


def _untested(campaign: Campaign, evaluation: Evaluation) -> str:
    """Who has no result at all yet, where others have."""
    tested = {r.contender for r in evaluation.results if r.missing != NOT_YET_TESTED}
    who = tuple(c.id for c in campaign.contenders if c.id not in tested)
    return say_of(len(who), "firm.untested", names=names(campaign, who)) if who else ""


def must_line(campaign: Campaign, evaluation: Evaluation, outcome: MustOutcome) -> str:
    """A condition of the verdict and whether a contender meets it."""
    must = _must(campaign, outcome.quantity)
    result = evaluation.of(outcome.quantity, outcome.contender)
    unit, step = campaign.quantity(outcome.quantity).unit, bool(result and result.estimate and result.estimate.step)
    return sentence(
        say(
            f"must.{outcome.outcome}".replace(" ", "-"),
            name=name(campaign, outcome.contender),
            quantity=inside(campaign.quantity(outcome.quantity).title),
            bound=bound(must.at_most, must.at_least, unit=unit, step=step) if must else "",
            value=amounts.full(result) if result else say("reference.no-result"),
        )
    )


def _must(campaign: Campaign, quantity: str) -> Must | None:
    conditions = campaign.verdict.must if campaign.verdict else ()
    return next((m for m in conditions if m.quantity == quantity), None)


def _titles(campaign: Campaign, firsts: Sequence[FirstPlace]) -> str:
    titles = list(dict.fromkeys(inside(campaign.quantity(f.quantity).title) for f in firsts))
    if len(titles) > _NAMED_AT_MOST:
        return say("answer.things", count=in_words(len(titles)))
    return and_list(titles)
