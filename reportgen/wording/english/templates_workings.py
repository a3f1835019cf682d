"""English, part of its table: what templates say in workings, and what stands between things."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

TEMPLATES_WORKINGS: Mapping[str, str | Forms] = {
    "on.list.comma": ", ",
    "on.list.semicolon": "; ",
    "on.list.colon": ": ",
    "on.column.contender": "Contender",
    "on.budget.worked-out": "Worked out",
    "on.budget.in-result": "In the result",
    "on.budget.share": "Share",
    "on.budget.range": "For specialists: how the range comes about",
    "on.budget.title-known": "What the known uncertainty is made of",
    "on.budget.title": "What the uncertainty is made of",
    "on.budget.cause": "Cause",
    "on.budget.known": "How it is known",
    "on.budget.together": "Standard uncertainty, all together",
    "on.budget.add-squares": "square each, add, take the root",
    "on.working.between": "({interval})",
    "on.working.result": "Result: {result}. Standard uncertainty {u}.",
    "on.working.no-u": "No uncertainty is given: {why}.",
    "on.conditions.title": "Conditions of each pass",
    "on.conditions.pass": "Pass",
    "on.laboratory.name": "Laboratory",
    "on.laboratory.report": "Report",
    "on.laboratory.values-on": "Values on",
    "on.laboratory.date": "Date of the report",
    "on.laboratory.accredited": "Accredited",
    "on.laboratory.finds-from": "Finds from",
    "on.laboratory.states-from": "States numbers from",
    "on.laboratory.uncertainty": "Uncertainty it states",
    "on.laboratory.report-number": "{report}, number {number}",
    "on.laboratory.page": "page {page}",
    "on.film.see": "See it {at}",
    "on.raw.left-out": "left out: {why}",
    "on.raw.happened": "What happened: {happened}",
    "on.raw.readings-of": "Readings: {contender}",
    "on.raw.none-named": "none named",
    "on.raw.worked-out": "worked out",
    "on.raw.value": "Value of this pass",
    "on.raw.reading": "Reading",
    "on.raw.as-written": "As written",
    "on.raw.instrument": "Instrument",
    "on.raw.from": "From",
    "on.raw.sheet": "Sheet {name}",
    "on.particulars.measured": "{value}, measured by us",
}
