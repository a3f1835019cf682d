"""English, third part of its table: what was met among the readings and is told wherever it bears, one sentence each.

The key is `met.` and the code of `wording/met.py`. Texts in the gaps are quoted as the author typed them.
"""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

MET: Mapping[str, str | Forms] = {
    # notations
    "quoted": "“{text}”",
    "quoted.taken": "“{text}” counts as {value} ± {half}",
    "quoted.of": "“{text}” ({who})",
    "quoted.more": {"one": "{texts} and one more", "other": "{texts} and {count} more"},
    "frames.rate": "{upper}/{lower} ({short})",
    "frames.step": "one frame, at {rate} frames a second",
    "met.rough": "Some of “{what}” was read roughly: {texts}, every value in between as likely as any other.",
    "met.rough-about": "Some of “{what}” was read roughly: {texts}, every value in between as likely as any other. "
    "“About” is our convention: give or take one unit of the last figure that isn’t a trailing zero.",
    "met.unweighed": "How much of “{what}” there was, nobody measured: {texts}. It counts as more than nothing, so "
    "what is worked out from it is known from one side only.",
    "lost.pass": "pass {n}",
    "lost.of": "{where} ({why})",
    "met.lost": "Some of “{what}” was not read: {whose}. What is shown rests on the others.",
    "met.against": "“{what}” was read against another contender: {texts}. The value is that contender’s own reading "
    "and the difference; an error in that reading is in both and cancels between them.",
    "met.for-all": "“{what}” was read once for every contender: {texts}. Its error is the same for all of them, and "
    "cancels between them as far as it goes into each result in the same way.",
    "met.for-some": "“{what}” was read once for {who}: {texts}. Its error is the same for all of them, and cancels "
    "between them as far as it goes into each result in the same way.",
    # traces
    "trace.gap": "{long} from {at} on",
    "trace.gap.of": "{who}, {gap}",
    "met.gaps": "Nothing was logged of “{what}” for a while: {gaps}. What happened there isn’t known; means and areas "
    "bridge it by a straight line, with all the room the trace’s own range leaves, and a limit passed in it is put in "
    "its middle.",
    # accidents
    "met.amended": "One reading was put right: {place} says {was}, {is} was meant: {why}",
    "met.amended.empty": "One reading was filled in: {place} is empty, {is} was meant: {why}",
    "met.amended.cell": "One cell was put right: {place} says “{was}”, “{is}” was meant: {why}",
    "met.amended.change": "That changes the reading by {change}",
    "met.amended.seen": "Seen by {who}",
    "met.records": "There are two records of “{what}”, {said}; {used} counts: {why}",
    "met.records.otherwise": "With {other}, {quantity} of {name} would be {value} and not {now}",
    "met.records.moves": "Some places would change",
    "met.records.stays": "No place would change",
    "met.assumed": "Not measured: {name} is taken as {value}, give or take {within}, "
    "for each contender by itself ({why})",
    "met.assumed.alike": "Not measured: {name} is taken as {value}, give or take {within}, alike for all ({why})",
    "met.running": "Still running since {day}: {value}",
    "met.running.undated": "Still running, since when wasn’t noted: {value}",
    "met.running.nothing": "Still running since {day}: nothing was read so far",
    "met.running.plain": "Still running since {day}: what is shown is so far",
}
