"""Runs that did not finish: how many did is told first, and no mean is taken of those that did.

Where the method said so before the test, a run that did not finish holds the worst place among all runs, and the exact
rank sum of these runs judges; else a contender with such a run stands outside the ranks.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import inf

from reportgen.campaign.declared import Quantity, Test
from reportgen.evaluation.evaluated import Result
from reportgen.evaluation.feeds import Feeds
from reportgen.evaluation.gathered import Gathered
from reportgen.evaluation.working import Working
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.judgement.exact.by_chance import JudgedByChance
from reportgen.judgement.exact.grades import Graded, judge_grades
from reportgen.wording.count import whole
from reportgen.wording.language import say
from reportgen.wording.listing import commas


@dataclass(frozen=True)
class Finished:
    """How many of a contender's runs finished, and why the others did not."""

    yes: int
    of: int
    reasons: tuple[str, ...]

    @property
    def told(self) -> str:
        """Why there is no result: "it finished 1 of 3 runs (its chain broke), and …"."""
        count = {"yes": whole(self.yes), "of": whole(self.of)}
        why = commas(list(self.reasons))
        if not self.yes:
            return say("missing.unfinished.none.why", why=why) if why else say("missing.unfinished.none")
        return say("missing.unfinished.why", why=why, **count) if why else say("missing.unfinished", **count)


def unfinished_runs(
    test: Test,
    quantity: Quantity,
    passes: Mapping[str, Sequence[Working]],
    readings: Mapping[ReadingKey, Reading],
    feeds: Feeds,
) -> Mapping[str, Finished]:
    """Those contenders of whose runs some did not finish, runs left out apart."""
    read = feeds.readings_of(quantity.id)
    ended = {
        (k.contender, k.specimen, k.pass_, k.part): r
        for k, r in readings.items()
        if r.unfinished and (k.test, k.name) in read
    }
    found = {}
    for contender, ws in passes.items():
        counted = [w for w in ws if not w.excluded]
        mine = [ended[key] for w in counted if (key := _key(contender, w)) in ended]
        if mine:
            reasons = dict.fromkeys(r.absent_because.partition("(")[2].removesuffix(")") for r in mine)
            done = sum(w.value is not None for w in counted)
            found[contender] = Finished(done, done + len(mine), tuple(r for r in reasons if r))
    return found


def without_a_mean(found: Gathered, finished: Finished | None) -> Gathered:
    """The contender without a value, where a run of it did not finish; else as it was."""
    if finished is None:
        return found
    return replace(found, mean=None, with_all=None, why_none=finished.told)


def with_finishes(result: Result, finished: Mapping[str, Finished]) -> Result:
    """The result with how many of its runs finished, where some did not."""
    mine = finished.get(result.contender)
    return replace(result, yes=mine.yes, of=mine.of) if mine else result


def judged_by_place(
    quantity: Quantity, gathered: Sequence[Gathered], finished: Mapping[str, Finished]
) -> JudgedByChance:
    """Pairs, ranks and first place by the exact rank sum of all runs; one that did not finish holds the worst place.

    A contender with a run known from one side only isn't ranked.
    """
    worst = inf if quantity.better == "lower" else -inf
    graded = []
    for g in gathered:
        values = [w.value for w in g.passes if w.used and w.value is not None]
        known = tuple(v.value for v in values if v.value is not None and not v.limit)
        failed = finished[g.contender].of - finished[g.contender].yes if g.contender in finished else 0
        blocked = "blocked" if g.measured.blocked or len(known) < len(values) else ""
        graded.append(Graded(g.contender, (*known, *(worst,) * failed), blocked))
    return judge_grades(graded, "lower" if quantity.better == "lower" else "higher")


def _key(contender: str, working: Working) -> tuple[str, str, str, str]:
    return (contender, working.key.specimen, working.key.pass_, working.key.part)
