"""Two contenders on one quantity: a cell for the grid of who beat whom, and a line for the workings."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Comparison, Evaluation
from reportgen.judgement.orders.partial_order import turned
from reportgen.prose import amounts
from reportgen.prose.by_chance import CODES, by_chance_meaning
from reportgen.prose.orders import pair_means, pair_word
from reportgen.prose.standing import Standing, name, standing
from reportgen.prose.within import within
from reportgen.prose.yardstick import yardstick
from reportgen.wording import decision
from reportgen.wording.interval import difference
from reportgen.wording.language import say, say_of
from reportgen.wording.percent import apart
from reportgen.wording.reason import why, why_missing
from reportgen.wording.sentence import capital, paragraph, sentence


@dataclass(frozen=True)
class PairCell:
    """One cell of the grid, seen from the first contender: a word or two, and what they mean as a sentence.

    `code` is for marks and style: better, worse, same, close, unknown, none.
    """

    word: str
    means: str
    code: str


_CODES = {
    "no difference that matters": "same",
    "too close to call": "close",
    "not enough to say": "unknown",
}


def pair_cell(
    campaign: Campaign, evaluation: Evaluation, quantity: str, first: str, second: str, part: str = ""
) -> PairCell:
    """What was found between two contenders, from the first one's side. Pairs without a comparison say so."""
    s = standing(campaign, evaluation, quantity, part)
    pair = s.pair(first, second)
    if pair is None:
        return PairCell(say("pair.none"), _why_none(s, first, second), "none")
    if pair.seen is not None and pair.reason.code != "blocked":
        seen = pair.seen if pair.seen.first == first else turned(pair.seen)
        code = "none" if seen.told == "never" else "unknown"
        return PairCell(pair_word(seen), sentence(pair_means(s, pair, first)), code)
    favours_first = None if pair.favours is None else pair.favours == first
    word = decision.seen_from_first(pair.decision, favours_first)
    code = _CODES.get(pair.decision) or ("better" if favours_first else "worse")
    return PairCell(word, paragraph(meaning(s, pair, first), within(s, pair)), code)


def _why_none(s: Standing, first: str, second: str) -> str:
    """Why two weren't compared: who has no result, and why not."""
    without = [r for r in s.results if r.contender in (first, second) and r.missing]
    said = [say_of(1, "missing", names=name(s.campaign, r.contender), why=why_missing(r.missing)) for r in without]
    return paragraph(*said) if said else sentence(say("pair.none.means"))


def comparison_line(campaign: Campaign, evaluation: Evaluation, pair: Comparison) -> str:
    """A pair in one line for the workings: names, the difference with its interval, the decision and its meaning."""
    s = standing(campaign, evaluation, pair.quantity, pair.part)
    gaps = {
        "first": name(campaign, pair.first),
        "second": name(campaign, pair.second),
        "decision": capital(decided(campaign, pair)),
        "means": capital(meaning(s, pair, pair.first)),
    }
    if pair.difference is None:
        return sentence(say("comparison.line.no-difference", **gaps))
    low, high = (pair.low, pair.high) if pair.low is not None else (pair.differed_low, pair.differed_high)
    line = say("comparison.line", difference=difference(pair.difference, pair.u, low, high, apart(pair.unit)), **gaps)
    return paragraph(line, within(s, pair))


def decided(campaign: Campaign, pair: Comparison) -> str:
    """The decision in a few words that name who is ahead: "Quill is ahead", "too close to call"."""
    if pair.decision == "better" and pair.favours:
        return say("comparison.ahead", name=name(campaign, pair.favours))
    if pair.decision == "no difference that matters":
        small = say("comparison.ahead.small", name=name(campaign, pair.favours)) if pair.favours else ""
        return small or say("decision.told-apart.nothing-matters")
    return decision.decision(pair.decision)


def meaning(s: Standing, pair: Comparison, first: str) -> str:
    """What a decision means, from `first`'s side and without a full stop."""
    if pair.seen is not None and pair.reason.code != "blocked":
        return pair_means(s, pair, first)
    if pair.reason.code in CODES:
        return by_chance_meaning(s, pair, first)
    if pair.difference is None:
        return _with_a_bound(s, pair)
    second = pair.second if first == pair.first else pair.first
    signed = pair.difference if first == pair.first else -pair.difference
    gap = amounts.gap(pair, s.of_pair(pair))
    gaps = {
        "first": name(s.campaign, first),
        "second": name(s.campaign, second),
        "gap": gap.size,
        "half": gap.half,
        "than": say("than.lower" if signed < 0 else "than.higher"),
    }
    if pair.decision == "better":
        amount = amounts.typed_apart(s.quantity.matters) if s.quantity.matters is not None else ""
        return say(f"pair.better.means{_beyond(s, pair)}", matters=amount, **gaps)
    if pair.decision == "no difference that matters" and s.quantity.matters is not None:
        key = "pair.same.means.resolved" if pair.resolved else "pair.same.means"
        return say(key, matters=amounts.typed_apart(s.quantity.matters), **gaps)
    if pair.decision == "not enough to say":
        return say(f"pair.once.means{_in_these_runs(pair, gap.none)}", why=why(pair.reason.code), **gaps)
    if not gap.half:
        return say("pair.close.means.plain", why=why(pair.reason.code))
    if gap.by_steps:
        return say("pair.close.means.by-steps", **gaps)
    key = "pair.close.means.no-gap" if gap.none else "pair.close.means"
    return say(key, yardstick=yardstick(s, (pair.first, pair.second)), **gaps)


def _beyond(s: Standing, pair: Comparison) -> str:
    if s.quantity.matters is None:
        return ""
    return {True: ".yes", False: "", None: ".open"}[pair.beyond]


def _in_these_runs(pair: Comparison, alike: bool) -> str:
    if pair.differed is False:
        return ".alike"
    if alike:
        return ".equal"
    if pair.reason.code != "no-scatter-known":
        return ".other" if pair.differed else ".other-open"
    return "" if pair.differed else ".unknown"


def _with_a_bound(s: Standing, pair: Comparison) -> str:
    bounds = [r for c in (pair.first, pair.second) if (r := s.result(c)).estimate and r.estimate.limit]
    if pair.decision == "better" and bounds:
        off = bounds[0]
        return say("pair.better.means.bound", off=name(s.campaign, off.contender), bound=amounts.short(off))
    if pair.differed and len(bounds) == 1:
        off = bounds[0]
        other = pair.second if off.contender == pair.first else pair.first
        gaps = {"off": name(s.campaign, off.contender), "other": name(s.campaign, other)}
        return say("pair.once.means.bound", bound=amounts.short(off), **gaps)
    return say("pair.close.means.plain", why=why(pair.reason.code))
