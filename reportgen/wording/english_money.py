"""English, part of its table: what using costs, break-evens, who is cheapest where, and who is beaten on what."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

MONEY: Mapping[str, str | Forms] = {
    "cost.crosses": "{later} costs more to buy than {sooner} and less to use: after about {at} uses ({low} to {high}) "
    "it has made up for its price",
    "cost.crosses.loose": "{later} costs more to buy than {sooner} and less to use: it has made up for its price "
    "somewhere between {low} and {high} uses",
    "cost.crosses.latest": "{later} may cost more to buy than {sooner}, and costs less to use: after {high} uses at "
    "the latest it is the cheaper",
    "cost.beyond.after": "{later} costs less to use than {sooner}, but within the {to} uses that we state it isn't "
    "shown to make up for its price: that would take {low} to {high}",
    "cost.beyond.before": "{later} costs more to buy than {sooner} and less to use: it has made up for its price after "
    "{low} to {high} uses, before the {from_} that we begin with",
    "cost.throughout": "{later} costs less to use than {other}, and no more to buy",
    "cost.not-resolved": "What a use costs with {first} and {second} can't be told apart, so there is no number of "
    "uses at which one overtakes the other",
    "cost.not-known": "Whether another run would show the same cost of a use isn't known of {first} and {second}, so "
    "there is no number of uses at which one overtakes the other",
    "cost.alike": "{first} and {second} cost the same to buy and to use",
    "cost.cheapest": "{name} is the cheapest of those with a line, all the way from {from_} uses to {to}",
    "cost.cheapest.open": "From {from_} uses to {to}, the cheapest can't be told among {names}",
    "cost.stretch": "from {from_} to {to} uses {name} is the cheapest",
    "cost.stretch.open": "from {from_} to {to} uses it may be any of {names}",
    "cost.stretch.pair": "from {from_} to {to} uses it may be {names}",
    "cost.use": "One use: {per}. What it costs: {formula}",
    "cost.once": "What a use costs rests on one run each; the ranges are those of the instruments alone",
    "cost.left-out.no-price": "No price is noted for {names}, so there is no line for it",
    "cost.left-out.other-currency": "{names} has a price in another currency than {currency}, and no rate is assumed",
    "cost.left-out.no-result": "What a use costs with {names} wasn't measured",
    "cost.left-out.blocked": "The reading that a use of {names} rests on isn't used for comparisons",
    "cost.parts-apart": "What a use costs isn't worked out: what it stands on has a result for each part",
    "cost.range": "{low} to {high}",
    "cost.from": "{low} or more",
    "cost.up-to": "{high} or less",
    "money.on.beaten": "beaten by {names}",
    "money.on.unbeaten": "not beaten",
    "money.on-verdict": "{name} costs as much as {better} or more, and over all that is weighed is worth less",
    "money.other-price": "{price}, {dated}",
    "money.paid": "paid",
    "money.listed": "listed",
    "cost.in-all": "With the price, over {uses} uses",
    "cost.chart": "What using costs",
    "cost.chart.key": "Each line is one contender: its price, and what so many uses add. The band holds the ranges of "
    "price and of what a use costs",
    "cost.chart.key.even": "a thick stroke below is where a break-even lies",
    "cost.chart.across": "uses",
    "cost.chart.one": "One use",
}
