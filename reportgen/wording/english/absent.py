"""English, part of its table: why a reading or a pass has no value, where the program says so and not the author.

Rooms below know no phrases and say it in these very English words; `wording/reason.py` knows them again by their key.
"""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

ABSENT: Mapping[str, str | Forms] = {
    "absent.unfinished": "did not finish",
    "absent.unfinished.why": "did not finish ({why})",
    "absent.no-reading": "no reading",
    "absent.part": "part {part} was not read",
    "absent.against": "{name}, which it was read against, was not read: {why}",
    "absent.never": "{of} was never read",
    "absent.of-part": "{name} of {part}: {why}",
    "absent.not-in-parts": "{of} was not read in parts, and a line goes through several",
    "absent.quantity": "{quantity} of {name} was not read",
    # a formula that gives none
    "absent.pull-apart": "one value is only known to lie above a limit and another below one: together they can be "
    "anything",
    "absent.pull-apart.passes": "some passes are only known to lie above a limit and others below one: the one asked "
    "for can be anything",
    "absent.two-bounds": "two bounds, one of unknown size, can't be multiplied",
    "absent.divided-by-bound": "a division by a value that could be nothing",
    "absent.divided-by-zero": "a division by zero",
    "absent.even-power": "an even power of a bound that could have either sign",
    "absent.root-of-negative": "a root of a negative value",
    "absent.root-of-zero": "a root of zero has no uncertainty of first order",
    "absent.logarithm": "a logarithm of a value that isn't above zero",
    "absent.angle": "{function}(…) of a bound can be anything",
    "absent.background": "a level off the scale over a background that may be as loud can be anything",
    "absent.too-large": "a number too large to hold",
    "absent.too-small": "a number too small to hold",
    "absent.bound-drawn": "a bound can't be drawn",
    "absent.no-sensitivity": "{of} is only a bound: it has no sensitivity",
    "absent.no-interval": "no interval: in more than one draw in a thousand a divisor, a logarithm or a root may be of "
    "nothing, or the result too large to hold",
    # a line through points
    "absent.fit-bound": "a point of a fit is only a bound",
    "absent.fit-at-bound": "a curve at a bound",
    "absent.fit-few": "{n} points and {parameters} parameters leave no scatter to judge the fit by",
    "absent.fit-close": "the points lie too few apart to fit this to them",
    # a trace
    "absent.no-sample": "{of} has no sample there",
    "absent.two-samples": "{of} has no two samples there",
    "absent.one-sample.mean": "{of} has one sample there, and no mean over time",
    "absent.one-sample.area": "{of} has one sample there, and no area",
    "absent.slope.few": "a slope with its uncertainty takes three samples, and {of} has {n} there",
    "absent.slope.bounds": "{of} goes off its scale there, and bounds have no slope",
    "absent.slope.bent": "{of} doesn't run along a straight line there",
    "absent.stretch.unread": "the stretch of {of} begins or ends where nothing was read",
    "absent.stretch.backwards": "the stretch of {of} ends before it begins",
    "absent.plateau.few": "too few samples to be called level: {of} has {n} in {time} s, one every {every} s, and a "
    "plateau takes {least}",
    "absent.plateau.never": "{of} never stayed within ±{most} for {time} s",
    "absent.time.gap": "nothing was logged of {of} at that time",
    "absent.time.off-scale": "{of} was off the scale at that time",
    "absent.time.outside": "that time lies outside of what was logged of {of}",
    "absent.time.unknown": "the trace of {of} isn't long enough to know that time",
    "absent.limit.over": "{of} lay over the limit from its first sample on",
    "absent.limit.under": "{of} lay under the limit from its first sample on",
    "absent.limit.unknown": "the limit for {of} isn't known",
    "absent.limit.never": "{of} never passed the limit as far as that is known, and the limit may lie nearer",
    "absent.limit.off-scale": "the limit lies off the scale of {of}, where its samples are only bounds",
    "absent.smooth.samples": "{of} has no two samples in the time it is to be smoothed over, which would change "
    "nothing",
    "absent.smooth.long": "no stretch of {of} is as long as it is to be smoothed over",
    "absent.smooth.off-scale": "{of} goes off both ends of its scale within the time it is smoothed over",
}
