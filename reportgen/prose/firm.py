"""How firm a campaign's answer is: what it rests on, how often such pages err, that it is about what was bought."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation, FirstPlace
from reportgen.evaluation.results import NOT_YET_TESTED
from reportgen.prose.by_chance import CODES, is_by_chance
from reportgen.prose.standing import Standing, names, standing
from reportgen.prose.yardstick import several_specimens
from reportgen.wording.count import in_words
from reportgen.wording.language import say, say_of
from reportgen.wording.listing import and_list
from reportgen.wording.sentence import capital, inside, paragraph


def how_firm(campaign: Campaign, evaluation: Evaluation) -> str:
    """On what the answer rests: how much of it has repeats, how often a winner is false, and that it is about what was
    bought."""
    if not evaluation.firsts:
        return paragraph(_running(campaign, evaluation))
    standings = [(f, standing(campaign, evaluation, f.quantity, f.part)) for f in evaluation.firsts]
    repeated = [f for f, s in standings if has_repeats(f, s)]
    stated = [f for f, s in standings if f not in repeated and _origin(s) == "declared"]
    several = any(several_specimens(s) for _, s in standings)
    return paragraph(
        _rests_on(len(repeated), len(stated), len(standings)),
        _guarantee(campaign, [*repeated, *stated]),
        say(_about(campaign, several)),
        _running(campaign, evaluation),
        _untested(campaign, evaluation),
    )


def has_repeats(first: FirstPlace, s: Standing) -> bool:
    """Did repeats of these runs decide? Of what isn't measured: were there several tries or runs?"""
    if s.scatter is not None and s.scatter.origin != "none":
        return s.scatter.origin in ("passes", "both")
    return first.reason.code in CODES[:2] and any(r.passes > 1 for r in s.ranked)


def _origin(s: Standing) -> str:
    """Where what is known of repeats comes from; of one total each, from what was said of its events beforehand."""
    if s.scatter is None and is_by_chance(s) and s.quantity.independent:
        return "declared"
    return s.scatter.origin if s.scatter is not None else "none"


def _rests_on(repeated: int, stated: int, of: int) -> str:
    if repeated == of:
        return say("firm.all")
    if not repeated and not stated:
        return say("firm.none")
    counts = {"known": in_words(repeated), "all": in_words(of), "stated": in_words(stated)}
    if not repeated and stated == of:
        return say("firm.all-stated")
    said = (
        capital(say_of(repeated, "firm.some", **counts)) if repeated else say_of(stated, "firm.some-stated", **counts)
    )
    if repeated and stated:
        said = say("firm.and-stated", said=said, stated=say_of(stated, "firm.stated", **counts))
    left = of - repeated - stated
    return say_of(left, "firm.others", said=said) if left else said


def _guarantee(campaign: Campaign, decided: list[FirstPlace]) -> str:
    """How often one is named first though nobody is; "" where nothing could name anybody."""
    if not decided:
        return ""
    alike = any(campaign.test(f.test).scatter != "own" for f in decided)
    return say("firm.guarantee.alike" if alike else "firm.guarantee")


def _about(campaign: Campaign, several: bool) -> str:
    if several:
        return "firm.bought-several"
    if campaign.of_products:
        return "firm.bought-apart"
    return "firm.tested" if any(c.supplied_by for c in campaign.contenders) else "firm.bought"


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
