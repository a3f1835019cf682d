"""English, part of its table: the verdict over weighed criteria."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

VERDICT: Mapping[str, str | Forms] = {
    "of-hundred": "{n} of 100",
    "of-hundred.least": "{n} or more of 100",
    "of-hundred.over": "over 99 of 100",
    "of-hundred.under": "under 1 of 100",
    # weights in words
    "weights.only": "only {group}",
    "weights.mostly": "mostly {group} ({percent})",
    "weights.half": "half {group} ({percent})",
    "weights.some": "some {group} ({percent})",
    "weights.little": "a little {group} ({percent})",
    "weights.none": "no {group}",
    "weights.alike": "{groups} alike",
    "weights.said": "{weights}: {lead}",
    # who leads at some weights
    "lead.firm": "{leader} leads, and firmly",
    "lead.nearly": "{leader} leads in {draws} draws, but not firmly",
    "lead.mostly": "{leader} probably leads, but not firmly ({draws} against the nearest)",
    "lead.often": "{leader} leads more often than not, but not firmly ({draws} against the nearest)",
    "lead.slightly": "{leader} leads slightly more often than the nearest ({draws}): that is open",
    "lead.open": "{leader} leads, but not firmly",
    "lead.level": "nobody is ahead",
    "lead.none": "nobody can be weighed",
    "firmness.firm": "firmly",
    "firmness.nearly": "not firmly: {draws}",
    "firmness.mostly": "probably: {draws}",
    "firmness.often": "more often than not: {draws}",
    "firmness.slightly": "slightly more often: {draws}",
    "firmness.level": "nobody ahead",
    "firmness.none": "",
    "pair.firm": "firmly",
    "pair.nearly": "only by what wasn’t repeated",
    "pair.mostly": "probably",
    "pair.often": "more often than not",
    "pair.slightly": "slightly more often",
    "pair.level": "about equally often",
    # the answer over all criteria
    "overall.in-short": "{how}: {lead}",
    "overall.with": "With our weights",
    "overall.all": "Over all ways to weigh the criteria",
    "overall.winner": "{how}, {leader} is worth more than {others}, and firmly: in {least} draws against each",
    "overall.winner.two": "{how}, {leader} is worth more than {others}, and firmly: in {draws} draws",
    "overall.unrepeated": "Nobody is called ahead. {how}, {leader} is worth more than {nearest} in {draws} "
    "draws, but on the criteria with repeats alone in only {known}",
    "overall.no-repeats": "Nobody is called ahead. {how}, {leader} is worth more than {nearest} in {draws} "
    "draws, but no criterion was repeated, so a repeat might come out differently",
    "overall.first-open": "Nobody is called ahead. {how}, {leader} is worth more than {nearest} in {draws} "
    "draws, but first place on the one criterion is open",
    "overall.mostly": "{how}, {leader} is probably, but not firmly, worth more than {nearest}, the nearest: in {draws} "
    "draws",
    "overall.often": "Nobody is firmly ahead. {how}, {leader} is worth more than {nearest}, the nearest, more often "
    "than not: in {draws} draws",
    "overall.slightly": "Nobody is ahead. {how}, {leader} is worth more than {nearest} only slightly more "
    "often than the other way round: in {draws} draws",
    "overall.level": {
        "one": "Nobody is ahead. {how}, {names} are each worth more than the other about equally often",
        "other": "Nobody is ahead. {how}, {names} are each worth more than the others about equally often",
    },
    "overall.depends": "It depends on what counts: {leads}",
    "overall.depends.join": "; ",
    "overall.depends.on": "with only {group}, {leader} leads firmly",
    "overall.several": "Nobody is ahead. {how}, several come first exactly as often as each other",
    "overall.none": "Nobody has a value on every criterion, so nothing is weighed",
    "overall.behind": {
        "one": "{ahead} is worth more than {names}, and firmly",
        "other": "{ahead} are each worth more than {names}, and firmly",
    },
    "overall.behind.two": "{ahead} are both worth more than {names}, and firmly",
    "overall.nobody-behind": {
        "one": "Neither is firmly behind the other",
        "other": "Nobody is firmly behind another",
    },
    "overall.rests": "It rests on {count} criteria: {some}",
    "overall.rests.every": {
        "one": "It rests on one criterion, with repeats",
        "other": "It rests on {count} criteria, all with repeats",
    },
    "overall.rests.some": {
        "one": "It rests on one criterion, on which some contenders were repeated, others not",
        "other": "It rests on {count} criteria; on each some contenders were repeated, others not",
    },
    "overall.rests.stated": {
        "one": "It rests on one criterion; how much it varies was known before the test, not seen in it",
        "other": "It rests on {count} criteria; how much they vary was known before the test, not seen in it",
    },
    "overall.rests.none": {
        "one": "It rests on one criterion, without repeats",
        "other": "It rests on {count} criteria, none with repeats",
    },
    "overall.rests.of.every": {"one": "one with repeats", "other": "{count} with repeats"},
    "overall.rests.of.some": {
        "one": "one on which only some were repeated",
        "other": "{count} on which only some were repeated",
    },
    "overall.rests.of.stated": {
        "one": "one whose scatter was known before the test, not seen in it",
        "other": "{count} whose scatter was known before the test, not seen in it",
    },
    "overall.rests.of.none": {
        "one": "one on which a repeat might come out differently",
        "other": "{count} on which a repeat might come out differently",
    },
    "overall.out.must": {
        "one": "{names} misses a condition and isn’t weighed",
        "other": "{names} miss a condition and aren’t weighed",
    },
    "overall.out.no-value": {
        "one": "{names} isn’t weighed: it lacks a value on one criterion or more",
        "other": "{names} aren’t weighed: each lacks a value on one criterion or more",
    },
    "overall.out.bound": {
        "one": "{names} isn’t weighed: on one criterion or more only a bound is known",
        "other": "{names} aren’t weighed: on one criterion or more only a bound is known",
    },
    "overall.out.not-above-zero": {
        "one": "{names} isn’t weighed: ratios count on one criterion or more, and its value there isn’t above zero",
        "other": "{names} aren’t weighed: ratios count on one criterion or more, and their values there aren’t "
        "above zero",
    },
    "overall.out.blocked": {
        "one": "{names} isn’t weighed: a result of it isn’t to be ranked",
        "other": "{names} aren’t weighed: results of them aren’t to be ranked",
    },
    "overall.alone": "Only {name} is left to weigh, so there is nothing to weigh it against",
    "overall.nobody": "Nobody is left to weigh",
    "overall.too-few": "Fewer than two contenders have a value on every criterion, so nothing is weighed",
    # how it was weighed
    "weighed.all": "We don’t say what should matter most to you, so {draws} draws were made. Each picks how much every "
    "group counts, at random among all the ways, moves every result at random as far as its uncertainty reaches, and "
    "asks who is then worth more",
    "weighed.given": "What counts how much is ours: {weights}. With that, {draws} draws were made: each moves every "
    "result at random as far as its uncertainty reaches, and asks who is then worth more",
    "weighed.unrepeated": "Of what wasn’t repeated only the instrument’s part is known, and only that is moved",
    "weighed.firm": "Firm is what holds in 98 of 100 draws or more, probable what holds in 90 or more",
    "weighed.firm.known": "Firm is what holds in 98 of 100 draws or more, with and without the criteria that nobody "
    "repeated; probable is what holds in 90 or more",
    "weighed.shares": "How often each comes first depends on who else is in; had all been equal, each would come first "
    "in about {each} draws",
    "weighed.shares.between": "How often each comes first depends on who else is in; had all been equal, each would "
    "come first in {least} to {most} draws, as they aren’t known equally well",
    # criteria
    "criterion.beyond.worst": {
        "one": "{names} lies beyond the worst of {quantity}, so it counts less than nothing there",
        "other": "{names} lie beyond the worst of {quantity}, so they count less than nothing there",
    },
    "criterion.beyond.best": {
        "one": "{names} lies beyond the best of {quantity}, so it counts more than all there",
        "other": "{names} lie beyond the best of {quantity}, so they count more than all there",
    },
    "criterion.left-out.nobody-measured": "{quantity} isn’t weighed, as nobody has a value on it; its weight goes to "
    "the others",
    "criterion.left-out.bound": "{quantity} isn’t weighed, as it is known from one side only; its weight goes to the "
    "others",
    "criterion.left-out.not-above-zero": "{quantity} isn’t weighed, as ratios decide on it and not all values are "
    "above zero; its weight goes to the others",
    "criterion.left-out.by-place": "{quantity} isn’t weighed, as runs that did not finish hold the worst place on it, "
    "and a place is no number; its weight goes to the others",
    "criterion.left-out.blocked": "{quantity} isn’t weighed, as no result of it is to be ranked; its weight goes to "
    "the others",
    "criterion.left-out.too-few": "{quantity} isn’t weighed, as with it fewer than two would have a value on "
    "everything; its weight goes to the others",
    # which weights would change it
    "turn.intro.given": "If one group counts more or less than we let it, and the others keep their proportions",
    "turn.intro.all": "If one group counts more or less, and the others alike",
    "turn.along": "{group}: {leads}",
    "turn.up-to": "{name} leads up to {percent} of the weight",
    "turn.between": "{name} from there to {percent}",
    "turn.beyond": "{name} beyond that",
    "turn.never": "{group}: {name} leads whatever its weight",
    "turn.none": "No change in the weight of one group alone changes who leads",
    "without.nothing": "Leaving out any one criterion changes neither who leads nor whether that is firm",
    "without.leader": {
        "one": "Leave out {quantities}, and {lead}",
        "other": "Leave out any one of {quantities}, and {lead}",
    },
    "without.leader.two": "Leave out either one of {quantities}, and {lead}",
    "without.less": "Leave out {quantities}, and {leader} leads still, but in only {draws} draws against the nearest, "
    "no longer in {before}",
    "without.rest": {
        "one": "Leaving out the one that remains changes neither who leads nor whether that is firm",
        "other": "Leaving out any of the others changes neither who leads nor whether that is firm",
    },
    "undecided.stays": "Where it is undecided or wasn’t tested whether a condition is met, the contender stays in",
    "said.overall": "Everything weighed",
    "said.for-the-money": "For the money",
    "verdict.none.first": "Nothing was set to be weighed, and we name no best; {name} is alone in first place on all "
    "that was ranked",
    "verdict.none": "No overall verdict was made: nothing was set to be weighed, and we name no best",
    "said.borne-out": "That bears out {best} as best",
    "said.leans": "That leans towards {best}, and leaves open whether it is best",
    "said.not-weighed": "{best} isn’t among those weighed, so nothing here bears it out as best",
    "said.not-borne-out": "That doesn’t bear out {best} as best: it is worth more than {other} in {draws} draws",
}
