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
    "claim.line.supported.several": "{says}: supported for the {count} we bought",
    "claim.line.contradicted.several": "{says}: contradicted by the {count} we bought",
    "claim.line.undecided.several": "{says}: undecided for the {count} we bought",
    "claim.of.one": "{outcome} for the one we bought",
    "claim.of.several": "{outcome} for the {count} we bought",
    "claim.tested-so": "It is claimed under this condition, and so it was tested: {under}",
    "claim.would-show.at-most": "It would have to measure at most {amount} to count as shown",
    "claim.would-show.at-least": "It would have to measure at least {amount} to count as shown",
    "claim.would-show.range": "It would have to measure from {low} to {high} to count as shown",
    "claim.too-narrow": "What the claim leaves is too narrow: measured like this, no value would count as shown",
    "claim.counted": "In this run we counted {value} where the claim has {bound}",
    "claim.none-counted": "Where such things happen at random, none so far still leaves up to {upper} a run",
    "claim.share": "It did so in {value} where the claim has {bound}",
    "claim.share.all": "With 95\u00a0% confidence it does so at least {low} of the time",
    "claim.share.none": "With 95\u00a0% confidence it does so at most {high} of the time",
    "claim.share.between": "It may do so between {low} and {high} of the time, each limit with 95\u00a0% confidence",
    "claim.share.never": "No number of tries can show that it never fails",
    "claim.no-number": "The claim has {bound}, and what was seen is no number: {value}",
    "claim.under.measured.ours": "It is claimed under another condition ({under}); under ours ({ours}) we measured "
    "{value}",
    "reason.no-number": "what was seen is no number",
    "reason.counted-share": "how often it did so was counted",
    "reason.counted-events": "how often it happened was counted",
    "claim.under.measured": "It is claimed under another condition ({under}); under ours we measured {value}",
    "money.currencies": "Prices are in {currencies}, and no rate is assumed: only prices in one currency are compared",
    "money.no-price": "No price is noted for {names}",
    "money.frontier.currency": {
        "one": "Nothing priced in {currency} that costs no more is shown to be better than {name} on {things}",
        "other": "Nothing priced in {currency} that costs no more is better all round than {name}",
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
