"""Observations within groups: days, specimens, set-ups, each with repeats of its own (JCGM 100, H.5).

Repeats within a group show nothing of what differs from group to group, so a group is one value, the mean of its
repeats, and the groups' scatter alone tells how well their mean is known.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from reportgen.metrology.errors import MetrologyError
from reportgen.metrology.orthogonal import Number, as_float, as_fraction, dot, root


@dataclass(frozen=True)
class Nested:
    """What J groups of observations say; all in the observations' unit.

    `mean` of the groups' means with `u` = `sd_of_means`/√J and `degrees` J − 1. `s_between` and `s_within` are the two
    estimates of one observation's standard deviation that H.5.2 compares, from between the groups' means and from
    within them, and `f` is the ratio of their squares; None where a group has only one observation each. `between` is
    the groups' own standard deviation beside that of repeats (H.5.2.6), 0 where none shows.
    """

    mean: float
    sd_of_means: float
    u: float
    degrees: int
    s_between: float
    s_within: float | None
    degrees_within: int
    f: float | None
    between: float | None


def nested(groups: Sequence[Sequence[Number]]) -> Nested:
    """The analysis of variance of groups, of like size or not (JCGM 100, H.5.2; exact sums, rounded once).

    Two days of three readings:

    >>> found = nested([[10.0, 11.0, 12.0], [13.0, 14.0, 15.0]])
    >>> found.mean, found.u, found.degrees, found.f
    (12.5, 1.5, 1, 13.5)

    Where groups differ in size the mean of their means is no longer the mean of all, and `f` is that of the one-way
    layout, Σnⱼ(x̄ⱼ − x̄)²/(J − 1) over the pooled variance, `between` by its expectation (n₀ in place of K).

    Raises MetrologyError for fewer than two groups, or an empty one.
    """
    sets = [[as_fraction(x) for x in group] for group in groups]
    if len(sets) < 2 or not all(sets):
        raise MetrologyError("one group says nothing of how groups differ", "give two or more, none of them empty")
    j, n = len(sets), sum(map(len, sets))
    means = [sum(group, Fraction(0)) / len(group) for group in sets]
    middle, overall = sum(means, Fraction(0)) / j, sum((x for group in sets for x in group), Fraction(0)) / n
    of_means = _squares(means, middle) / (j - 1)
    between = sum((len(g) * (m - overall) ** 2 for g, m in zip(sets, means, strict=True)), Fraction(0)) / (j - 1)
    within = sum((_squares(g, m) for g, m in zip(sets, means, strict=True)), Fraction(0)) / (n - j) if n > j else None
    usual = (n - Fraction(sum(len(g) ** 2 for g in sets), n)) / (j - 1)
    return Nested(
        as_float(middle), root(of_means), root(of_means / j), j - 1, root(between),
        None if within is None else root(within), n - j, as_float(between / within) if within else None,
        None if within is None else root(max(Fraction(0), between - within) / usual),
    )  # fmt: skip


def _squares(values: Sequence[Fraction], about: Fraction) -> Fraction:
    off = [value - about for value in values]
    return dot(off, off)
