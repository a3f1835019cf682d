"""English, part of its table: an order that was only seen, and what a laboratory states."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

ORDERS: Mapping[str, str | Forms] = {
    # how one contender stood to others
    "order.less": "less than {names}",
    "order.less.a-little": "a little less than {names}",
    "order.less.much": "much less than {names}",
    "order.more": "more than {names}",
    "order.more.a-little": "a little more than {names}",
    "order.more.much": "much more than {names}",
    "order.alike": "about like {names}",
    "order.in-short.less": "less than {letters}",
    "order.in-short.more": "more than {letters}",
    "order.in-short.alike": "like {letters}",
    "order.in-short.both-ways": "unclear: {letters}",
    "order.both-ways": "not the same in every look against {names}",
    "order.never": "never compared with {names}",
    "order.less.follows": "so less than {names}",
    "order.more.follows": "so more than {names}",
    "order.several": "; ",
    # the order as a whole
    "order.chain": "{title}, least first: {chain}",
    "order.chain.then": ", then ",
    "order.chain.a-little": "{name} (a little more)",
    "order.chain.much": "{name} (much more)",
    "order.said": "{title}: {said}",
    "order.of": "{name} {stood}",
    "order.several.of-one": ", ",
    "order.never-compared": {"one": "{names} was never compared", "other": "{names} were never compared"},
    "order.round": "Over several looks {names} go round in a circle, so nothing puts one of them before another",
    "order.apart": {
        "one": "Never put side by side, nor ordered through others: {pairs}",
        "other": "{count} pairs were never put side by side, nor ordered through others",
    },
    "order.pair": "{first} and {second}",
    "order.looks": {
        "one": "It is one look: whether a second would agree isn't known, and nobody has a rank",
        "other": "That is from {count} looks; how far looks differ by chance isn't known, and nobody has a rank",
    },
    "finding.order": "Least first: {chain}",
    "finding.order.said": "Only an order was seen",
    "answer.order-only": "An order was seen; there is no rank",
    # a pair
    "pair.order.less": "less",
    "pair.order.more": "more",
    "pair.order.alike": "about alike",
    "pair.order.both-ways": "looks disagree",
    "pair.order.never": "not compared",
    "pair.order.means": "{what}: {first} {stood}, as it was noted; that it would be so again isn't shown",
    "pair.order.means.follows": "{what}: {first} {stood}; that follows through {through}, "
    "and no look at the two side by side was noted",
    "pair.order.means.alike": "{what}: {first} {stood}, as it was noted; a small difference may have gone unnoticed",
    "pair.order.means.both-ways": "{what}: the looks don’t agree on {first} and {second}, so nothing is made of them",
    "pair.order.means.never": "They were never put side by side, and nothing seen of others orders them",
    "reason.order-seen": "an order was seen, and how far looks differ by chance isn't known",
    "reason.order-follows": "it follows from what was seen of others",
    "reason.order-both-ways": "the looks don't agree",
    "reason.order-never": "they were never compared",
    "why-no-u.order": "only an order was seen",
    "missing.never-compared": "never compared",
    # laboratories
    "met.not-found": "Not found isn’t none: this “{what}” lies anywhere from 0 to the limit of what {laboratory} can "
    "find, and counts as that bound, never as half of it.",
    "met.found": "Found, but without a number: this “{what}” lies between {low}, from where {laboratory} finds "
    "it, and {high}, from where it states numbers, every value between as likely as any other.",
    "met.no-uncertainty": "{laboratory} doesn’t state how uncertain its values of “{what}” are: ranges hold the "
    "rounding of the report and nothing else, and are too narrow.",
    "covers.about.laboratory": "Intervals of 95 %, of what the laboratory states alone: "
    "whether another sample would agree isn’t known",
    "covers.at-least.laboratory": "Intervals of at least 95 %, of what the laboratory states alone: "
    "whether another sample would agree isn’t known",
    "covers.about.rounding": "Intervals of 95 %, of the rounding of the report alone: the laboratory states no "
    "uncertainty, and whether another sample would agree isn’t known",
    "covers.at-least.rounding": "Intervals of at least 95 %, of the rounding of the report alone: the laboratory "
    "states no uncertainty, and whether another sample would agree isn’t known",
    "laboratory.uncertainty": "{uncertainty}, coverage factor {k}",
    "laboratory.not-stated": "not stated",
    "laboratory.sample": "The laboratory answers for the sample it got. How that was taken, kept and sent is for those "
    "to answer who took it.",
}
