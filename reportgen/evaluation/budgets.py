"""The budget of one result: every source of its uncertainty, what is behind it, and what it comes to."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import hypot

from reportgen.evaluation.assumed import is_shared
from reportgen.evaluation.behind import Behind
from reportgen.evaluation.evaluated import Contribution
from reportgen.evaluation.exact import COUNTED
from reportgen.evaluation.gathered import TWELVE, Gathered, steps_of_one_pass
from reportgen.evaluation.inputs import Inputs, behind
from reportgen.judgement.half_width import hand_is_hidden
from reportgen.judgement.measured import Single
from reportgen.metrology.budget import SCATTER, shares
from reportgen.metrology.uncertain import OF_ONE_READING, Source

# one variable for many readings: never joined with another, so that its sign and its session stay
STAND_ALONE = ("offset", "gain", "calibration", "drift", "clock", "constant", "assumption")


@dataclass(frozen=True)
class Lines:
    """`effective_degrees` after JCGM 100, G.4.1, truncated; None for infinite. To be shown, never used."""

    contributions: tuple[Contribution, ...]
    effective_degrees: int | None


def budget_of(gathered: Gathered, single: Single, inputs: Inputs) -> Lines:
    """Every source of the result's uncertainty by instrument and sort, largest first; their squares make up its u².

    The step enters once, not divided by the passes, and only where scatter doesn't already hold it: where the
    scatter of a pass is under half the step, or isn't known.
    """
    joined: dict[Source, dict[Source, float]] = {}
    hand = single.sd_of_mean is not None and hand_is_hidden(gathered.measured.contributions, single.sd_of_mean)
    shown = OF_ONE_READING - {"reaction"} if hand else OF_ONE_READING
    for source, size in gathered.measured.contributions.items():
        if source == COUNTED:
            continue
        if source.sort == "scatter" and single.sd_of_mean is None:
            continue  # of a quantity behind it; the interval is then of the instrument alone
        if source.sort in shown and single.sd_of_mean is not None:
            continue  # inside the scatter between passes
        joined.setdefault(source if source.sort in STAND_ALONE else _unshared(source), {})[source] = size
    steps = steps_of_one_pass([w for w in gathered.passes if w.used])
    if single.scatter is None or single.scatter < max(steps.values(), default=0.0) / 2:
        for source, width in steps.items():
            joined.setdefault(_unshared(source), {})[source] = width / TWELVE
    sizes = {group: _size(group, members) for group, members in joined.items()}
    if single.between:
        sizes[Source("scatter", "sessions", "", "normal")] = single.between
    budget = shares(sizes, single.sd_of_mean, single.degrees)
    made_of = {group: behind(members, inputs) for group, members in joined.items()}
    made_of[SCATTER] = _passes(gathered, single)
    return Lines(
        tuple(
            Contribution(x.source, x.size, x.share, _is_shared(x.source), x.degrees, made_of.get(x.source))
            for x in budget.lines
        ),
        budget.degrees,
    )


def _size(group: Source, members: Mapping[Source, float]) -> float:
    return members[group] if set(members) == {group} else hypot(*members.values())


def _passes(gathered: Gathered, single: Single) -> Behind | None:
    """s and n behind s/√n (JCGM 100, 4.2.3); None where more than that went in."""
    n = len(gathered.measured.values) or 1
    if not single.scatter or single.sd_of_mean is None:
        return None
    if abs(single.scatter / n**0.5 - single.sd_of_mean) > 1e-9 * single.scatter:
        return None
    unit = gathered.mean.unit.symbol if gathered.mean else ""
    return Behind(single.scatter, unit, n, 1 / n, True, ())


def _is_shared(source: Source) -> bool:
    return source.sort in ("shared", *STAND_ALONE) if source.sort != "assumption" else is_shared(source)


def _unshared(source: Source) -> Source:
    return Source(source.sort, source.of, "", source.shape, source.degrees)
