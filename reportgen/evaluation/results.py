"""What was worked out and judged, put together as the results a page shows."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import replace

from reportgen.campaign.declared import Campaign, Contender, Day, Quantity, Test
from reportgen.evaluation.as_shown import is_corrected
from reportgen.evaluation.budgets import Lines, budget_of
from reportgen.evaluation.evaluated import Estimate, Keys, Result, ResultKind, Stands
from reportgen.evaluation.exact import COUNTED
from reportgen.evaluation.gathered import Gathered
from reportgen.evaluation.inputs import Inputs
from reportgen.evaluation.other_units import in_other_units
from reportgen.evaluation.working import Working, doubt_of
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.judgement.measured import Judged, Single
from reportgen.metrology.combine import mean_of
from reportgen.metrology.errors import NoValue
from reportgen.metrology.uncertain import Limit, Uncertain
from reportgen.wording.day import day
from reportgen.wording.language import say

NOT_YET_TESTED, NOT_READ, NEVER_COMPARED = "not yet tested", "not read", "never compared"


def measured_result(
    campaign: Campaign,
    test: Test,
    quantity: Quantity,
    part: str,
    gathered: Gathered,
    judged: Judged,
    ranked: bool,
    readings: Mapping[ReadingKey, Reading],
    inputs: Inputs,
) -> Result:
    """A measured quantity for one contender. Its interval is judgement's; its budget lists what went in."""
    single = judged.singles.get(gathered.contender)
    mean, used = gathered.mean, [w for w in gathered.passes if w.used]
    if mean is None or single is None:
        return missing_result(
            test, quantity, gathered.contender, part, gathered.passes, gathered.rests_on, gathered.why_none
        )
    doubt = doubt_of(gathered.passes)
    if doubt:
        single = Single(single.name, None, None, None, "instrument", why_no_u=doubt)
    lines = Lines((), None) if doubt else budget_of(gathered, single, inputs)
    own = judged.scatter.by_name.get(gathered.contender)
    estimate = Estimate(
        value=mean.value,
        unit=quantity.unit,
        scatter=own[0] if own else _own_scatter(gathered),
        degrees=own[1] if own else None,
        contributions=lines.contributions,
        steps=gathered.measured.steps,
        limit=mean.limit,
        unknown_accuracy=_unknown(campaign, used, readings),
        decimals=_decimals(campaign, quantity, used, readings),
        assumed_step=COUNTED not in mean.contributions
        and any(_step_assumed(readings[k]) for w in used for k in w.keys),
        effective_degrees=lines.effective_degrees,
        step=mean.unit.kind == "difference",
    )
    return Result(
        test=test.id, quantity=quantity.id, contender=gathered.contender, part=part, kind="measured", estimate=estimate,
        u=single.u, low=single.low, high=single.high, covers=single.covers, at_least=single.at_least,
        why_no_u=_why_no_u(mean, single, used), by_pass=tuple(w.told() for w in gathered.passes), passes=len(used),
        excluded=sum(bool(w.excluded) for w in gathered.passes),
        without=gathered.with_all.value if gathered.with_all else None,
        without_limit=gathered.with_all.limit if gathered.with_all else None,
        rank=judged.ranks.get(gathered.contender) if ranked else None, blocked=gathered.measured.blocked,
        yes=None, of=None, grade="", grades={}, missing="", rests_on=gathered.rests_on,
        also=in_other_units(mean, single, campaign.show),
        laboratory=test.laboratory if quantity.kind == "laboratory" else None,
        draws=single.draws,
    )  # fmt: skip


def _why_no_u(mean: Uncertain, single: Single, used: Sequence[Working]) -> str:
    """Of what was counted nothing is unknown but whether it would be so again; what cancels leaves nothing to know."""
    if single.why_no_u != "accuracy-unknown":
        return single.why_no_u
    if set(mean.contributions) == {COUNTED}:
        return "counted"
    told = (answer for w in used if w.heard for answers in w.heard.answers for answer in answers)
    cancelled = not mean.contributions and any(isinstance(x, Uncertain) and x.contributions for x in told)
    return "cancelled" if cancelled else single.why_no_u


def plain_result(
    test: Test, quantity: Quantity, contender: str, part: str, passes: Sequence[Working], blocked: str
) -> Result:
    """A yes/no, count or grade: shown as it is, without uncertainty or rank."""
    used = [w for w in passes if (w.value is not None or w.word) and not w.excluded]
    rests_on: Keys = frozenset(k for w in passes for k in w.keys)
    if not used:
        return missing_result(test, quantity, contender, part, passes, rests_on)
    yes = of = None
    value: float | None = None
    limit: Limit | None = None
    grades = Counter(w.word for w in used if w.word)
    if quantity.kind == "yes/no":
        yes, of = grades["yes"], len(used)
        value = yes / of
    elif quantity.kind == "count":
        try:
            counted = mean_of([w.value for w in used if w.value is not None])
        except NoValue as reason:
            return missing_result(test, quantity, contender, part, passes, rests_on, reason.says)
        value, limit = counted.value, counted.limit
    kind = _result_kind(quantity)
    return Result(
        test=test.id, quantity=quantity.id, contender=contender, part=part, kind=kind,
        estimate=Estimate(value, quantity.unit, None, None, (), (), limit) if limit or value is not None else None,
        u=None, low=None, high=None, covers="instrument", at_least=False, why_no_u=kind,
        by_pass=tuple(w.told() for w in passes), passes=len(used), excluded=sum(bool(w.excluded) for w in passes),
        without=None, rank=None, blocked=blocked, yes=yes, of=of,
        grade=_middle_grade(quantity, grades) if kind == "grade" else "",
        grades=dict(grades) if kind == "grade" else {}, missing="", rests_on=rests_on,
    )  # fmt: skip


