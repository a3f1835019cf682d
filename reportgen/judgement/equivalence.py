"""Whether a difference matters: its interval against the margin that was fixed before the data.

The same interval decides whether it is resolved, so a reader can check both (two one-sided tests; Schuirmann 1987).
"""

from __future__ import annotations


def matters_beyond(low: float, high: float, resolved: bool, matters: float | None) -> tuple[bool, bool | None]:
    """(no difference that matters, better by an amount that matters).

    The second is True where the whole interval lies beyond the margin, False where it lies inside, None where it lies
    across or no margin was set. `matters` is in the unit of the interval. Two one-sided tests at 2.5 % are the 95 %
    interval inside the margin (Schuirmann 1987):

    >>> matters_beyond(-0.9, 0.4, resolved=False, matters=1.0)
    (True, False)
    >>> matters_beyond(1.2, 2.4, resolved=True, matters=1.0), matters_beyond(0.2, 1.4, resolved=True, matters=1.0)
    ((False, True), (False, None))
    """
    if matters is None:
        return False, None
    if -matters < low and high < matters:
        return True, False
    if resolved and (low > matters or high < -matters):
        return False, True
    return False, None
