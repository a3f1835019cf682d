"""English, part of its table: what is said to whoever reads or explores a chart."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

EXPLORING: Mapping[str, str | Forms] = {
    "on.figure.explore": "Explore this chart",
    "page.exploring.exploring": "Exploring the chart",
    "page.exploring.close": "Stop exploring",
    "page.exploring.walk": "From value to value",
    "page.exploring.ways": "Point at the chart, or use the arrow keys: left and right from value to value, up and down "
    "from line to line.",
    "page.exploring.shown": "Shown in the chart",
    "page.exploring.nothing": "Nothing is shown. Choose whom to show.",
    "page.exploring.time": "The stretch of time on view",
    "page.exploring.closer": "Closer",
    "page.exploring.wider": "Wider",
    "page.exploring.earlier": "Earlier",
    "page.exploring.later": "Later",
    "page.exploring.view": "On view: {from} to {to} {unit}",
    "page.exploring.whole": "On view: all of it",
    "chart.key.trace.when": "the time beside a name is when",
    "chart.trace.passed-at": "{name}: {at}",
    "chart.key.shared": "the axis is that of {names} too",
    "chart.quoted": "“{title}”",
    "chart.met.pass": "{name}, pass {n}: {said}",
    "chart.met.left-out": "{name}, pass {n}, left out: {said}",
    "chart.met.specimen": "{name}, {specimen}",
    "chart.met.yes": "yes",
    "chart.met.no": "no",
    "chart.met.place": "{name}, {what}: place {place}",
    "chart.met.uses": {"one": "{name}, one use: {said}", "other": "{name}, {uses} uses: {said}"},
    "chart.met.sample": "{name}, {at}: {said}",
}
