"""How firm a campaign's answer is: what it rests on, how often such pages err, that it is about what was bought."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation, FirstPlace
from reportgen.evaluation.results import NOT_YET_TESTED
from reportgen.prose.by_chance import CODES, is_by_chance
from reportgen.prose.first_place import first_otherwise
from reportgen.prose.standing import Standing, names, standing
from reportgen.prose.yardstick import several_specimens
from reportgen.wording.count import in_words
from reportgen.wording.language import say, say_of
from reportgen.wording.listing import and_list
from reportgen.wording.sentence import capital, inside, paragraph


def how_firm(campaign: Campaign, evaluation: Evaluation) -> str:
    """On what the answer rests: how much of it has repeats, how often a winner is false, and that it is about what was
    bought. Where only one contender could be ranked, nothing was compared."""
    each = [(f, standing(campaign, evaluation, f.quantity, f.part)) for f in evaluation.firsts]
    standings = [(f, s) for f, s in each if len(s.ranked) > 1]
    if not standings:
        return paragraph(_running(campaign, evaluation), _untested(campaign, evaluation) if each else "")
    repeated = [f for f, s in standings if has_repeats(f, s) and _of_every(s)]
    partly = [f for f, s in standings if has_repeats(f, s) and not _of_every(s)]
    stated = [f for f, s in standings if f not in (*repeated, *partly) and _origin(s) == "declared"]
    several = any(several_specimens(s) for _, s in standings)
    return paragraph(
        _rests_on(len(repeated), len(partly), len(stated), len(standings)),
        _guarantee(campaign, [*repeated, *partly, *stated]),
        say(_about(campaign, several)),
        *_left_out(standings),
        _running(campaign, evaluation),
        _untested(campaign, evaluation),
    )


def _left_out(standings: Sequence[tuple[FirstPlace, Standing]]) -> Iterator[str]:
    """On what first place would be another with the passes that were left out."""
    found: dict[str, list[str]] = {}
    for first, s in standings:
        if then := first_otherwise(s, first):
            found.setdefault(then, []).append(inside(s.quantity.title))
    for then, titles in found.items():
        yield say("firm.left-out", quantities=and_list(titles), then=inside(then))


def has_repeats(first: FirstPlace, s: Standing) -> bool:
    """Did repeats of these runs decide? Of what isn't measured: were there several tries or runs?"""
    if s.scatter is not None and s.scatter.origin != "none":
        return s.scatter.origin in ("passes", "both")
    return first.reason.code in CODES[:2] and any(r.passes > 1 for r in s.ranked)


def _of_every(s: Standing) -> bool:
    """Whether every contender that is ranked was repeated, not some alone, by whom the others are then judged."""
    return all(r.passes > 1 for r in s.ranked)


def _origin(s: Standing) -> str:
    """Where what is known of repeats comes from; of one total each, from what was said of its events beforehand."""
    if s.scatter is None and is_by_chance(s) and s.quantity.independent:
        return "declared"
    return s.scatter.origin if s.scatter is not None else "none"


def _rests_on(repeated: int, partly: int, stated: int, of: int) -> str:
    """On what the comparisons rest: on repeats of every contender, of some alone, on what was known beforehand."""
    if repeated == of:
        return say("firm.all")
    if stated == of:
        return say("firm.all-stated")
    if partly == of:
        return say("firm.all-partly")
    counts = {"known": in_words(repeated), "all": in_words(of), "partly": in_words(partly), "stated": in_words(stated)}
    said = []
    if repeated:
        said.append(capital(say_of(repeated, "firm.some.of-every" if partly else "firm.some", **counts)))
    if partly:
        said.append(say_of(partly, "firm.partly" if repeated else "firm.some-partly", **counts))
    if stated:
        said.append(say_of(stated, "firm.stated" if said else "firm.some-stated", **counts))
    if not said:
        return say("firm.none")
    together = say("answer.join").join(said)
    left = of - repeated - partly - stated
    return say_of(left, "firm.others", said=together) if left else together


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