def order_result(
    test: Test,
    quantity: Quantity,
    contender: str,
    part: str,
    passes: Sequence[Working],
    blocked: str,
    stands: tuple[Stands, ...],
    level: int | None,
    rests_on: Keys,
) -> Result:
    """How a contender stood to the others in an order that was only seen: words, never a value or a rank."""
    used = [w for w in passes if w.word and not w.excluded]
    return Result(
        test=test.id, quantity=quantity.id, contender=contender, part=part, kind="order", estimate=None, u=None,
        low=None, high=None, covers="instrument", at_least=False, why_no_u="order",
        by_pass=tuple(w.told() for w in passes), passes=len(used), excluded=sum(bool(w.excluded) for w in passes),
        without=None, rank=None, blocked=blocked, yes=None, of=None, grade="", grades={}, missing="",
        rests_on=rests_on, stands=stands, level=level,
    )  # fmt: skip


def missing_result(
    test: Test,
    quantity: Quantity,
    contender: str,
    part: str,
    passes: Sequence[Working],
    rests_on: Keys,
    why_none: str = "",
) -> Result:
    """No result, and why: not yet tested, or the reasons written beside the readings."""
    reasons = [why_none] if why_none else list(dict.fromkeys(w.absent_because for w in passes if w.absent_because))
    left_out = any(w.excluded for w in passes)
    told = "; ".join(reasons) if reasons else "every pass is left out" if left_out else NOT_READ
    return Result(
        test=test.id, quantity=quantity.id, contender=contender, part=part,
        kind=_result_kind(quantity),
        estimate=None, u=None, low=None, high=None, covers="instrument", at_least=False, why_no_u="no-result",
        by_pass=tuple(w.told() for w in passes), passes=0, excluded=sum(bool(w.excluded) for w in passes), without=None,
        rank=None, blocked="", yes=None, of=None, grade="", grades={},
        missing=told if passes or part or why_none else NOT_YET_TESTED, rests_on=rests_on,
    )  # fmt: skip


def so_far(result: Result, running: Mapping[str, Day]) -> Result:
    """The result of a contender whose run goes on says so; without a reading that is why there is none."""
    since = running.get(result.contender)
    if since is None:
        return result
    said = day(since.first, since.last, since.text)
    code = "missing.still-running" if since.first else "missing.still-running.undated"
    missing = say(code, day=said) if result.missing == NOT_YET_TESTED else result.missing
    return replace(result, running=said, missing=missing)


def untested(contenders: Sequence[Contender], results: Sequence[Result]) -> tuple[str, ...]:
    """Contenders without a result, in the campaign's order."""
    have = {r.contender for r in results if not r.missing}
    return tuple(c.id for c in contenders if c.id not in have)


def _result_kind(quantity: Quantity) -> ResultKind:
    if quantity.kind == "yes/no" or quantity.kind == "count" or quantity.kind == "grade" or quantity.kind == "order":
        return quantity.kind
    return "measured"


def _own_scatter(gathered: Gathered) -> float | None:
    from reportgen.metrology.type_a import standard_deviation

    values = gathered.measured.values
    return standard_deviation(values) if len(values) > 1 else None


def _step_assumed(reading: Reading) -> bool:
    """Whether the digits written stand for the step: no instrument, no width of its own, no laboratory behind it."""
    stated = reading.rough or reading.unweighed or reading.attachment
    return not reading.instrument and reading.value is not None and not stated


def _decimals(
    campaign: Campaign, quantity: Quantity, used: Sequence[Working], readings: Mapping[ReadingKey, Reading]
) -> int | None:
    """The most decimals its readings were written with; None where one is in another unit, has no written digits or is
    corrected, or where a constant or a factor gave the value more: it isn't what was written then."""
    every = [readings[k] for w in used for k in w.keys]
    behind = [r for r in every if r.series is not None or (r.value is not None and (r.limit or not r.unweighed))]
    found = [r.decimals for r in behind if r.decimals is not None and r.unit == quantity.unit]
    if any(is_corrected(campaign.instruments.get(r.instrument)) for r in behind):
        return None
    if not behind or len(found) != len(behind):
        return None
    places = max(found)
    values = [w.value.value for w in used if w.value is not None and w.value.value is not None]
    steps = [x * 10.0**places for x in values]
    return places if all(abs(x - round(x)) <= 1e-9 * max(10.0**places, abs(x)) for x in steps) else None


def _unknown(campaign: Campaign, used: Sequence[Working], readings: Mapping[ReadingKey, Reading]) -> tuple[str, ...]:
    named = dict.fromkeys(readings[k].instrument for w in used for k in w.keys if readings[k].instrument)
    return tuple(i for i in named if i in campaign.instruments and not campaign.instruments[i].accuracy.known)


def _middle_grade(quantity: Quantity, grades: Mapping[str, int]) -> str:
    """The median grade; of an even count, the lower and upper middle ("fair to good") where they differ."""
    given = [g for g in quantity.grades for _ in range(grades.get(g, 0))]
    if not given:
        return ""
    low, high = given[(len(given) - 1) // 2], given[len(given) // 2]
    return low if low == high else f"{low} to {high}"
