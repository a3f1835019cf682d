"""English, third part of its table: what was met among the readings and is told wherever it bears, one sentence each.

The key is `met.` and the code of `wording/met.py`. Texts in the gaps are quoted as the author typed them.
"""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

MET: Mapping[str, str | Forms] = {
    # notations
    "quoted": "“{text}”",
    "quoted.taken": "“{text}” counts as {value} ±\u00a0{half}",
    "quoted.of": "“{text}” ({who})",
    "quoted.whose": "{taken} ({where})",
    "quoted.of.pass": "“{text}” ({who}, against pass {n})",
    "quoted.more": {"one": "{texts} and one more", "other": "{texts} and {count} more"},
    "frames.rate": "{upper}/{lower} ({short})",
    "frames.step": "one frame, at {rate} frames a second",
    "met.rough": "Some readings of “{what}” are rough: {texts}, every value in between as likely as any other.",
    "met.rough-about": "Some readings of “{what}” are rough: {texts}, every value in between as likely as any other. "
    "“About” is our convention: give or take one unit of the last figure that isn’t a trailing zero.",
    "met.unweighed": "Nobody measured how much of “{what}” there was: {texts}. It counts as more than nothing, so "
    "what is worked out from it is known from one side only.",
    "lost.pass": "pass {n}",
    "lost.of": "{where} ({why})",
    "met.lost": "Some readings of “{what}” are missing: {whose}. What is shown rests on the others.",
    "met.against": "Some readings of “{what}” were taken against another contender: {texts}. The value is that "
    "contender’s own reading and the difference; an error in that reading is in both and cancels between them.",
    "met.for-all": "One reading of “{what}” serves every contender: {texts}. Its error is the same for all of them, "
    "and cancels between them as far as it goes into each result in the same way.",
    "met.for-some": "One reading of “{what}” serves {who}: {texts}. Its error is the same for all of them, and cancels "
    "between them as far as it goes into each result in the same way.",
    "met.background": "The background was less than 6 dB below some readings of “{what}”: {whose}. No more than 1.3 dB "
    "may be taken off then, and what is left is an upper bound (ISO 3744).",
    "met.background-louder": "The background was louder than some readings of “{what}” that it is a part of: {whose}. "
    "Something else was heard with it, or the two were exchanged. No more than 1.3 dB is taken off, and what is left "
    "is an upper bound (ISO 3744).",
    # traces
    "trace.gap": "{long} from {at} on",
    "trace.gap.of": "{who}, {gap}",
    "met.gaps": "Nothing was logged of “{what}” for a while: {gaps}. What happened there isn’t known; means and areas "
    "bridge it by a straight line, with all the room the trace’s own range leaves, and a limit passed in it is put in "
    "its middle.",
    # accidents
    "met.amended": "One reading was put right: {place} says {was}, but {is} was meant. {why}",
    "met.amended.empty": "One reading was filled in: {place} is empty, but {is} was meant. {why}",
    "met.amended.cell": "One cell was put right: {place} says “{was}”, but “{is}” was meant. {why}",
    "met.amended.at-line": "line {n} of {file}",
    "met.amended.at-cell": "cell {cell} of {file}",
    "met.amended.change": "That changes the reading by {change}",
    "met.amended.seen": "Seen by {who}",
    "met.records": "There are two records of “{what}”: {said}. The one that counts is {used}. {why}",
    "met.records.open": "There are two records of “{what}”, {said}, and nobody knows which is right: both stand, and "
    "every value between them is taken to be as likely as any other. {why}",
    "met.records.otherwise": "With {other}, {quantity} of {name} would be {value} instead of {now}",
    "met.records.claim": "With {other}, what is claimed of {name}, “{claim}”, would be {then} instead of {now}",
    "met.records.chance": "With {other}, the chance that what is claimed of {name} holds, “{claim}”, would be {then} "
    "instead of {now}",
    "outcome.chance": "{outcome} (chance that it holds: {probability})",
    "met.records.moves": "Some places would change",
    "met.records.stays": "No place would change",
    "met.assumed": "Not measured: {name} is taken as {value}, give or take {within}, "
    "for each contender by itself. {why}",
    "met.assumed.alike": "Not measured: {name} is taken as {value}, give or take {within}, alike for all. {why}",
    "met.running": "Still running since {day}: {value}",
    "met.running.undated": "Still running, since when wasn’t noted: {value}",
    "met.running.nothing": "Still running since {day}: nothing was read so far",
    "met.running.as-of": "That was on {day}",
    "met.running.nothing.undated": "Still running, since when wasn’t noted: nothing was read so far",
    "met.running.plain.undated": "Still running, since when wasn’t noted: what is shown is so far",
    "met.running.plain": "Still running since {day}: what is shown is so far",
}
