"""On what the weighed verdict rests: repeats of these runs, a scatter known beforehand, or neither."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import Literal

from reportgen.evaluation.evaluated import Evaluation, Result
from reportgen.judgement.verdict.overall import Overall
from reportgen.wording.count import in_words
from reportgen.wording.language import say, say_of
from reportgen.wording.listing import and_list
from reportgen.wording.sentence import sentence

Repeats = Literal["every", "some", "stated", "none"]
_ORDER: tuple[Repeats, ...] = ("every", "some", "stated", "none")


def repeats_of(evaluation: Evaluation, quantity: str, among: Collection[str] = ()) -> Repeats:
    """What shows how far a repeat of a quantity would differ: repeats of every contender or of some alone, what was
    stated beforehand, or nothing. `among`: the contenders asked about, all where none are given. Of several parts the
    weakest counts."""
    found = [s.found.origin for s in evaluation.scatters if s.quantity == quantity]
    shown = [
        r
        for r in evaluation.results
        if r.quantity == quantity and not r.missing and (not among or r.contender in among)
    ]
    if not found:
        return _of_counted(shown)
    if "none" in found:
        return "none"
    if "declared" in found:
        return "stated"
    return "every" if all(r.passes > 1 for r in shown) else "some"


def _of_counted(shown: Sequence[Result]) -> Repeats:
    """Of what isn't measured: several tries or runs show it; of one total each what was said of its events does."""
    if shown and all((r.of or r.passes) > 1 for r in shown):
        return "every"
    return "stated" if shown and all(r.kind == "count" and r.covers == "events" for r in shown) else "none"


def rests_on(overall: Overall, known: Sequence[Repeats] = ()) -> str:
    """On what its criteria rest; `known` says of those with a known scatter where it is known from, repeats if left
    out."""
    n = overall.criteria
    sorts = [r for r in known if r in ("some", "stated")][: overall.with_repeats]
    counts: dict[Repeats, int] = {
        "every": overall.with_repeats - len(sorts),
        "some": sorts.count("some"),
        "stated": sorts.count("stated"),
        "none": n - overall.with_repeats,
    }
    alone = next((r for r in _ORDER if counts[r] == n), None)
    if alone:
        return sentence(say_of(n, f"overall.rests.{alone}", count=in_words(n)))
    some = [say_of(counts[r], f"overall.rests.of.{r}", count=in_words(counts[r])) for r in _ORDER if counts[r]]
    return sentence(say("overall.rests", count=in_words(n), some=and_list(some)))
