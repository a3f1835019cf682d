"""Scatter of past campaigns put in the place of a repeatability that the method would have stated."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from math import floor, fsum, sqrt

from reportgen.campaign.declared import Amount, Declared, Method, Quantity, Repeatability, Test
from reportgen.evaluation.history import History, LookedBack, PastLeftOut, PastScatter
from reportgen.intake.reading import Readings
from reportgen.metrology.errors import UnitError
from reportgen.metrology.unit import convert, parse_unit


def with_history(declared: Declared, readings: Readings, history: History) -> tuple[Declared, tuple[LookedBack, ...]]:
    """The declarations as they would be, had their methods stated what past campaigns show; and what that was.

    Scatters are pooled by their degrees of freedom, each of one pass (JCGM 100, 4.2.4); relative ones in logarithms.
    """
    campaign, told = declared.campaign, []
    methods = dict(campaign.methods)
    for test in campaign.tests:
        name = f"{test.method}.{test.method_version}"
        method = methods.get(name)
        if method is None:
            continue
        recorded = readings.rounds_recorded.get(test.id) or readings.order_recorded.get(test.id)
        rounds = test.order == "rounds" and bool(recorded)
        for quantity in (q for q in test.quantities if method.looks_back(q.id)):
            found = _looked_back(test, quantity, method, history, rounds)
            told.append(found)
            if found.degrees:
                methods[name] = _with(methods[name], quantity, found, test.scatter == "relative")
    return replace(declared, campaign=replace(campaign, methods=methods)), tuple(told)


def _looked_back(test: Test, quantity: Quantity, method: Method, history: History, rounds: bool) -> LookedBack:
    asked = method.id, method.version, quantity.id
    left_out = list(history.left_out.get(asked, ()))
    used: list[PastScatter] = []
    for past in history.known.get(asked, ()):
        fitted = _fitted(past, test, quantity)
        if isinstance(fitted, PastLeftOut):
            left_out.append(fitted)
        else:
            used.append(fitted)
    scatters = [(p.sd, p.degrees) if rounds else (p.within_sd, p.within_degrees) for p in used]
    degrees = fsum(n for _, n in scatters)
    sd = sqrt(fsum(n * s * s for s, n in scatters) / degrees) if degrees else 0.0
    return LookedBack(test.id, quantity.id, sd, floor(degrees), tuple(used), tuple(left_out), history.undated)


def _fitted(past: PastScatter, test: Test, quantity: Quantity) -> PastScatter | PastLeftOut:
    """The same in this campaign's unit, or why it can't be used."""
    if past.relative != (test.scatter == "relative"):
        return PastLeftOut(past.campaign, past.title, "another rule")
    if past.relative:
        return past
    try:
        times = convert(1.0, parse_unit(past.unit), parse_unit(quantity.unit), difference=True)
    except UnitError:
        return PastLeftOut(past.campaign, past.title, "another unit")
    return replace(past, sd=past.sd * times, within_sd=past.within_sd * times, unit=quantity.unit)


def _with(method: Method, quantity: Quantity, found: LookedBack, relative: bool) -> Method:
    unit = "" if relative else quantity.unit
    sd = Amount(Decimal(repr(found.sd)), unit, f"{found.sd!r} {unit}".strip())
    titles = "; ".join(dict.fromkeys(c.title for c in found.campaigns))
    stated = Repeatability(sd, found.degrees, titles, past=True)
    return replace(method, repeatability={**method.repeatability, quantity.id: stated})
