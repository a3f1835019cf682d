"""English, part of its table: what site-wide pages say besides their templates."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

SITE: Mapping[str, str | Forms] = {
    "site.contents.of": "This site",
    "site.archive": "Comparisons",
    "site.methods": "Methods",
    "site.instruments": "Instruments",
    "site.handbook": "Handbook",
    "site.method.version": "{title}, version {n}",
    "site.not-noted": "not noted",
    "site.tested": "Tested with it",
    "site.unknown-accuracy": (
        "not known. What this instrument may be off by is in no interval, and results that rest on it say so. Off by "
        "the same amount everywhere, it would shift values and leave the gaps between them; off by a percentage, it "
        "would change values and gaps by that percentage."
    ),
    "site.accuracy": "{text}, taken as a limit that is never passed",
    "site.accuracy.by-calibration": "known by its calibration",
    "site.not-calibrated": "not noted",
    "site.calibrated": "{day}",
    "site.calibrated.by": "{day}, by {by}",
    "site.by-hand": "started and stopped by hand, which adds up to {reaction} either way to each reading, each time "
    "anew",
    "site.known.repeats": "Repeats itself",
    "site.known.reference": "Compared with",
    "site.known.correction": "Correction",
    "site.known.known-to": "Known to",
    "site.known.expires": "Counts until",
    "site.known.drift": "Drift",
    "site.known.clock": "Clock",
    "site.repeats": "to {sd}: the standard deviation of its readings of one and the same thing",
    "site.repeats.from": "to {sd}: the standard deviation of its readings of one and the same thing, with {n}",
    "site.correction": "{by}, added to every reading",
    "site.correction.points": "added to every reading: what was found at the {n} points below, with straight lines "
    "between",
    "site.correction.line": (
        "added to every reading: {height} + {slope} × (reading − {middle}), the straight line through the {n} points "
        "below. Standard uncertainties: {u_height} of the first figure, {u_slope} of the second, with {n_degrees}."
    ),
    "site.known-to.standard": "a standard uncertainty of {u}{more}, common to all its readings",
    "site.known-to.expanded": (
        "an uncertainty of {expanded} with k = {k}, so a standard uncertainty of {u}{more}, common to all its readings"
    ),
    "site.known-to.degrees": " with {n}",
    "site.expires": "{day}; what is read later says so",
    "site.clock": "{text} at most, fast or slow; it lengthens or shortens every time it tells by the same part",
    "site.drift": "at most {amount} a year either way, counted from the calibration to the day of the reading",
    "site.resolution": "reads in steps of {step}",
    "site.resolution.unknown": "not noted; the finest decimal written down counts as its step",
    "site.range": "{low} to {high}",
    "site.range.to": "up to {high}",
    "site.range.from": "from {low}",
    "site.shared.offset": (
        "What it may be off by is common to all readings of a session and shifts them alike: "
        "it falls out of differences."
    ),
    "site.shared.gain": (
        "What it may be off by is common to all readings of a session and stretches them alike: "
        "it leaves its own share of a difference."
    ),
    "site.shared.both": (
        "What it may be off by is common to all readings of a session: "
        "a shift falls out of differences, a stretch leaves its own share of them."
    ),
    "site.shared.nothing": "Each reading is off by itself: nothing falls out of a difference.",
    "site.scatter.common": "One scatter for all contenders, worked out from all their passes together.",
    "site.scatter.own": "Each contender’s scatter from its own passes.",
    "site.scatter.relative": "Scatter grows with the value: contenders are compared by ratios.",
    "site.order.rounds": "In rounds: every contender once before any runs again.",
    "site.order.random": "In an order drawn by lot.",
    "site.order.as it came": "As it came.",
    "site.order.": "Not laid down.",
    "site.chained": "The reading after one weighing is the reading before the next.",
    "site.between-specimens": "One unit of a product differs from another by about {amount}.",
    "site.between-sessions": "Another day or another set-up shifts readings by about {amount}.",
    "site.past-campaigns": (
        "How far one pass differs from the next is also taken from campaigns that were tested before with this version."
    ),
    "site.past-campaigns.of-one": (
        "{quantity}: how far one pass differs from the next is also taken from campaigns that were tested before with "
        "this version."
    ),
    "site.repeatability": (
        "{quantity} varies by {sd} from pass to pass (standard deviation, {degrees} degrees of freedom; {source})."
    ),
    "site.repeatability.plain": (
        "{quantity} varies by {sd} from pass to pass (standard deviation, {degrees} degrees of freedom)."
    ),
    "site.ready-made": "Ready-made: it came with the program.",
    "site.one-of": "{n} comparisons describe it differently; each description stands for itself below.",
    "site.empty": "No comparison has been published here yet.",
    "site.no-date": "date not noted",
    "site.foot.licence": "Licence: {licence}.",
    "site.foot.pays": "Who pays: {who}",
    "site.foot.contact": "Something wrong or missing? Write to {contact}.",
}
