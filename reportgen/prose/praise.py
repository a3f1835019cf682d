"""What an author's sentence says of who is best, held against what was found."""

from __future__ import annotations

import re

from reportgen.campaign.declared import Campaign, ProseFile
from reportgen.evaluation.evaluated import Evaluation
from reportgen.finding import Place
from reportgen.prose.written import sentences_of

# How sentences say that one is ahead of all; and of another. From memory, kept short on purpose.
_SUPERLATIVE = re.compile(
    r"\bthe (?:very )?(?:best|most \w+|least \w+|"
    r"(?:fast|quiet|light|cheap|strong|cool|clean|bright|sharp|safe|hard)est|"
    r"winner|clear winner|champion)\b|\bnumber one\b|\bunbeat\w+|\bsecond to none\b",
    re.IGNORECASE,
)
_COMPARATIVE = re.compile(
    r"\b(?:better|worse|(?:fast|quiet|light|cheap|strong|cool|clean|bright|sharp|saf|hott|heavi|slow)er|more \w+|"
    r"less \w+) than\b|\b(?:beats|outperforms|trounces|leaves behind)\b",
    re.IGNORECASE,
)


def praise_beyond(file: ProseFile, campaign: Campaign, evaluation: Evaluation) -> tuple[tuple[Place, str, str], ...]:
    """(place, sentence, words) of each sentence that names a contender and says more for it than was found.

    A superlative needs a sole first place of the one named, on whatever quantity; where several are named, that one of
    them may be first. A comparative between two that are named needs one resolved comparison of theirs. References are
    no part of a sentence here: what stands in one is borne out by what it refers to.
    """
    winners = {f.winner for f in evaluation.firsts if f.winner}
    may_be = {c for f in evaluation.firsts for c in f.may_be_first}
    resolved = {frozenset((c.first, c.second)) for c in evaluation.comparisons if c.favours}
    told = []
    for place, sentence in sentences_of(file):
        named = _named(sentence, campaign)
        best, better = _SUPERLATIVE.search(sentence), _COMPARATIVE.search(sentence)
        if best and named and not named & (may_be if len(named) > 1 else winners):
            told.append((place, sentence, best[0]))
        elif better and len(named) == 2 and named not in resolved:
            told.append((place, sentence, better[0]))
    return tuple(told)


def _named(sentence: str, campaign: Campaign) -> frozenset[str]:
    """The contenders a sentence names: by title, id, another name, or the maker's where it makes just one of them."""
    makers = [c.maker for c in campaign.contenders if c.maker]
    found = set()
    for c in campaign.contenders:
        by_maker = [c.maker] if c.maker and makers.count(c.maker) == 1 else []
        called = (c.title, c.id.replace("-", " "), *c.also_called, *by_maker)
        if any(re.search(rf"(?<!\w){re.escape(one)}(?!\w)", sentence, re.IGNORECASE) for one in called if one):
            found.add(c.id)
    return frozenset(found)
