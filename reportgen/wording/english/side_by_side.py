"""English, part of its table: contenders side by side."""

from __future__ import annotations

from collections.abc import Mapping

SIDE_BY_SIDE: Mapping[str, str] = {
    "page.side.title": "{first} and {second}, side by side",
    "page.side.description": "{first} and {second} in “{campaign}”: what each is, both results on every test, what was "
    "decided between them and why.",
    "page.side.choose": "Side by side",
    "page.side.choose.description": "Any two or three contenders of “{campaign}” side by side.",
    "page.side.choose.says": "Every pair has a page of its own: both results on every test, what was decided between "
    "the two, and why.",
    "page.side.ahead": "{name} shown to be better",
    "page.side.nothing-matters": "No difference that matters",
    "page.side.close": "Not told apart",
    "page.side.unknown": "Not enough to say",
    "page.side.none": "Not compared",
    "page.side.received": "As it came",
    "page.side.claims.other": "Not measured",
    "page.side.weighed": "As the verdict weighs, {ahead} is worth more than {behind} in {draws} draws: {firmness}.",
    "on.side.heading": "{first} and {second}",
    "on.side.short": "Between the two",
    "on.side.measured": "What we measured",
    "on.side.what": "Measured",
    "on.side.papers": "What they are",
    "on.side.named": "Of each",
    "on.side.described": "Measured, with no better or worse",
    "on.side.gap": "First less second: {difference}.",
    "on.side.not-noted": "not noted",
    "on.side.no-result": "no result",
    "on.side.no-claim": "no claim",
    "on.side.claims": "Claimed, and found of the ones we bought",
    "on.side.claim-of": "About",
    "on.side.cannot-tell": "What this can’t tell you",
    "on.side.others": "Others side by side",
    "on.side.all": "Choose from all",
    "on.side.pairs": "Every pair",
    "on.side.choose": "Choose two or three",
    "on.side.first": "First",
    "on.side.second": "Second",
    "on.side.third": "Third",
    "on.side.nobody": "nobody",
    "on.side.two-chosen": "Two are shown below.",
    "on.side.three-chosen": "Three are shown below.",
    "on.side.in-full": "In full, with reasons:",
    "on.side.pair": "{first} and {second}",
    "on.side.table": "Those chosen, side by side",
    "on.side.with": "Side by side with:",
    "on.side.any": "Any two or three side by side",
}
