"""The verdict on the campaign's page: the answer, conditions, what is weighed, the author's words, money."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reportgen.campaign.declared import Campaign, WeSay
from reportgen.evaluation.evaluated import Evaluation, MustOutcome, Verdict
from reportgen.judgement.verdict.overall import Overall
from reportgen.pages.led import led_on
from reportgen.pages.money import MoneyShown, money_of
from reportgen.pages.named import Named, named
from reportgen.pages.titles import heading
from reportgen.pages.told import Told
from reportgen.pages.weighed import WeighedShown, weighed_of
from reportgen.pages.words import words
from reportgen.prose.for_the_money import held_for_the_money
from reportgen.prose.overall import left_out, not_weighed, overall_answer, said_against
from reportgen.prose.rests import repeats_of, rests_on
from reportgen.prose.sentences import bound, campaign_answer_led, first_place_led, must_line
from reportgen.prose.standing import name
from reportgen.theme import Link
from reportgen.wording.language import say
from reportgen.wording.listing import and_list
from reportgen.wording.sentence import inside, paragraph, sentence


@dataclass(frozen=True)
class MetShown:
    """One condition and one contender: `outcome` in a word, `says` as a sentence."""

    outcome: str
    says: str


@dataclass(frozen=True)
class ConditionRow:
    contender: Named
    met: tuple[MetShown, ...]


@dataclass(frozen=True)
class SaidShown:
    """The author's own verdict, and, for each quantity it is drawn from, what the readings support."""

    best: Named | None
    best_for_the_money: Named | None
    because: str
    words: str


@dataclass(frozen=True)
class Supported:
    """What the readings support; `on` is the quantity it is about, "" for the whole."""

    on: str
    says: tuple[Link, ...]


@dataclass(frozen=True)
class VerdictShown:
    """`answer` and what it rests on where criteria are weighed, "" else; `unmade` says so where no verdict was made, by
    weighing or in the author's words; `met` says who is out and what is open."""

    answer: str
    unmade: str
    rests_on: str
    met: tuple[str, ...]
    weighed: WeighedShown | None
    conditions: tuple[str, ...]
    rows: tuple[ConditionRow, ...]
    said: SaidShown | None
    support: tuple[Supported, ...]
    money: MoneyShown | None


def verdict_of(told: Told, page: str) -> VerdictShown | None:
    """The verdict as `page` shows it, None where there is none to show."""
    verdict, plan = told.evaluation.verdict, told.campaign.verdict
    if verdict is None:
        return None
    musts = plan.must if plan else ()
    we_say = plan.we_say if plan else None
    conditions = tuple(f"{heading(told.campaign.quantity(m.quantity))} {bound(m.at_most, m.at_least)}" for m in musts)
    rows = []
    for c in told.campaign.contenders if musts else ():
        outcomes = {o.quantity: o for o in verdict.conditions if o.contender == c.id}
        met = tuple(_met(told, outcomes[m.quantity]) for m in musts if m.quantity in outcomes)
        rows.append(ConditionRow(named(told.campaign, c.id, page), met))
    overall = verdict.overall
    weighing = bool(plan and plan.groups)
    shown = VerdictShown(
        answer=_answer(told) if weighing else "",
        unmade="" if weighing or we_say else _unmade(told),
        rests_on=_rests_on(told.evaluation, verdict, overall) if overall else "",
        met=_deciding(told, verdict.conditions, bool(overall)),
        weighed=weighed_of(told, overall, page) if overall else None,
        conditions=conditions,
        rows=tuple(rows),
        said=_said(told, page, we_say) if we_say else None,
        support=_support(told, page, we_say),
        money=money_of(told, page),
    )
    return shown if shown.rows or shown.said or shown.money or weighing else None


def _answer(told: Told) -> str:
    verdict = told.evaluation.verdict
    if verdict is None:
        return ""
    if verdict.overall is None:
        return not_weighed(told.campaign, verdict)
    left = left_out(told.campaign, verdict.overall.out)
    return paragraph(overall_answer(told.campaign, verdict.overall), left)


def _unmade(told: Told) -> str:
    """That nothing was weighed, nor called best by the author."""
    winner = told.evaluation.verdict.winner if told.evaluation.verdict else None
    who = name(told.campaign, winner) if winner else ""
    return sentence(say("verdict.none.first", name=who) if winner else say("verdict.none"))


def _rests_on(evaluation: Evaluation, verdict: Verdict, overall: Overall) -> str:
    known = [c.quantity for c in verdict.criteria if c.known_scatter and c.quantity not in overall.left_out]
    return rests_on(overall, [repeats_of(evaluation, quantity, overall.contenders) for quantity in known])


def _deciding(told: Told, outcomes: Sequence[MustOutcome], weighed: bool) -> tuple[str, ...]:
    """A sentence for each condition that isn't plainly met, and what follows where that is open."""
    open_ = any(o.outcome in ("undecided", "not tested") for o in outcomes)
    lines = tuple(must_line(told.campaign, told.evaluation, o) for o in outcomes if o.outcome != "supported")
    return (*lines, sentence(say("undecided.stays"))) if open_ and weighed else lines


def _met(told: Told, outcome: MustOutcome) -> MetShown:
    key = f"must.{outcome.outcome}".replace(" ", "-")
    return MetShown(words(key), must_line(told.campaign, told.evaluation, outcome))


def _weighed(campaign: Campaign, overall: Overall, we_say: WeSay) -> str:
    return paragraph(overall_answer(campaign, overall), said_against(campaign, overall, we_say.best))


def _said(told: Told, page: str, we_say: WeSay) -> SaidShown:
    titles = [inside(told.campaign.quantity(q).title) for q in we_say.because]
    return SaidShown(
        named(told.campaign, we_say.best, page) if we_say.best else None,
        named(told.campaign, we_say.best_for_the_money, page) if we_say.best_for_the_money else None,
        and_list(titles),
        we_say.words,
    )


def _support(told: Told, page: str, we_say: WeSay | None) -> tuple[Supported, ...]:
    held = held_for_the_money(told.campaign, told.evaluation, we_say.best_for_the_money if we_say else "")
    money = (Supported(say("said.for-the-money"), led_on(page, held)),) if held else ()
    return (*_of_best(told, page, we_say), *money)


def _of_best(told: Told, page: str, we_say: WeSay | None) -> tuple[Supported, ...]:
    campaign, evaluation = told.campaign, told.evaluation
    overall = evaluation.verdict.overall if evaluation.verdict else None
    if we_say and we_say.because:
        said = tuple(
            Supported(heading(campaign.quantity(q)), led_on(page, first_place_led(campaign, evaluation, q)))
            for q in we_say.because
        )
        if overall is None:
            return said
        return (*said, Supported(say("said.overall"), led_on(page, _weighed(campaign, overall, we_say))))
    if overall:
        return (Supported("", led_on(page, _weighed(campaign, overall, we_say))),) if we_say else ()
    return (Supported("", led_on(page, campaign_answer_led(campaign, evaluation))),) if we_say else ()
