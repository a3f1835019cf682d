"""What judgement is told and what it answers: plain numbers in one unit, no campaign.

Shapes: k contenders in the campaign's order; every float is in the quantity's unit.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from math import fsum, isfinite
from typing import Literal, get_args

from reportgen.judgement.drawn.beyond import Beyond
from reportgen.judgement.drawn.draws import ByDraws
from reportgen.metrology.uncertain import Source

Better = Literal["lower", "higher"]
Limit = Literal["above", "below"]
Decision = Literal["better", "no difference that matters", "too close to call", "not enough to say"]
ScatterRule = Literal["common", "own", "relative"]
Within = Literal["", "rounds", "sessions", "ratios"]


@dataclass(frozen=True)
class Measured:
    """One contender's result.

    `values`: one number a pass (excluded ones left out), in order; `rounds`: the round of each, or empty.
    `value`: the result (their mean). `contributions`: signed type B parts of the result by source, steps left
    out. `steps`: c·δ of every distinct reading that makes one pass's value (|c|·δ; the squares summed, over 12, are
    the variance R that rounding adds). `sessions`: the set of sessions its passes ran in. `blocked`: why it is
    not ranked. `sessions_by_pass`: the session of each of `values`, or empty: where known, a contender that
    ran in two sessions links those that ran in one of them. `stands_on`: the other contenders whose readings its
    passes were read against, each with what passes can't show of that reading's scatter: of n passes that stand on one
    reading, 1 − 1/n of the variance of a pass. `beyond`: joint draws of what first order leaves out; None where there
    is nothing to it.
    """

    name: str
    value: float | None
    values: tuple[float, ...]
    contributions: Mapping[Source, float] = field(default_factory=dict)
    steps: tuple[float, ...] = ()
    rounds: tuple[str, ...] = ()
    sessions: frozenset[str] = frozenset({""})
    limit: Limit | None = None
    blocked: str = ""
    sessions_by_pass: tuple[str, ...] = ()
    stands_on: Mapping[str, float] = field(default_factory=dict)
    beyond: Beyond | None = field(default=None, compare=False)


def from_passes(name: str, *values: float, step: float = 0.0, rounds: Sequence[str] = ()) -> Measured:
    """A contender by its passes, in one unit: its result is their mean, `step` what one pass was read in.

    >>> from_passes("corvane", 14.0, 14.5).value
    14.25

    Raises ValueError for no passes; a result without a number is a `Measured` without a value.
    """
    if not values:
        raise ValueError(f"{name} has no passes")
    mean = fsum(values) / len(values)
    return Measured(name, mean, tuple(map(float, values)), steps=(step,) if step else (), rounds=tuple(rounds))


@dataclass(frozen=True)
class DeclaredScatter:
    """Repeatability known before testing: standard deviation of one pass and its degrees of freedom.

    `origin`: stated by the method, or found from passes of past campaigns. Raises ValueError for what is no standard
    deviation, or rests on nothing.
    """

    sd: float
    degrees: int
    source: str = ""
    origin: Literal["method", "past campaigns"] = "method"

    def __post_init__(self) -> None:
        if not _is_size(self.sd) or not self.degrees >= 1:
            raise ValueError(f"{self.sd} with {self.degrees} degrees of freedom is no scatter")


@dataclass(frozen=True)
class Rules:
    """How this quantity is to be judged, fixed before the data. Raises ValueError for a rule there is none of."""

    better: Better
    scatter: ScatterRule = "common"
    rounds: bool = False  # the method declared that every round runs every contender once
    matters: float | None = None
    declared: DeclaredScatter | None = None
    between_sessions: float | None = None
    ratio: bool = False  # its unit has a true zero, so that a difference may be told in percent

    def __post_init__(self) -> None:
        if self.better not in get_args(Better) or self.scatter not in get_args(ScatterRule):
            raise ValueError(f"nothing is judged by {self.better}, {self.scatter}")
        if not all(_is_size(x) for x in (self.matters, self.between_sessions) if x is not None):
            raise ValueError("what matters and the scatter between sessions are sizes, not below zero")


def _is_size(x: float) -> bool:
    return isfinite(x) and x >= 0.0


def check_numbers(measured: Sequence[Measured]) -> None:
    """Raises ValueError where two bear one name, or a number is none: nothing that is decided of such would be true."""
    names = [m.name for m in measured]
    if len(set(names)) < len(names):
        raise ValueError("two contenders bear one name")
    for one in measured:
        given = (*one.values, *one.steps, *(() if one.value is None else (one.value,)))
        if not all(map(isfinite, given)) or any(step < 0.0 for step in one.steps):
            raise ValueError(f"{one.name} holds what is no number, or a step below zero")


@dataclass(frozen=True)
class Reason:
    """Why, in data: `code` names the rule that decided, `numbers` what it looked at. Sentences are made elsewhere.

    Codes: lead-exceeds, lead-within (numbers: lead, half_width), step-decides (also least_lead, step),
    no-scatter-known, off-scale-both, bound-decides, bound-too-close (lead, half_width), inside-matters (low,
    high, matters), sessions-apart, no-answer (in too many draws the formula has none), one-contender, blocked,
    no-result, not-above-zero (a ratio asked of a number at or below 0); of what is counted or graded chance-excluded,
    chance-open (p, allowed: both one-sided), never-enough (also least, tries, enough: no outcome of so many tries could
    have decided, so many could).
    """

    code: str
    numbers: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True)
class Settle:
    """What would settle it: `passes` each for 80 % power at `difference`, or `finer` instrument (passes None).

    Neither: no number of passes would, because something other than scatter and steps is too wide. `specimens`: of
    each product, where that is the declared scatter between them; `calibration`: where errors of the instruments are
    too wide that the two results don't share. None of these: nothing that is known of here.
    """

    difference: float
    passes: int | None
    finer: bool = False
    at: Literal["seen", "matters"] = "seen"
    specimens: int | None = None
    calibration: bool = False


@dataclass(frozen=True)
class Percent:
    """First less second in percent of second, with its interval; `low`, `high` are None where the scatter isn't known,
    and where the interval of the difference comes from draws."""

    value: float
    low: float | None
    high: float | None


@dataclass(frozen=True)
class Pair:
    """`difference` is first minus second. `resolved`: would a repeat agree; `differed`: did they differ here.

    `low`, `high`, `u` are None where the scatter isn't known; then `differed_low`, `differed_high` hold the
    instrument's interval. `adjusted`: the interval is simultaneous over all pairs (section 5).
    `beyond`: True/False/None: better by an amount that matters / by less / open (None too without `matters`).
    `within`: the difference was taken within rounds or sessions that not all shared, or from ratios, and so isn't the
    difference of the two results; "" where it is. `percent`: the difference in percent of second, None where the
    unit has no true zero or second can't be told from nothing. `draws`: what joint draws said of the difference, where
    they were asked.
    """

    first: str
    second: str
    difference: float | None
    u: float | None
    low: float | None
    high: float | None
    decision: Decision
    resolved: bool
    differed: bool | None
    differed_low: float | None
    differed_high: float | None
    favours: str | None
    reason: Reason
    adjusted: bool = True
    beyond: bool | None = None
    settle: Settle | None = None
    within: Within = ""
    percent: Percent | None = None
    draws: ByDraws | None = None


@dataclass(frozen=True)
class First:
    winner: str | None
    may_be_first: tuple[str, ...]
    unranked: tuple[str, ...]
    reason: Reason


@dataclass(frozen=True)
class ScatterFound:
    """The scatter in use: of one pass, with its degrees of freedom; None where none is known.

    `by_name` holds each contender's under `own`. `origin`: passes, declared, both, none; `declared_by`: what declared
    it, where it is used.
    """

    sd: float | None
    degrees: float | None
    origin: Literal["passes", "declared", "both", "none"]
    by_name: Mapping[str, tuple[float, float]] = field(default_factory=dict)
    declared_by: Literal["method", "past campaigns", ""] = ""


@dataclass(frozen=True)
class Single:
    """Interval of one contender's own result. `covers` says what it holds; u None gives `why_no_u`.

    `why_no_u`: limit, no-result, accuracy-unknown (neither scatter nor instrument says anything), no-answer (in too
    many draws the formula has none). `draws`: what joint draws said, where they were asked; the interval is theirs only
    where they were needed. Where the scatter is
    known, `scatter` is that of one pass, `sd_of_mean` the result's share of it, both with `degrees` of freedom, and
    `between` its share of the scatter between sessions, where one is declared.
    """

    name: str
    u: float | None
    low: float | None
    high: float | None
    covers: Literal["instrument and scatter", "instrument"]
    at_least: bool = False  # "at least 95 %": the step is 2 sd or more
    why_no_u: str = ""
    scatter: float | None = None
    sd_of_mean: float | None = None
    degrees: float | None = None
    between: float = 0.0
    draws: ByDraws | None = None


@dataclass(frozen=True)
class Judged:
    """All that is decided about one quantity: pairs (i < j in the order given), ranks, first place, intervals."""

    pairs: tuple[Pair, ...]
    ranks: Mapping[str, tuple[int, int] | None]
    first: First
    scatter: ScatterFound
    singles: Mapping[str, Single]
