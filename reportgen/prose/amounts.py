"""Results and gaps as printed amounts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reportgen.campaign.declared import Amount
from reportgen.evaluation.evaluated import Comparison, Result
from reportgen.evaluation.found_between import found_between
from reportgen.wording import interval
from reportgen.wording.count import whole
from reportgen.wording.interval import decimals_of_mean, decimals_of_steps
from reportgen.wording.language import say
from reportgen.wording.number import as_written, fixed, plain, rounded
from reportgen.wording.order import stood_to_all
from reportgen.wording.percent import apart
from reportgen.wording.reason import why_missing, why_no_u
from reportgen.wording.unit import joined, spelled

_NOISE = 1e-9  # of the half-width: a difference this small is two equal numbers and binary noise


def full(result: Result) -> str:
    """A result with its interval, or with why it has none: "14.20 g (13.58 to 14.82)", "3 of 3", "good"."""
    if result.missing:
        return why_missing(result.missing)
    if result.kind != "measured" or result.estimate is None:
        return _looked_at(result)
    estimate = result.estimate
    if result.running and estimate.limit == "above":
        return interval.so_far(estimate.value, estimate.unit)
    if result.why_no_u == "counted":
        return interval.counted(estimate.value, estimate.unit)
    if limits := found_between(result):
        return joined(interval.as_typed(*limits), estimate.unit)
    if read_once(result) and result.low is not None and result.high is not None and not estimate.limit:
        low, high = (fixed(end, decimals_read_once(result)) for end in (result.low, result.high))
        return say("interval.both", value=short(result), low=low, high=high)
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
    """A result's value alone: rounded as `full` rounds it ("14.20 g"), or as it was read once ("71.2 dB")."""
    if result.missing:
        return say("reference.no-result")
    if result.kind != "measured" or result.estimate is None:
        return _looked_at(result)
    estimate = result.estimate
    if result.running and estimate.limit == "above":
        return interval.so_far(estimate.value, estimate.unit)
    if limits := found_between(result):
        return joined(interval.as_typed(*limits), estimate.unit)
    if read_once(result):
        return interval.value_only(estimate.value, None, estimate.unit, estimate.limit, decimals=estimate.decimals)
    return interval.value_only(
        estimate.value,
        result.u,
        estimate.unit,
        estimate.limit,
        low=result.low,
        high=result.high,
        decimals=decimals(result),
    )


def also(result: Result) -> str:
    """The result's value in the other units its author shows, each rounded for itself: "0.511 oz"; "" without any."""
    limit = result.estimate.limit if result.estimate else None
    return say("interval.several").join(
        interval.value_only(o.value, o.u, o.unit, limit, low=o.low, high=o.high) for o in result.also
    )


def also_in_full(result: Result) -> str:
    """The same with intervals: "0.511 oz (0.491 to 0.532)"."""
    limit = result.estimate.limit if result.estimate else None
    others = ((o.value, o.u, o.low, o.high, o.unit) for o in result.also)
    return interval.in_units(others, limit, why_no_u(result.why_no_u))


def read_once(result: Result) -> bool:
    """A single reading whose repeat isn't known, written in the result's own unit: its own digits say enough, where
    they aren't more than its uncertainty leaves."""
    estimate = result.estimate
    if result.covers != "instrument" or result.passes != 1 or estimate is None or estimate.decimals is None:
        return False
    places = interval.decimals_for(result.u, result.low, result.high)
    return places is None or estimate.decimals <= places


def decimals_read_once(result: Result) -> int:
    """The decimals of a single reading's interval: by its uncertainty, but at most one more than was read."""
    own = result.estimate.decimals if result.estimate and result.estimate.decimals is not None else 0
    places = interval.decimals_for(result.u, result.low, result.high)
    return own + 1 if places is None else min(places, own + 1)


def decimals(result: Result) -> int | None:
    """The decimals its readings were written with, where a result has no uncertainty to say it."""
    if result.estimate is None:
        return None
    if read_once(result):
        return result.estimate.decimals
    if result.kind == "count":
        return decimals_of_mean(result.estimate.value)
    return decimals_of_steps(result.estimate.steps, result.passes)


