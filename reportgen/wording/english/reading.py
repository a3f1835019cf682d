"""English, part of its table: what the templates of a campaign's own pages say."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

READING: Mapping[str, str | Forms] = {
    "on.trail.title": "Where this page stands",
    "page.formerly.caveats": "What limits the results",
    "page.formerly.caveat": "{sort}: {about}",
    # the first page of a campaign
    "on.campaign.how-firm": "How firm:",
    "on.campaign.tested": "Tested {day}.",
    "on.campaign.issue": "Issue {issue}.",
    "on.campaign.issue.published": "Issue {issue}, published {day}.",
    "on.campaign.keep-in-mind": "Keep in mind",
    "on.campaign.as-picture": "The same as a picture",
    "on.campaign.verdict": "Verdict",
    "on.campaign.tests": "Test by test",
    "on.campaign.contenders": "The contenders",
    "on.campaign.method": "How everything was tested",
    "on.campaign.data": "All readings, as they were written",
    "on.campaign.ways": "{method}. {data}.",
    "on.campaign.ways.place": "{method}. {place}. {data}.",
    "on.campaign.held-the-same": "Held the same for all",
    "on.campaign.who-paid": "Who paid",
    "on.campaign.disclosed": "{name}: {says}",
    "on.campaign.accepted": "Known and left as it is",
    "on.campaign.films": {"one": "Film", "other": "Films"},
    "on.how.title": "How it was done",
    # who beat whom on what
    "on.grid.title": "Who beat whom on what",
    "on.grid.places": "Numbers are places: 1–2 is first or second.",
    "on.grid.beats": "beats {whom}",
    "on.grid.behind": "behind {whom}",
    "on.sign.first": "first, ahead of every other",
    "on.sign.shared": "may be first",
    "on.sign.behind": "behind at least one other",
    "on.sign.once": "read best in this run; a repeat may differ",
    "on.sign.open": "open: not enough to say",
    "on.sign.open-once": "open: no winner, one run only",
    "on.sign.unranked": "not ranked, for the reason given",
    "on.matrix.title": "Every pair on every test",
    "on.matrix.caption": "Every pair on every test: who is ahead",
    "on.matrix.test": "Test",
    "on.matrix.pair": "Pair",
    # a test's page
    "on.cannot-tell.title": "What this can’t tell you",
    "on.caution.title": "Caution",
    "on.test.by-method": "By the method {method}; {how}.",
    "on.test.how": "{how}.",
    "on.test.how.inside": "how this test was run",
    "on.test.how.alone": "How this test was run",
    "on.test.readings": "Readings: {files}.",
    "on.test.held-the-same": "The same for every contender: {what}.",
    "on.test.workings": "Workings",
    "on.test.how-to-read-a-budget": (
        "Each value and its standard uncertainty (its typical error) can be worked out again from here; ranges that "
        "join several kinds of cause, and gaps taken within rounds, take a program. A budget lists every cause. "
        "“Worked out” is its own typical error times how far the result moves with it; × √2: two readings each have "
        "such an error of their own; ÷ √4: averaged over four passes. Square what each puts in the result, add, take "
        "the root; a share is one square’s part of that sum. Numbers on the way have two digits more than the result."
    ),
    "on.test.formula-of": "Formula: {quantity}",
    "on.test.in-it": "in it: {links}",
    "on.test.constant": "{name}: {value}",
    "on.test.constant.source": "{name}: {value} ({source})",
    "on.test.others": "All tests of this comparison",
    "on.seen.title": "Seen on the bench",
    # tables of results, pairs, charts, caveats
    "on.results.title.in": "{what}, in {unit}",
    "on.results.result": "Result",
    "on.results.range": "Range",
    "on.results.passes": "Passes",
    "on.results.place": "Place",
    "on.results.not-ranked": "not ranked",
    "on.results.unranked": "{name} isn’t ranked: {why}",
    "on.pairs.title": "Each against each",
    "on.pairs.of": "{quantity}: each against each",
    "on.pairs.gap": "First less second",
    "on.pairs.decision": "Decision",
    "on.figure.values": "The values drawn",
    "on.figure.values-of": "Values of the chart: {title}",
    "on.caveat.number": "Caveat {number}: {says}",
    # a contender's spec sheet
    "on.sheet.bought": "The one we bought",
    "on.sheet.bought.several": "The ones we bought",
    "on.sheet.measured": "What we measured",
    "on.sheet.results": "Results",
    "on.sheet.what": "Measured",
    "on.sheet.better-than": "better than {whom}",
    "on.sheet.behind": "behind {whom}",
    "on.sheet.claims": "Claimed, and found of the one we bought",
    "on.sheet.claims.several": "Claimed, and found of the ones we bought",
    "on.sheet.received": "As it came",
    "on.sheet.particulars": "Particulars",
    "on.sheet.others": "All contenders of this comparison",
    # how everything was tested
    "on.method.tests": "Tests on this page",
    "on.method.tested": "Tested",
    "on.method.where": "Where",
    "on.method.held-the-same": "Held the same",
    "on.method.instruments": "Instruments",
    "on.method.instruments.used": "Instruments used",
    "on.method.instrument": "Instrument",
    "on.method.reads-in": "Reads in",
    "on.method.accuracy": "Accuracy",
    "on.method.calibrated": "Calibrated",
    "on.method.how-to-read-accuracy": (
        "± is how far a reading may be off, either way, as the maker states it; % is of the reading, a digit is one "
        "step of the display."
    ),
    "on.tested.method": "Method: {method}, version {version}.",
    "on.tested.order": "Order of runs",
    "on.tested.judged": "Who judged",
    "on.tested.decided": "Decided",
    "on.tested.scatter": "Scatter",
    "on.tested.none-named": "none named",
    "on.tested.found": "What was found",
}
