"""What site-wide pages say in English besides their templates: fixed words with named gaps, in one table."""

from __future__ import annotations

from collections.abc import Mapping

PHRASES: Mapping[str, str] = {
    "contents.of": "This site",
    "archive": "Comparisons",
    "methods": "Methods",
    "instruments": "Instruments",
    "handbook": "Handbook",
    "method.version": "{title}, version {n}",
    "not-noted": "not noted",
    "tested": "Tested with it",
    "unknown-accuracy": (
        "not known. What this instrument may be off by is in no interval, and results that rest on it say so. Off by "
        "the same amount everywhere, it would shift values and leave the gaps between them; off by a percentage, it "
        "would change values and gaps by that percentage."
    ),
    "accuracy": "{text}, taken as a limit that is never passed",
    "accuracy.by-calibration": "known by its calibration",
    "not-calibrated": "not noted",
    "calibrated": "{day}",
    "calibrated.by": "{day}, by {by}",
    "by-hand": "started and stopped by hand, which adds up to {reaction} either way to each reading, each time anew",
    "known.repeats": "Repeats itself",
    "known.reference": "Compared with",
    "known.correction": "Correction",
    "known.known-to": "Known to",
    "known.expires": "Counts until",
    "known.drift": "Drift",
    "known.clock": "Clock",
    "repeats": "to {sd}: the standard deviation of its readings of one and the same thing",
    "repeats.from": "to {sd}: the standard deviation of its readings of one and the same thing, with {n}",
    "correction": "{by}, added to every reading",
    "correction.points": "added to every reading: what was found at the {n} points below, with straight lines between",
    "correction.line": (
        "added to every reading: {height} + {slope} × (reading − {middle}), the straight line through the {n} points "
        "below. Standard uncertainties: {u_height} of the first figure, {u_slope} of the second, with {n_degrees}."
    ),
    "known-to.standard": "a standard uncertainty of {u}{more}, common to all its readings",
    "known-to.expanded": (
        "an uncertainty of {expanded} with k = {k}, so a standard uncertainty of {u}{more}, common to all its readings"
    ),
    "known-to.degrees": " with {n}",
    "expires": "{day}; what is read later says so",
    "clock": "{text} at most, fast or slow; it lengthens or shortens every time it tells by the same part",
    "drift": "at most {amount} a year either way, counted from the calibration to the day of the reading",
    "resolution": "reads in steps of {step}",
    "resolution.unknown": "not noted; the finest decimal written down counts as its step",
    "range": "{low} to {high}",
    "range.to": "up to {high}",
    "range.from": "from {low}",
    "shared.offset": (
        "What it may be off by is common to all readings of a session and shifts them alike: "
        "it falls out of differences."
    ),
    "shared.gain": (
        "What it may be off by is common to all readings of a session and stretches them alike: "
        "it leaves its own share of a difference."
    ),
    "shared.both": (
        "What it may be off by is common to all readings of a session: "
        "a shift falls out of differences, a stretch leaves its own share of them."
    ),
    "shared.nothing": "Each reading is off by itself: nothing falls out of a difference.",
    "scatter.common": "One scatter for all contenders, worked out from all their passes together.",
    "scatter.own": "Each contender’s scatter from its own passes.",
    "scatter.relative": "Scatter grows with the value: contenders are compared by ratios.",
    "order.rounds": "In rounds: every contender once before any runs again.",
    "order.random": "In an order drawn by lot.",
    "order.as it came": "As it came.",
    "order.": "Not laid down.",
    "chained": "The reading after one weighing is the reading before the next.",
    "between-specimens": "One unit of a product differs from another by about {amount}.",
    "between-sessions": "Another day or another set-up shifts readings by about {amount}.",
    "past-campaigns": (
        "How far one pass differs from the next is also taken from campaigns that were tested before with this version."
    ),
    "past-campaigns.of-one": (
        "{quantity}: how far one pass differs from the next is also taken from campaigns that were tested before with "
        "this version."
    ),
    "repeatability": (
        "{quantity} varies by {sd} from pass to pass (standard deviation, {degrees} degrees of freedom; {source})."
    ),
    "repeatability.plain": (
        "{quantity} varies by {sd} from pass to pass (standard deviation, {degrees} degrees of freedom)."
    ),
    "ready-made": "Ready-made: it came with the program.",
    "one-of": "{n} comparisons describe it differently; each description stands for itself below.",
    "empty": "No comparison has been published here yet.",
    "no-date": "date not noted",
    "foot.licence": "Licence: {licence}.",
    "foot.pays": "Who pays: {who}",
    "foot.contact": "Write to {contact}.",
}


def words(key: str, **gaps: str) -> str:
    """The words of `key` with their gaps filled; KeyError for what isn't in the table."""
    return PHRASES[key].format_map(gaps)
