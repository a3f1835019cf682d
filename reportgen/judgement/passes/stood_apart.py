"""A contender that scatters further than the others, and a pass that stands apart from the rest of its contender's.

Cochran's test of the largest of several variances and Grubbs' of the largest deviation (ISO 5725-2:1994, 7.3.3 and
7.3.4). Both only tell: nothing is left out for them, and no rule is chosen by them.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import fsum, inf, sqrt

from reportgen.judgement.pooling import pooled, standard_deviation

Passes = Mapping[str, Sequence[float]]  # by contender, in the order they ran
FROM_PASSES = 3  # of two, nobody can tell which one stands apart


@dataclass(frozen=True)
class Uneven:
    """`name` scatters by `sd`, the others together by `others`; `share` is its part of all squares (Cochran's C). Among
    contenders that scatter alike, some share so large comes up with a chance of `p`."""

    name: str
    sd: float
    others: float
    share: float
    p: float


@dataclass(frozen=True)
class Apart:
    """Pass number `at` (from 0, of those that count) of `name` lies `off` from the mean of its contender's, in units of
    the scatter `ratio`; among passes that belong together some lies so far with a chance of `p`."""

    name: str
    at: int
    value: float
    off: float
    ratio: float
    p: float


def uneven(passes: Passes, rounding: float = 0.0) -> Uneven | None:
    """The contender with the largest variance held against all; None where fewer than two have two passes.

    With unequal passes the squares are compared, each with its own degrees of freedom ('t Lam 2010, Analytica Chimica
    Acta 659:68); with equal ones that is Cochran's C. Bonferroni's factor for the number of contenders is exact where C
    exceeds one half, and else on the safe side. `rounding`: the variance that steps give one pass.

    >>> found = uneven({"a": (10.0, 10.1, 9.9), "b": (10.0, 13.0, 7.0), "c": (9.9, 10.0, 10.1)})
    >>> found.name, found.p < 0.01
    ('b', True)
    """
    from scipy.special import betainc

    known = {name: standard_deviation(values) for name, values in passes.items() if len(values) > 1}
    if len(known) < 2:
        return None
    squares = {name: degrees * with_steps(sd * sd, rounding) for name, (sd, degrees) in known.items()}
    total, free = fsum(squares.values()), sum(degrees for _, degrees in known.values())
    if total <= 0.0:
        return None
    chance = {
        name: float(betainc((free - degrees) / 2.0, degrees / 2.0, 1.0 - min(1.0, squares[name] / total)))
        for name, (_, degrees) in known.items()
    }
    name = min(chance, key=lambda one: (chance[one], -squares[one]))
    others, _ = pooled([passes[other] for other in known if other != name])
    return Uneven(name, known[name][0], others, squares[name] / total, min(1.0, len(known) * chance[name]))


def with_steps(square: float, rounding: float) -> float:
    """A variance of passes with the part that steps hide: under half a step (a quarter of δ² is three times δ²/12) what
    is read shows less than there is, and their variance is added, as it is for half-widths."""
    return square + rounding if square < 3.0 * rounding * (1.0 - 1e-9) else square


def cochran_critical(contenders: int, passes: int, level: float) -> float:
    """Cochran's C that the largest of so many variances, each of so many passes, exceeds with a chance of `level`.

    ISO 5725-2, table 4 (four contenders, three passes, 1 %):

    >>> round(cochran_critical(4, 3, 0.01), 3)
    0.864
    """
    from scipy.special import betaincinv

    degrees = passes - 1
    tail = betaincinv((contenders - 1) * degrees / 2.0, degrees / 2.0, level / contenders)
    return float(1.0 - tail)


def pass_apart(passes: Passes, rounding: float = 0.0, *, own: bool = False) -> Apart | None:
    """The pass furthest from its contender's mean, held against the scatter of all, or under `own` of its contender.

    Grubbs' test for one contender; for several the residuals over one pooled scatter, its form for residuals (Stefansky
    1972, Technometrics 14:469). Only contenders with three passes or more have one to name.
    """
    if own:
        found = [a for name, values in passes.items() if (a := _furthest({name: values}, rounding))]
        if not found:
            return None
        best = min(found, key=lambda a: a.p)
        return Apart(best.name, best.at, best.value, best.off, best.ratio, min(1.0, best.p * len(found)))
    return _furthest(passes, rounding)


def _furthest(passes: Passes, rounding: float) -> Apart | None:
    from scipy.special import stdtr

    sd, degrees = pooled(list(passes.values()))
    sd = sqrt(with_steps(sd * sd, rounding))
    many = {name: values for name, values in passes.items() if len(values) >= FROM_PASSES}
    if not many or degrees < 2 or sd <= 0.0:
        return None
    seen = []
    for name, values in many.items():
        n, mean = len(values), fsum(values) / len(values)
        for at, value in enumerate(values):
            seen.append((abs(value - mean) / sqrt(1.0 - 1.0 / n), name, at, value, value - mean))
    size, name, at, value, off = max(seen, key=lambda one: one[0])
    square = min(size / sd, sqrt(degrees)) ** 2
    t = inf if square >= degrees * (1.0 - 1e-12) else sqrt(square * (degrees - 1.0) / (degrees - square))
    p = min(1.0, 2.0 * len(seen) * float(stdtr(degrees - 1.0, -t))) if t < inf else 0.0
    return Apart(name, at, value, off, abs(off) / sd, p)


def grubbs_critical(passes: int, level: float) -> float:
    """Grubbs' G that the furthest of so many passes, either way, exceeds with a chance of `level`, in units of their
    standard deviation.

    ISO 5725-2, table 5 (five values, 1 %):

    >>> round(grubbs_critical(5, 0.01), 3)
    1.764
    """
    from scipy.special import stdtrit

    t = -float(stdtrit(passes - 2.0, level / (2.0 * passes)))
    return (passes - 1.0) / sqrt(passes) * sqrt(t * t / (passes - 2.0 + t * t))
