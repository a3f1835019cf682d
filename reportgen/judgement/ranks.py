"""Ranks as ranges: from one place after all that are resolved better to one before all that are resolved worse."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence


def rank_ranges(names: Sequence[str], resolved: Iterable[tuple[str, str]]) -> Mapping[str, tuple[int, int]]:
    """Rank of each of k names, [1 + resolved better, k − resolved worse]; `resolved` holds (better, worse).

    >>> rank_ranges("abcd", [("a", "c"), ("a", "d"), ("b", "d")])
    {'a': (1, 2), 'b': (1, 3), 'c': (2, 4), 'd': (3, 4)}
    """
    before = dict.fromkeys(names, 0)
    behind = dict.fromkeys(names, 0)
    for better, worse in resolved:
        before[worse] += 1
        behind[better] += 1
    return {name: (1 + before[name], len(names) - behind[name]) for name in names}
