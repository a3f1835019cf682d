"""Statistics of passes: standard deviation, pooled standard deviation, and passes sorted into shared blocks."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.judgement.blocks import Runs, without_noise
from reportgen.judgement.measured import Measured, Rules
from reportgen.metrology import type_a


def standard_deviation(values: Sequence[float]) -> tuple[float, int]:
    """Experimental standard deviation and its degrees of freedom; 0 and 0 for fewer than two passes."""
    return pooled([values])


def pooled(groups: Sequence[Sequence[float]]) -> tuple[float, int]:
    """Pooled standard deviation and its degrees of freedom, exactly 0 where the passes of each group are equal."""
    found = type_a.pooled(groups)
    if found is None:
        return 0.0, 0
    return without_noise(found.sd, [x for group in groups for x in group]), found.degrees


def runs_by_block(complete: Sequence[Measured], rules: Rules) -> Runs | None:
    """Passes of each contender by the block they share with others, or None where there are no such blocks.

    Blocks are the rounds of the method; else sessions, where contenders ran in different ones, each pass's is known
    and no scatter between sessions is declared. A round of one session is not that of another.
    """
    by_pass = all(len(m.sessions_by_pass) == len(m.values) for m in complete)
    one_session = len({m.sessions for m in complete}) <= 1 and all(len(m.sessions) == 1 for m in complete)
    in_rounds = rules.rounds and all(m.values and len(m.rounds) == len(m.values) for m in complete)
    if len(complete) < 2 or (not by_pass and not one_session):
        return None
    if in_rounds:
        sessions = {m.name: m.sessions_by_pass if by_pass else ("",) * len(m.values) for m in complete}
        return {
            m.name: [
                (f"{session} {round_}", x)
                for session, round_, x in zip(sessions[m.name], m.rounds, m.values, strict=True)
            ]
            for m in complete
        }
    if one_session or rules.between_sessions is not None or len({m.sessions for m in complete}) == 1:
        return None
    return {m.name: list(zip(m.sessions_by_pass, m.values, strict=True)) for m in complete}
