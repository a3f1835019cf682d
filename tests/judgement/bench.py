"""Results to judge in one line each: what tests of this room start from."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from reportgen.judgement.judging import judge
from reportgen.judgement.measured import Judged, Measured, Pair, Rules


def result(name: str, *values: float, **more: Any) -> Measured:
    """A contender whose result is the mean of its passes."""
    return Measured(name, sum(values) / len(values), tuple(float(x) for x in values), **more)


def judged(passes: Mapping[str, Sequence[float]], rules: Rules, **more: Any) -> Judged:
    return judge([result(name, *values, **more) for name, values in passes.items()], rules)


def pair(found: Judged, first: str, second: str) -> Pair:
    return next(p for p in found.pairs if (p.first, p.second) == (first, second))


LOWER, HIGHER = Rules("lower"), Rules("higher")
