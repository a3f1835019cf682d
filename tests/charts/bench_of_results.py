"""Builds a campaign with results in a few lines, as charts take them: numbers given, nothing computed but the mean."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal
from itertools import combinations
from statistics import fmean
from typing import Any

from reportgen.campaign.declared import Amount, Campaign, Contender, Declared, Price, Quantity, Test
from reportgen.evaluation.evaluated import Comparison, Estimate, Evaluation, FirstPlace, PassValue, Result
from reportgen.judgement.measured import Reason

NO_REASON = Reason("lead-within")


def contenders(*names: str) -> tuple[Contender, ...]:
    return tuple(Contender(name.lower().replace(" ", "-"), name) for name in names)


def quantity(id: str = "gas-burned", unit: str = "g", better: Any = "lower", **more: Any) -> Quantity:
    return Quantity(
        id,
        id,
        more.pop("title", id.replace("-", " ").capitalize()),
        more.pop("kind", "one reading"),
        id.replace("-", "_"),
        unit,
        better,
        **more,
    )


def passes(
    values: Sequence[float | None], left_out: Sequence[int] = (), words: Sequence[str] = ()
) -> tuple[PassValue, ...]:
    told = words or [""] * len(values)
    return tuple(
        PassValue("1", str(n + 1), "", v, None, (), "x1" if n in left_out else "", word=told[n])
        for n, v in enumerate(values)
    )


def measured(
    q: Quantity,
    contender: str,
    values: Sequence[float],
    half: float | None = 1.0,
    *,
    left_out: Sequence[int] = (),
    rank: tuple[int, int] | None = (1, 1),
    limit: Any = None,
    blocked: str = "",
    covers: Any = "instrument and scatter",
    missing: str = "",
    value: float | None = None,
) -> Result:
    used = [v for n, v in enumerate(values) if n not in left_out]
    mean = value if limit else (fmean(used) if used else None)
    estimate = None if missing else Estimate(mean, q.unit, None, None, (), (), limit)
    known = mean is not None and half is not None and not limit
    return Result(
        q.test,
        q.id,
        contender,
        "",
        "measured",
        estimate,
        half / 2 if known else None,
        mean - half if known else None,
        mean + half if known else None,
        covers,
        False,
        "",
        passes(values, left_out),
        len(used),
        len(left_out),
        None,
        rank,
        blocked,
        None,
        None,
        "",
        {},
        missing,
        frozenset(),
    )


def compared(q: Quantity, results: Sequence[Result], resolved: Sequence[tuple[str, str]]) -> tuple[Comparison, ...]:
    told = []
    for a, b in combinations([r.contender for r in results], 2):
        yes = (a, b) in resolved or (b, a) in resolved
        told.append(
            Comparison(
                q.test,
                q.id,
                "",
                a,
                b,
                None,
                None,
                None,
                None,
                q.unit,
                "better" if yes else "too close to call",
                yes,
                None,
                None,
                None,
                a if yes else None,
                None,
                NO_REASON,
                None,
                frozenset(),
            )
        )
    return tuple(told)


def campaign(
    tried: Sequence[Contender],
    results: Mapping[Quantity, Sequence[Result]] | Sequence[tuple[Quantity, Sequence[Result]]],
    resolved: Mapping[str, Sequence[tuple[str, str]]] | None = None,
    firsts: Sequence[FirstPlace] = (),
    **more: Any,
) -> tuple[Declared, Evaluation]:
    pairs = list(results.items() if isinstance(results, Mapping) else results)
    tests = tuple(Test(q.test, q.title, (q,), q.id, (), (), False) for q, _ in pairs)
    made = Campaign(
        "stoves",
        "stoves",
        "Stoves",
        "Which stove boils a litre on the least gas?",
        tuple(tried),
        tests,
        {},
        {},
        {},
        **{k: v for k, v in more.items() if k != "verdict_of"},
    )
    told = Evaluation(
        "stoves",
        tuple(r for _, rs in pairs for r in rs),
        tuple(c for q, rs in pairs for c in compared(q, rs, (resolved or {}).get(q.id, ()))),
        tuple(firsts),
        (),
        more.get("verdict_of"),
        (),
        (),
    )
    return Declared(made, {}), told


def amount(text: str) -> Amount:
    number, unit = text.split()
    return Amount(Decimal(number), unit, text)


def priced(contender: Contender, low: str, high: str = "") -> Contender:
    from dataclasses import replace

    price = Price(Decimal(low), Decimal(high or low), "EUR", "paid", text=f"{low} EUR")
    return replace(contender, prices=(price,))
