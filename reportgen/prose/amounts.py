"""Results and gaps as printed amounts."""

from __future__ import annotations

from reportgen.campaign.declared import Amount
from reportgen.evaluation.evaluated import Comparison, Result
from reportgen.wording import interval
from reportgen.wording.count import whole
from reportgen.wording.interval import decimals_of_steps
from reportgen.wording.language import say
from reportgen.wording.number import as_written
from reportgen.wording.reason import why_missing, why_no_u
from reportgen.wording.unit import joined


def full(result: Result) -> str:
    """A result with its interval, or with why it has none: "14.20 g (13.58 to 14.82)", "3 of 3", "good"."""
    if result.missing:
        return why_missing(result.missing)
    if result.estimate is None:
        return _looked_at(result)
    estimate = result.estimate
    return interval.printed(
        estimate.value,
        result.u,
        result.low,
        result.high,
        estimate.unit,
        estimate.limit,
        why_no_u(result.why_no_u),
        decimals=decimals(result),
    )


def short(result: Result) -> str:
    """A result's value alone, rounded as `full` rounds it: "14.20 g"."""
    if result.missing:
        return say("reference.no-result")
    if result.estimate is None:
        return _looked_at(result)
    estimate = result.estimate
    return interval.value_only(
        estimate.value,
        result.u,
        estimate.unit,
        estimate.limit,
        low=result.low,
        high=result.high,
        decimals=decimals(result),
    )


def decimals(result: Result) -> int | None:
    """The decimals its readings were written with, where a result has no uncertainty to say it."""
    return decimals_of_steps(result.estimate.steps, result.passes) if result.estimate else None


def typed(amount: Amount) -> str:
    """An amount the author typed, with its digits: "1 g"."""
    return joined(as_written(amount.value), amount.unit)


def gap(pair: Comparison) -> str:
    """The size of a difference without its sign: "2.60 g". Only for a pair that has a difference."""
    return gap_and_half(pair)[0]


def half(pair: Comparison) -> float | None:
    """Half the interval that decided a pair; where the scatter isn't known, half the instrument's, if any."""
    low, high = (pair.low, pair.high) if pair.low is not None else (pair.differed_low, pair.differed_high)
    return None if low is None or high is None else (high - low) / 2


def gap_and_half(pair: Comparison) -> tuple[str, str]:
    """The size of a difference and the half-width it is held against, told apart by their digits."""
    size, width = abs(pair.difference or 0.0), half(pair)
    if not width:
        return interval.value_only(size, pair.u, pair.unit), ""
    return interval.side_by_side(size, width, pair.unit)


def size(width: float, unit: str) -> str:
    """An amount with two significant digits: a half-width, a smallest gap that can be told."""
    return interval.uncertainty(width, unit)


def _looked_at(result: Result) -> str:
    if result.kind == "yes/no" and result.yes is not None and result.of is not None:
        return say("yes.of", yes=whole(result.yes), of=whole(result.of))
    return result.grade or say("number.unknown")
