"""English, part of its table: what was in the box, what looking showed, where a maker contradicts itself."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

PRODUCTS: Mapping[str, str | Forms] = {
    "invented": "The products and readings on these pages are invented.",
    "box.missing": "Missing from the box: {items}",
    "box.words": "{item}: {said}",
    "box.item": "{item} ({said})",
    "claim.box.supported": "We opened the box and found it there: {item}",
    "claim.box.contradicted": "We opened the box and it was missing: {item}",
    "claim.box.undecided": "We opened the box and noted: {item}",
    "claim.at-odds.itself.both": "The maker contradicts itself: these can't both be true",
    "claim.at-odds.itself": "The maker contradicts itself: these can't all be true",
    "claim.at-odds.other": "The maker contradicts itself: elsewhere it says {says}",
    "claim.no-bound": "It gives no figure to hold against the {value} we measured",
    "claim.exact": "It says {bound} and not how near to that is near enough; we measured {value}",
    "claim.no-quantity.why": "It names nothing that we measured. {why}",
    "claim.evidence.laboratory": "{found}. The laboratory doesn't state how uncertain its value is, and that isn't in "
    "that chance",
    "claim.under.measured": "It is claimed under another condition ({under}); under ours we measured {value}",
    "money.currencies": "Prices are in {currencies}, and no rate is assumed: only prices in one currency are compared",
    "money.no-price": "No price is noted for {names}",
    "money.frontier.currency": {
        "one": "Of those priced in {currency} that cost as much as {name} or less, none is shown to be better on "
        "{things}",
        "other": "Of those priced in {currency} that cost as much as {name} or less, none is shown to be better on one "
        "of the {things} and worse on none",
    },
    "money.cheapest.currency": "{name} costs least of those priced in {currency}",
    "money.alone.currency": "No other is priced in {currency}",
    "reason.in-the-box": "settled by looking into the box",
    "reason.no-quantity": "the claim names nothing that was measured",
    "reason.other-condition": "it is claimed under another condition",
    "yardstick.specimens": "these specimens",
    "covers.specimens": "What differs here is one specimen from another, each the mean of its passes",
    "specimen": "Specimen {id}",
    "specimen.serial": "serial {serial}",
    "specimen.bought": "bought {where}",
}
