"""The rules on what readers are shown besides results: prices, texts, pictures."""

from __future__ import annotations

from reportgen.audit import pictures, prices, texts
from reportgen.audit.case import Rule

SHOWN: tuple[Rule, ...] = (
    Rule(
        "sold-as-one", "warning",
        "Two of one product are two specimens: as rivals they hide how far one differs from the next.",
        "Make them one contender with `specimens:`; where their models do differ, say so under `model:`.",
        prices.sold_as_one,
    ),
    Rule(
        "use-in-other-money", "warning",
        "No rate is assumed, so their costs can't be held against the others'.",
        "Give all prices, and the price in the formula, in one currency, as paid.",
        prices.use_in_other_money,
    ),
    Rule(
        "price-of-nothing", "warning",
        "At a price of nothing it undercuts every other, whatever it is like.",
        "Where it was given away, write `supplied by:` and what it is listed at; correct the price where it is a slip.",
        prices.priced_at_nothing,
    ),
    Rule(
        "prices-apart", "note",
        "Prices move in a year; then two days are compared and not two products.",
        "Look the older one up again and add it to `prices:`.",
        prices.priced_on_other_days,
    ),
    Rule(
        "no-price", "note",
        "It has no place where price is held against merit, nor in what using it costs.",
        "Add `paid:` or `listed:`, with the day.",
        prices.without_a_price,
    ),
    Rule(
        "number-disagrees", "warning",
        "A number typed by hand stays when the readings change.",
        "Use a reference: `[?](value:quantity/contender)`.",
        texts.numbers_that_disagree,
    ),
    Rule(
        "dead-link", "error",
        "Readers will follow it.",
        "Correct the path, or put the file there.",
        texts.dead_links,
    ),
    Rule(
        "picture-without-words", "error",
        "Some readers hear the page.",
        "Say in the brackets what the picture shows.",
        texts.pictures_without_words,
    ),
    Rule(
        "photo-not-shown", "note",
        "Its words were written for nobody.",
        "Name its id where it belongs: on a reading (column photo), a test, an incident, a contender, in a text.",
        pictures.photos_not_shown,
    ),
)  # fmt: skip
