"""What was learned where nobody is told apart from anybody: how small a gap would have counted, what is ruled out."""

from __future__ import annotations

from reportgen.evaluation.evaluated import Comparison
from reportgen.prose import amounts
from reportgen.prose.standing import Standing
from reportgen.wording.percent import apart


def pairs_of(s: Standing, who: tuple[str, ...] = ()) -> tuple[Comparison, ...]:
    """The pairs among some contenders, else among all that are ranked."""
    of = who or tuple(r.contender for r in s.ranked)
    return tuple(c for c in s.comparisons if c.first in of and c.second in of)


def none_that_matters(s: Standing, who: tuple[str, ...] = ()) -> bool:
    """Is every difference among them shown to be less than would matter?"""
    pairs = pairs_of(s, who)
    decided = all(c.decision == "no difference that matters" for c in pairs)
    return bool(pairs) and s.quantity.matters is not None and decided


def largest_gap_hidden(s: Standing) -> str:
    """The largest gap that might have gone unseen: from any more on, one of the two would have been named ahead.

    "" where a pair has no such width.
    """
    pairs = pairs_of(s)
    widths = [(amounts.half(c), c) for c in pairs]
    known = [(w, c) for w, c in widths if w is not None and c.low is not None]
    if not known or len(known) < len(pairs):
        return ""
    widest = max(known, key=lambda found: found[0])[1]
    return amounts.gap(widest, s.of_pair(widest)).half


def ruled_out(s: Standing) -> str:
    """What no true difference between two of them reaches, by the intervals of all pairs together; "" where unknown.

    The intervals hold for all pairs at once (JUDGING, section 5), so their farthest end bounds every difference.
    """
    ends = [end for c in pairs_of(s) for end in (c.low, c.high)]
    known = [abs(end) for end in ends if end is not None]
    if not known or len(known) < len(ends):
        return ""
    return amounts.size(max(known), apart(s.quantity.unit))
