"""English, part of its table: what is said to whoever explores a chart."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

EXPLORING: Mapping[str, str | Forms] = {
    "chart.met.pass": "{name}, pass {n}: {said}",
    "chart.met.left-out": "{name}, pass {n}, left out: {said}",
    "chart.met.specimen": "{name}, {specimen}",
    "chart.met.yes": "yes",
    "chart.met.no": "no",
    "chart.met.place": "{name}, {what}: place {place}",
    "chart.met.uses": {"one": "{name}, one use: {said}", "other": "{name}, {uses} uses: {said}"},
    "chart.met.sample": "{name}, {at}: {said}",
}
