"""One quantity judged again: without one pass, without one contender, with dropped passes back, with equal passes.

To first order throughout, nothing is drawn: what it answers is who would be alone in first place, not how wide an
interval would be. Where draws decided first place, it says nothing.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace

from reportgen.evaluation.gathered import Gathered
from reportgen.evaluation.hanging import Evened, HangsOn, WithBack, WithoutContender, WithoutPass
from reportgen.evaluation.working import PassKey, Working
from reportgen.judgement.judging import judge, sole_winner
from reportgen.judgement.measured import Judged, Measured, Rules
from reportgen.judgement.passes.left_out import unmoved_without

MOST_ASKED = 2000  # passes left out in turn × contenders; of very many passes, hardly one decides anything

Again = Callable[[str, Sequence[Working]], Gathered]


def hangs_on(gathered: Sequence[Gathered], rules: Rules, judged: Judged, again: Again) -> HangsOn | None:
    """What first place hangs on. `gathered` without draws, in the campaign's order; `again` gathers a contender's
    passes anew. None where there is nothing to compare, or where it would take too long.
    """
    told = {g.contender: g for g in gathered if g.mean is not None}
    measured = {c: g.measured for c, g in told.items()}
    drawn = any(pair.draws is not None for pair in judged.pairs)
    now = sole_winner(list(measured.values()), rules) if drawn else judged.first.winner
    used = {c: [w for w in g.passes if w.used] for c, g in told.items()}
    tried = [(c, w) for c, ws in used.items() if len(ws) > 1 and not measured[c].blocked for w in ws]
    ranked = [c for c, rank in judged.ranks.items() if rank]
    if now != judged.first.winner or len(ranked) < 2 or len(tried) * len(told) > MOST_ASKED:
        return None

    def winner(of: str, passes: Sequence[Working]) -> str | None:
        return sole_winner(list((measured | {of: again(of, passes).measured}).values()), rules)

    surely = _unmoved(used, measured, rules, now)
    alone = ((c, w, winner(c, [x for x in used[c] if x is not w])) for c, w in tried if (c, w.key) not in surely)
    return HangsOn(
        now,
        len(tried),
        tuple(WithoutPass(c, w.key.specimen, w.key.pass_, w.key.part, who) for c, w, who in alone if who != now),
        tuple(_without_contenders(measured, rules, judged, now)),
        tuple(_with_back(gathered, rules, judged, again)),
        _evened(used, measured, rules, again),
    )


def _unmoved(
    used: dict[str, list[Working]], measured: dict[str, Measured], rules: Rules, now: str | None
) -> frozenset[tuple[str, PassKey]]:
    """Passes, by contender, that surely decide nothing: they needn't be judged without."""
    by_pass = all(len(measured[c].values) == len(ws) for c, ws in used.items())  # specimens are one value each
    unmoved = unmoved_without(list(measured.values()), rules, now) if by_pass else None
    if unmoved is None:
        return frozenset()
    asked = ((c, w, n) for c, ws in used.items() if not measured[c].blocked for n, w in enumerate(ws))
    return frozenset((c, w.key) for c, w, n in asked if unmoved(c, n))


def _without_contenders(
    measured: dict[str, Measured], rules: Rules, judged: Judged, now: str | None
) -> Iterable[WithoutContender]:
    """Those not in the running: a tie that ends because one of the tied goes away is no news."""
    out = [c for c in measured if judged.ranks.get(c) and c not in judged.first.may_be_first]
    for contender in out:
        who = sole_winner([m for c, m in measured.items() if c != contender], rules)
        if who != now and sum(r is not None for r in judged.ranks.values()) > 2:
            yield WithoutContender(contender, who)


def _with_back(gathered: Sequence[Gathered], rules: Rules, judged: Judged, again: Again) -> Iterable[WithBack]:
    """Each exclusion by itself; contenders with nothing else left come back too."""
    ids = dict.fromkeys(w.excluded for g in gathered for w in g.passes if w.excluded and w.value is not None)
    for id in ids:
        changed = {
            g.contender: again(g.contender, [_back(w, id) for w in g.passes]).measured
            for g in gathered
            if any(w.excluded == id for w in g.passes)
        }
        every = {g.contender: g.measured for g in gathered} | changed
        with_it = judge(list(every.values()), rules)
        moves = any(rank != judged.ranks.get(c) for c, rank in with_it.ranks.items())
        yield WithBack(id, tuple(changed), with_it.first.winner, moves)


def _back(working: Working, exclusion: str) -> Working:
    return replace(working, excluded="") if working.excluded == exclusion else working


def _evened(used: dict[str, list[Working]], measured: dict[str, Measured], rules: Rules, again: Again) -> Evened | None:
    counts = {c: len(ws) for c, ws in used.items() if not measured[c].blocked}
    fewest = min(counts.values(), default=0)
    if fewest < 2 or fewest == max(counts.values()):
        return None
    cut = {c: again(c, used[c][:fewest]).measured for c in counts if counts[c] > fewest}
    return Evened(fewest, sole_winner(list((measured | cut).values()), rules))
