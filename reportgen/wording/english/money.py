"""English, part of its table: what using costs, break-evens, who is cheapest where, and who is beaten on what."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

MONEY: Mapping[str, str | Forms] = {
    "out.by": "out: {quantities}",
    "out.named": "{name} ({out})",
    "cost.crosses": "{later} costs more to buy than {sooner} and less to use: what it saves, {saves} a use, has paid "
    "back the dearer price after about {at} uses, at the earliest {low}, at the latest {high}",
    "cost.crosses.loose": "{later} costs more to buy than {sooner} and less to use: what it saves has paid back the "
    "dearer price somewhere between {low} and {high} uses",
    "cost.crosses.latest": "{later} costs more to buy than {sooner} and less to use: what it saves has paid back the "
    "dearer price after {high} uses at the latest",
    "cost.crosses.latest.perhaps": "{later} may cost more to buy than {sooner}, and costs less to use: after {high} "
    "uses at the latest it is the cheaper",
    "cost.beside.beyond": ": all beyond the {to} that we ask about",
    "cost.beside.before": ": all before the {from_} that we begin with",
    "cost.beside.latest": "; the latest lies beyond the {to} that we ask about",
    "cost.beside.all-but-earliest": "; all but the earliest lies beyond the {to} that we ask about",
    "cost.beside.earliest": "; the earliest lies before the {from_} that we begin with",
    "cost.beside.all-but-latest": "; all but the latest lies before the {from_} that we begin with",
    "cost.throughout": "{later} costs less to use than {other}, and no more to buy",
    "cost.not-resolved": "What a use costs with {first} and {second} can't be told apart, so there is no number of "
    "uses at which one overtakes the other",
    "cost.not-known": "Whether another run would show the same cost of a use isn't known of {first} and {second}, so "
    "there is no number of uses at which one overtakes the other",
    "cost.alike": "{first} and {second} cost the same to buy and to use",
    "cost.cheapest": "{name} is the cheapest of those with a line, all the way from {from_} uses to {to}",
    "cost.cheapest.open": "From {from_} uses to {to}, the cheapest can't be told among {names}",
    "cost.cheapest.in": "Of those that aren’t out: {cheapest}",
    "cost.stretch": "from {from_} to {to} uses {name} is the cheapest",
    "cost.stretch.open": "from {from_} to {to} uses it may be any of {names}",
    "cost.stretch.pair": "from {from_} to {to} uses it may be {names}",
    "cost.use": "One use: {per}. What it costs: {formula}",
    "cost.gaps": "What a use saves is the gap as the test has it for that pair, which makes up for rounds that one of "
    "the two missed; the costs in the table, one less the other, differ from it",
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
    "money.on.open": "not enough to say",
    "money.on.uncompared": "not compared",
    "money.uncompared": {
        "one": "{name} isn’t ranked on {things}, so nothing here says what its price buys",
        "other": "{name} isn’t ranked on any of the {things}, so nothing here says what its price buys",
    },
    "money.on-verdict": "{name} {costs}, and over all that is weighed is worth less, firmly",
    "money.costs-more": "costs more than {better}",
    "money.costs-no-less": "costs as much as {better} or more",
    "money.cheapest-in": "Of those that aren’t out, {name} costs least",
    "money.all-round": "“All round” means: shown to be better on one or more of the {things}, and worse on none",
    "money.paid-last": "What counts is the price that was paid last, or, where none was, the one listed last; other "
    "prices stand below it",
    "money.otherwise": "At {price} ({dated}), {changes}",
    "money.otherwise.dearer": "{name} would cost more than {others}",
    "money.otherwise.cheaper": "{name} would cost less than {others}",
    "money.otherwise.no-longer": "{worse} would no longer be beaten by {better} at no higher price on {quantities}",
    "money.otherwise.newly": "{worse} would be beaten by {better} at no higher price on {quantities}",
    "money.otherwise.overall": "all that is weighed",
    "money.otherwise.only-cost": "what using costs would read otherwise",
    "money.otherwise.cheapest": "Then {cheapest}",
    "money.otherwise.cheapest.in": "Then, of those that aren’t out: {cheapest}",
    "money.otherwise.none": "At none of those others would anybody’s place for the money be another",
    "money.otherwise.join": "; ",
    # the author’s best for the money, held against prices and what is weighed
    "for.out": "{best} is {out}. So nothing here bears it out as best for the money",
    "for.no-price": "No price is noted for {best}, so nothing here bears it out as best for the money",
    "for.alone": "No other price is noted in {currency} to hold {best} against, so nothing here bears it out as best "
    "for the money",
    "for.beaten": "That isn’t borne out: {best} {costs}, and is shown to be worse on one thing or more and better on "
    "none of the {things}",
    "for.beaten.one": "That isn’t borne out: {best} {costs}, and is shown to be worse on {things}",
    "for.beaten.overall": "That isn’t borne out: {best} {costs}, and over all that is weighed is worth less, firmly",
    "for.less": "{best} costs less than {other}, and is worth more in {draws} draws",
    "for.more": "{best} costs more than {other}, and is worth more in {draws} draws",
    "for.like": "{best} isn’t shown to cost more or less than {other}, and is worth more in {draws} draws",
    "for.unbeaten": "Nothing that costs no more is better all round than {best}",
    "for.unbeaten.in": "Nothing that costs no more, and isn’t out, is better all round than {best}",
    "for.unbeaten.weighed": "Nothing that costs no more is better all round than {best}, nor firmly over all "
    "that is weighed",
    "for.unbeaten.weighed.in": "Nothing that costs no more, and isn’t out, is better all round than {best}, nor "
    "firmly over all that is weighed",
    "for.not-weighed": "{names} can’t be weighed against it",
    "for.borne-out": "That bears out {best} as best for the money",
    "for.leans": "That leans towards {best} as best for the money, and leaves it open",
    "for.open": "Whether what another is worth more is worth its price, the readings can’t say: that stays our word",
    "money.other-price": "{price}, {dated}",
    "money.paid": "paid",
    "money.listed": "listed",
    "cost.in-all": "With the price, over {uses} uses",
    "cost.chart": "What using costs",
    "cost.chart.key": "Each line is one contender: its price, and what so many uses add. The band holds the ranges of "
    "price and of what a use costs",
    "cost.chart.key.out": "{name} is {out}",
    "cost.chart.out": "{name} (out)",
    "cost.chart.across": "uses",
    "cost.chart.one": "One use",
}
