"""One contender's passes gathered into one result: the value, its contributions, and what judgement is told."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import fsum

from reportgen.campaign.declared import Quantity
from reportgen.evaluation.evaluated import Keys
from reportgen.evaluation.exact import COUNTED
from reportgen.evaluation.nested import by_specimens, over_passes, over_specimens, specimens
from reportgen.evaluation.working import Working
from reportgen.intake.notations.against import chain_of
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.judgement.measured import Measured
from reportgen.metrology.errors import NoValue
from reportgen.metrology.uncertain import Source, Uncertain

TWELVE = 12**0.5  # a step of δ, uniform within half a step either way, has a standard uncertainty of δ/√12


@dataclass(frozen=True)
class Gathered:
    """`mean` is None where passes give no value; `with_all` is what judgement hears with exclusions put back."""

    contender: str
    passes: tuple[Working, ...]
    mean: Uncertain | None
    measured: Measured
    with_all: Measured | None
    rests_on: Keys
    why_none: str = ""  # passes were read, and still give no value together


def gather(
    quantity: Quantity,
    contender: str,
    passes: Sequence[Working],
    readings: Mapping[ReadingKey, Reading],
    blocked: str,
    rounds: bool,
    by_specimen: bool = False,
) -> Gathered:
    """Join the passes of one contender (of one part, where parts stay apart).

    `by_specimen`: some contender was bought more than once; then each specimen is one value, the mean of its passes.
    """
    used = [w for w in passes if w.used]
    every = [w for w in passes if w.value is not None]
    mean, why_none = _together(quantity, used, by_specimen)
    if mean is not None and all(w.value and COUNTED in w.value.contributions for w in used):
        mean = replace(mean, contributions={COUNTED: 0.0})  # which a mean would have left out
    with_all, _ = _together(quantity, every, by_specimen) if len(every) > len(used) else (None, "")
    return Gathered(
        contender=contender,
        passes=tuple(passes),
        mean=mean,
        measured=_measured(quantity, contender, used, mean, readings, blocked, rounds, by_specimen),
        with_all=_measured(quantity, contender, every, with_all, readings, blocked, rounds, by_specimen)
        if with_all
        else None,
        rests_on=frozenset(k for w in passes for k in w.keys),
        why_none=why_none,
    )


def _together(quantity: Quantity, passes: Sequence[Working], by_specimen: bool) -> tuple[Uncertain | None, str]:
    """The passes as one value, or why they give none (one above a limit and one below another can be anything)."""
    try:
        if by_specimen:
            means = specimens(quantity, passes)
            return (over_specimens(quantity, means) if len(means) > 1 else means[0] if means else None), ""
        values = [w.value for w in passes if w.value]
        return (over_passes(quantity, values) if values else None), ""
    except NoValue as reason:
        return None, reason.says


def _measured(
    quantity: Quantity,
    contender: str,
    used: Sequence[Working],
    mean: Uncertain | None,
    readings: Mapping[ReadingKey, Reading],
    blocked: str,
    rounds: bool,
    by_specimen: bool,
) -> Measured:
    known = _each_once([w for w in used if w.value is not None and w.value.value is not None])
    bounds = any(w.value is not None and w.value.limit for w in used)
    if by_specimen:
        each = [[w.value for w in ws if w.value] for ws in by_specimens(known)]
        return Measured(
            name=contender,
            value=mean.value if mean else None,
            values=() if bounds else tuple(over_passes(quantity, values).value or 0.0 for values in each),
            contributions=without_steps(mean) if mean else {},
            steps=tuple(steps_of_one_pass(used).values()),
            sessions=_sessions(used, readings),
            limit=mean.limit if mean else None,
            blocked=blocked,
            stands_on=_stands_on(known, readings),
        )
    return Measured(
        name=contender,
        value=mean.value if mean else None,
        values=() if bounds else tuple(w.value.value for w in known if w.value and w.value.value is not None),
        contributions=without_steps(mean) if mean else {},
        steps=tuple(steps_of_one_pass(used).values()),
        rounds=tuple(_round_of(w, readings) for w in known) if rounds and not bounds else (),
        sessions=_sessions(used, readings),
        sessions_by_pass=() if bounds else tuple(_session_of(w, readings) for w in known),
        limit=mean.limit if mean else None,
        blocked=blocked,
        stands_on=_stands_on(known, readings),
    )


def _each_once(known: Sequence[Working]) -> Sequence[Working]:
    """Passes that rest on the very same readings (`mean_of_passes(a) - mean_of_passes(b)`) are one value told several
    times: that it comes out alike shows no repeatability."""
    first = {frozenset(w.keys): i for i, w in reversed(list(enumerate(known)))}
    return [w for i, w in enumerate(known) if not w.keys or first[frozenset(w.keys)] == i]


def without_steps(value: Uncertain) -> Mapping[Source, float]:
    """The contributions that judgement weighs beside the scatter; steps are handed over by themselves."""
    return {s: c for s, c in value.contributions.items() if s.sort != "step"}


def steps_of_one_pass(used: Sequence[Working]) -> Mapping[Source, float]:
    """c·δ of each distinct reading behind one pass, of the pass where they weigh most (passes may differ slightly)."""
    of_each = [
        {s: abs(c) * TWELVE for s, c in w.value.contributions.items() if s.sort == "step" and c}
        for w in used
        if w.value is not None
    ]
    return max(of_each, key=lambda steps: sum(s * s for s in steps.values()), default={})


def _stands_on(used: Sequence[Working], readings: Mapping[ReadingKey, Reading]) -> Mapping[str, float]:
    """The contenders whose readings its own were read against, each with the part of a pass's variance that passes
    which stand on one reading can't show: Σ(passes on it / passes)² − 1/passes, at least 0."""
    against: dict[str, dict[ReadingKey, int]] = {}
    for w in used:
        own = [readings[k] for k in w.keys if readings[k].beside]
        for key in {other.key for reading in own for other in chain_of(reading, readings)}:
            seen = against.setdefault(key.contender, {})
            seen[key] = seen.get(key, 0) + 1
    n = len(used)
    return {name: max(0.0, fsum((count / n) ** 2 for count in seen.values()) - 1 / n) for name, seen in against.items()}


def _round_of(working: Working, readings: Mapping[ReadingKey, Reading]) -> str:
    """The round written beside the reading itself, not beside one it was read against; else the number of its pass."""
    found = {k: readings[k].round_ for k in working.keys if readings[k].round_}
    stood_on = {o.key for k in working.keys if readings[k].beside for o in chain_of(readings[k], readings)}
    return next((r for k, r in found.items() if k not in stood_on), working.key.pass_)


def _sessions(used: Sequence[Working], readings: Mapping[ReadingKey, Reading]) -> frozenset[str]:
    """The sessions its passes ran in. What was read once for all contenders ran in none of them, unless it is all; what
    was read against another contender stands in the session of that one's reading, whose zero it has."""
    read = [readings[k] for w in used for k in w.keys]
    own = [r for r in read if not r.for_all and not r.beside] or read
    return frozenset(r.session for r in own) or frozenset({""})


def _session_of(working: Working, readings: Mapping[ReadingKey, Reading]) -> str:
    """The session a pass ran in: that of its first reading that names one."""
    own = [k for k in working.keys if not readings[k].for_all and not readings[k].beside] or working.keys
    return next((readings[k].session for k in own if readings[k].session), "")
