"""English, part of its table: how far a claim's outcome reaches, and who of several is ahead of whom."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

REACH: Mapping[str, str | Forms] = {
    # a claim's outcome, as wide as it was tested: one specimen, our conditions, this run or a repeat
    "claim.of.tested": "{outcome} for the one we tested",
    "claim.of.several.tested": "{outcome} for the {count} we tested",
    "claim.line.supported.tested": "{says}: supported for the one we tested",
    "claim.line.contradicted.tested": "{says}: contradicted by the one we tested",
    "claim.line.undecided.tested": "{says}: undecided for the one we tested",
    "claim.line.supported.several.tested": "{says}: supported for the {count} we tested",
    "claim.line.contradicted.several.tested": "{says}: contradicted by the {count} we tested",
    "claim.line.undecided.several.tested": "{says}: undecided for the {count} we tested",
    "claim.reach.repeat": "{said}, under our conditions",
    "claim.reach.this-run": "{said}, in this run",
    "claim.at-odds.held": "Only {bound} is held against the readings",
    # single readings
    "first.once.alike.ahead": "{names} read {place} in this run, {beside} {others}, and can't be told apart even in it",
    # who of those that may be first beats the rest
    "first.beat.named": {
        "one": "Of these {ahead} alone beats {others}",
        "other": "Of these {ahead} beat {others}",
    },
}
