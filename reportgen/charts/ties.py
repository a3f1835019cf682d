"""Who can't be told apart: the groups that brackets span."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

MOST = 200  # groups; beyond that a bracket tells nobody anything


def tied(order: Sequence[str], resolved: Iterable[tuple[str, str]]) -> tuple[tuple[str, ...], ...] | None:
    """Every largest group of two or more in which no pair is resolved, each in `order`; None where there are too many.

    Two contenders share a group exactly when they can't be told apart. Insert and absorb: H.-P. Piepho, "An
    algorithm for a letter-based representation of all-pairwise comparisons", J. Comput. Graph. Stat. 13 (2004) 456.
    """
    groups: set[frozenset[str]] = {frozenset(order)}
    for first, second in resolved:
        both = {g for g in groups if first in g and second in g}
        if not both:
            continue
        split = {g - {one} for g in both for one in (first, second)}
        kept = groups - both
        groups = kept | {g for g in split if not any(g < other for other in kept | split)}
        if len(groups) > MOST:
            return None
    place = {name: n for n, name in enumerate(order)}
    rows = [tuple(sorted(g, key=place.__getitem__)) for g in groups if len(g) > 1]
    return tuple(sorted(rows, key=lambda g: [place[n] for n in g]))