def typed(amount: Amount) -> str:
    """An amount the author typed, with its digits: "1 g"."""
    return joined(as_written(amount.value), amount.unit)


def typed_apart(amount: Amount) -> str:
    """The same of an amount that is a difference: of percentages in percentage points."""
    return joined(as_written(amount.value), apart(amount.unit))


def in_both(amount: Amount, unit: str, *, step: bool = False) -> str:
    """An amount as typed, and in `unit` too where that is another one it can be put in: "4 min (240 s)".

    `step`: it is one on a scale, so that 99 °F are 55 K.
    """
    if not unit or not amount.unit or spelled(unit) == spelled(amount.unit):
        return typed(amount)
    from reportgen.metrology.errors import UnitError
    from reportgen.metrology.unit import convert, parse_unit

    try:
        value = convert(float(amount.value), parse_unit(amount.unit), parse_unit(unit), difference=step)
    except UnitError:
        return typed(amount)
    return say("claim.bound.also", amount=typed(amount), other=joined(plain(value), unit))


@dataclass(frozen=True)
class Gap:
    """A difference without its sign, beside what it was held against.

    `size` and `half` are printed, told apart by their digits; `half` is "" where nothing is known. `none`: both came
    out alike. `by_steps`: the instrument's steps decided, and `half` is the least gap that counts.
    """

    size: str
    half: str
    none: bool
    by_steps: bool = False


def gap(pair: Comparison, results: Sequence[Result] = ()) -> Gap:
    """The gap of a pair that has a difference; `results` of the pair say with how many decimals they were read."""
    size, width = abs(pair.difference or 0.0), half(pair)
    least = pair.reason.numbers.get("least_lead") if pair.reason.code == "step-decides" else None
    known = [d for r in results if r.estimate and (d := decimals(r)) is not None]
    finest = max(known) if known else None
    if size < (width or size) * _NOISE:
        size = 0.0
    if not (least or width):
        return Gap(interval.value_only(size, pair.u, apart(pair.unit), decimals=finest), "", not size)
    printed, held = interval.side_by_side(size, least or width or 0.0, apart(pair.unit), finest)
    return Gap(printed, held, not size, bool(least))


def gap_alone(pair: Comparison, results: Sequence[Result]) -> str:
    """The gap where nothing stands beside it: with no more digits than its interval or its readings bear."""
    size, width = abs(pair.difference or 0.0), half(pair)
    known = [d for r in results if r.estimate and (d := decimals(r)) is not None]
    if not known or not width:
        return gap(pair, results).size
    places = min(max(known), interval.decimals_for(width, None, None) or 0)
    return joined(fixed(size, places), apart(pair.unit)) if rounded(size, places) else gap(pair, results).size


def half(pair: Comparison) -> float | None:
    """Half the interval that decided a pair; where the scatter isn't known, half the instrument's, if any.

    Of an uneven one from draws, how far it reaches from the difference towards zero, which is what decided.
    """
    low, high = (pair.low, pair.high) if pair.low is not None else (pair.differed_low, pair.differed_high)
    if pair.draws and pair.draws.needed and pair.difference is not None and low is not None and high is not None:
        return pair.difference - low if pair.difference >= 0.0 else high - pair.difference
    return None if low is None or high is None else (high - low) / 2


def size(width: float, unit: str) -> str:
    """An amount with two significant digits: a half-width, a smallest gap that can be told."""
    return interval.uncertainty(width, unit)


def _looked_at(result: Result) -> str:
    if result.kind == "yes/no" and result.yes is not None and result.of is not None:
        return say("yes.of", yes=whole(result.yes), of=whole(result.of))
    if result.kind == "order":
        return stood_to_all((x.told, x.degree, x.follows, x.title) for x in result.stands)
    if result.estimate is None:
        return interval.middle_grade(result.grade, result.grades) or say("number.unknown")
    found = result.estimate
    return interval.value_only(found.value, None, found.unit, found.limit, decimals=decimals(result))
