"""results.json, version 1: everything computed about a campaign, for machines. The same input gives the same bytes."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence

from reportgen.campaign.declared import Declared
from reportgen.evaluation.evaluated import Evaluation, Keys, caveats_on_cost
from reportgen.finding import Finding, in_order
from reportgen.intake.reading import Reading, ReadingKey, Readings
from reportgen.record.contenders import contender_row
from reportgen.record.pictures import film_row, photo_row
from reportgen.record.rows import (
    Row,
    caveat_row,
    claim_row,
    comparison_row,
    finding_row,
    first_row,
    result_row,
    verdict_row,
)
from reportgen.record.scatters import scatter_row
from reportgen.record.trace import trace
from reportgen.record.traces import trace_row

VERSION = 1


def as_json(
    declared: Declared,
    evaluation: Evaluation,
    findings: Sequence[Finding],
    issue: int,
    readings: Readings,
    schema: str = "",
) -> str:
    """The record as text: JSON (RFC 8259) in UTF-8, a row a line, so that two issues can be laid side by side.

    Results, comparisons, first places and claims stand in the campaign's order, findings with errors first.
    `readings` give the traces their places. `reportgen.record.schema` describes the shape; `schema` is where that
    description stands, "" where it stands nowhere.
    """
    record = rows(declared, evaluation, findings, issue, readings.readings)
    if schema:
        record = {"$schema": schema, **record}
    return "{\n" + ",\n".join(f" {_line(key)}: {_rows(value)}" for key, value in record.items()) + "\n}\n"


def rows(
    declared: Declared,
    evaluation: Evaluation,
    findings: Sequence[Finding],
    issue: int,
    readings: Mapping[ReadingKey, Reading],
) -> Row:
    """The record as plain data, before it is text."""
    campaign = declared.campaign

    def told(quantity: str, rests_on: Keys) -> list[str]:
        return [c.id for c in evaluation.caveats_on(quantity, rests_on)]

    return {
        "version": VERSION,
        "campaign": evaluation.campaign,
        "issue": issue,
        "contenders": [contender_row(c) for c in campaign.contenders],
        "results": [
            result_row(
                r, campaign, told(r.quantity, r.rests_on), trace(r.rests_on, readings, campaign.folder), readings
            )
            for r in evaluation.results
        ],
        "comparisons": [comparison_row(c, told(c.quantity, c.rests_on)) for c in evaluation.comparisons],
        "first": [first_row(f, told(f.quantity, f.rests_on)) for f in evaluation.firsts],
        "scatters": [scatter_row(s, campaign) for s in evaluation.scatters],
        "claims": [claim_row(c, campaign, told(c.quantity, c.rests_on)) for c in evaluation.claims],
        "verdict": verdict_row(evaluation.verdict, _on_cost(evaluation)),
        "caveat_list": [caveat_row(c) for c in evaluation.caveats],
        "photo_list": [photo_row(campaign.id, p) for p in campaign.photos],
        "film_list": [film_row(f) for f in campaign.films],
        "trace_list": [trace_row(t) for t in evaluation.traces],
        "findings": [finding_row(f) for f in in_order(findings)],
    }


def _on_cost(evaluation: Evaluation) -> list[str]:
    cost = evaluation.verdict.cost if evaluation.verdict else None
    return [c.id for c in caveats_on_cost(evaluation, cost)] if cost else []


def _rows(value: object) -> str:
    if not isinstance(value, list) or not value:
        return _line(value)
    return "[\n" + ",\n".join(f"  {_line(row)}" for row in value) + "\n ]"


def _line(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, allow_nan=False)
