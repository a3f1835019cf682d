"""Who is worth more, counted over draws: pairwise index, shares of places, who leads.

`worth` is (contenders, draws). Draws closer than `ALIKE` are equal: such a pair counts half, such places are shared.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

ALIKE = 1e-9  # of the way from worst to best: nearer than this, numbers differ by binary fractions alone


def indexes(worth: Numbers, of: int) -> Numbers:
    """The pairwise index of one contender against each: the share of draws in which it is worth more, equals half."""
    import numpy as np

    counted = []
    for other in worth:  # row by row, which stays in the processor's cache
        ahead = worth[of] - other
        counted.append(np.count_nonzero(ahead > ALIKE) + np.count_nonzero(ahead >= -ALIKE))
    return np.asarray(np.divide(counted, 2.0 * worth.shape[1]))


def first_shares(worth: Numbers) -> Numbers:
    """Of each contender the share of draws in which it is worth most; equals share."""
    import numpy as np

    best = worth >= worth.max(axis=0) - ALIKE
    if np.count_nonzero(best) == worth.shape[1]:  # no equals
        return np.asarray(np.divide([np.count_nonzero(row) for row in best], worth.shape[1]))
    sharing = np.count_nonzero(best, axis=0)
    return np.asarray((best / sharing).sum(axis=1) / worth.shape[1])


def place_shares(worth: Numbers) -> Numbers:
    """(contenders, places): the rank acceptability indices (Lahdelma and Salminen 2001, SMAA-2); equals share the
    places that they hold together."""
    import numpy as np

    k, draws = worth.shape
    found = np.zeros((k, k))
    for i in range(k):
        ahead = worth - worth[i]
        better = np.count_nonzero(ahead > ALIKE, axis=0)
        alike = np.count_nonzero(np.abs(ahead) <= ALIKE, axis=0)
        for n in np.unique(alike):
            at = better[alike == n]
            for place in range(n):
                found[i] += np.bincount(at + place, minlength=k)[:k] / n
    return np.asarray(found / draws)


def leader_of(worth: Numbers) -> int | None:
    """The one with the largest share of first places, None where several have exactly that share."""
    import numpy as np

    shares = first_shares(worth)
    most = np.flatnonzero(shares >= shares.max() - ALIKE)
    return int(most[0]) if len(most) == 1 else None
