"""A result in one line of text, as the pages print it but with plain spaces."""

from __future__ import annotations

from reportgen.evaluation.evaluated import Result
from reportgen.evaluation.found_between import found_between
from reportgen.wording import interval
from reportgen.wording.count import whole
from reportgen.wording.language import say
from reportgen.wording.order import stood_to_all
from reportgen.wording.reason import why_missing, why_no_u
from reportgen.wording.unit import joined

_PLAIN_SPACES = str.maketrans({"\u00a0": " ", "\u202f": " ", "\u2009": " "})


def printed(result: Result) -> str:
    """ "14.20 g (13.58 to 14.82)", "more than 999 ppm", "3 of 4", "good", "not yet tested"."""
    return _printed(result).translate(_PLAIN_SPACES)


def why_none(result: Result) -> str | None:
    """Why a result has no uncertainty, in words; None where it has one."""
    if result.u is not None:
        return None
    if result.missing:
        return why_missing(result.missing)
    return why_no_u("not-measured" if result.kind != "measured" else result.why_no_u) or None


def _printed(result: Result) -> str:
    if result.missing:
        return why_missing(result.missing)
    if result.kind == "yes/no" and result.yes is not None and result.of is not None:
        return say("yes.of", yes=whole(result.yes), of=whole(result.of))
    if result.kind == "order":
        return stood_to_all((x.told, x.degree, x.follows, x.title) for x in result.stands)
    estimate = result.estimate
    if estimate is None:
        return interval.middle_grade(result.grade, result.grades) or say("number.unknown")
    if result.running and estimate.limit == "above":
        return interval.so_far(estimate.value, estimate.unit)
    if result.why_no_u == "counted":
        return interval.counted(estimate.value, estimate.unit)
    if limits := found_between(result):
        return joined(interval.as_typed(*limits), estimate.unit)
    decimals = interval.decimals_of_steps(estimate.steps, result.passes)
    if result.kind == "count":
        decimals = interval.decimals_of_mean(estimate.value)
    if result.kind != "measured":
        return interval.value_only(estimate.value, None, estimate.unit, estimate.limit, decimals=decimals)
    return interval.printed(
        estimate.value,
        result.u,
        result.low,
        result.high,
        estimate.unit,
        estimate.limit,
        why_none(result) or "",
        decimals=decimals,
    )
