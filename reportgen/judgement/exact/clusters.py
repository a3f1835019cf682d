"""Do events come by themselves, as was said of them? Fisher's index of dispersion over the passes of all contenders."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

AT = 0.01  # one campaign in a hundred is told so wrongly


def in_clusters(counts: Iterable[tuple[Sequence[int], Sequence[float]]]) -> float | None:
    """How likely events that come independently of each other would scatter from pass to pass at least as far.

    `counts`: of each contender the events of its passes, and over how much each pass was counted. Σ(x − e)²/e over
    passes, e their part of the contender's total, is χ² with passes less contenders of freedom (Fisher 1950, Biometrics
    6:17); None where no pass was repeated, or nothing happened.

    Twelve events in three passes, all of them in one, are Σ(x − 4)²/4 = 24 with two degrees of freedom: exp(−12).

    >>> from math import exp
    >>> round(in_clusters([((12, 0, 0), (1.0, 1.0, 1.0))]) / exp(-12), 6)
    1.0
    """
    index, freedom = 0.0, 0
    for events, over in counts:
        if len(events) < 2 or not sum(events):
            continue
        expected = [sum(events) * e / sum(over) for e in over]
        index += sum((x - e) ** 2 / e for x, e in zip(events, expected, strict=True))
        freedom += len(events) - 1
    if not freedom:
        return None
    from scipy.special import chdtrc

    return float(chdtrc(freedom, index))
