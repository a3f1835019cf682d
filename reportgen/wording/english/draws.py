"""What is said of joint draws (Monte Carlo), where first order wouldn't do or was held against them."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

DRAWS: Mapping[str, str | Forms] = {
    "draws.table": {
        "one": "The interval of {names} comes from {count} draws (Monte Carlo): the formula bends within it, and "
        "taken as straight its ends would be off by up to {off}",
        "other": "The intervals of {names} come from draws (Monte Carlo), {count} for one at the most: the formula "
        "bends within them, and taken as straight their ends would be off by up to {off}",
    },
    "draws.mean": "On average the draws of {name} come to {mean}; the value shown is what the formula makes of the "
    "readings as they stand",
    "draws.open": "After {count} draws the ends of {names} are still only known to {within}",
    "draws.used": "The interval comes from {count} draws of everything that isn’t known (Monte Carlo, JCGM 101). "
    "Taken as straight, to first order, it would be {first}, off by up to {off}",
    "draws.held": "The interval is worked out to first order. {count} draws of everything that isn’t known (Monte "
    "Carlo, JCGM 101) put its ends within {tolerance} of there",
    "draws.not-asked": "The interval is worked out to first order: how far the formula bends within it is too little "
    "to show",
    "draws.middle": "A few draws lie so far out that their standard deviation never settles; their standard "
    "uncertainty is half of what holds the middle 68 % of them",
    "draws.budget": "What it is made of, below, is told to first order, and adds up to {first}; the draws’ own "
    "standard uncertainty, {u}, lies more than a tenth from that, and is the one that counts",
    "draws.beside": "The standard uncertainty is what the budget below adds up to, {first}; the draws’ own is {u}",
    "why-no-u.no-answer": "for too many of the values its readings may stand for the formula has no answer: a divisor, "
    "a logarithm or a root may be of nothing",
    "reason.no-answer": "for too many of the values the readings may stand for the formula has no answer",
    "first.no-answer": "Not ranked: for too many of the values the readings may stand for the formula has no answer",
}
