"""One row of the record for each thing computed. The keys of version 1 stay: further ones may come, none is renamed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from reportgen.addresses import caveat_anchor, claim_anchor
from reportgen.campaign.declared import Campaign, Test
from reportgen.evaluation.conditions import conditions_beside
from reportgen.evaluation.evaluated import (
    Caveat,
    ClaimOutcome,
    Comparison,
    Contribution,
    FirstPlace,
    InUnit,
    Otherwise,
    PassValue,
    Result,
    Verdict,
)
from reportgen.evaluation.says import says_of
from reportgen.finding import Finding
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.judgement.measured import Reason
from reportgen.record.draws import draws_row
from reportgen.record.hanging import hanging_row
from reportgen.record.money_rows import break_even_rows, cost_row, value_rows
from reportgen.record.order_rows import laboratory_row, observed_row, stands_row
from reportgen.record.overall_row import overall_row, pairwise, rank_shares
from reportgen.record.pictures import moment_row
from reportgen.record.plain import number, numbers
from reportgen.record.printed import printed, why_none
from reportgen.record.readings import reading_rows
from reportgen.wording.reason import why_blocked

Row = dict[str, Any]
COVERAGE = 0.95


def result_row(
    result: Result,
    campaign: Campaign,
    caveats: list[str],
    traced: list[Row],
    readings: Mapping[ReadingKey, Reading],
) -> Row:
    """One quantity for one contender (and part). Where a reading was off scale, `value` is the limit."""
    e = result.estimate
    share = result.yes / result.of if result.kind == "yes/no" and result.yes is not None and result.of else None
    has_interval = result.low is not None or result.high is not None
    return {
        "test": result.test,
        "quantity": result.quantity,
        "contender": result.contender,
        "kind": result.kind,
        "value": number(share if result.kind == "yes/no" else e.value if e and result.kind != "grade" else None),
        "unit": e.unit if e else campaign.quantity(result.quantity).unit,
        "u": number(result.u),
        "low": number(result.low),
        "high": number(result.high),
        "coverage": COVERAGE if has_interval else None,
        "at_least": result.at_least,
        "why_no_u": why_none(result),
        "printed": printed(result),
        "covers": result.covers,
        "part": result.part or None,
        "yes": result.yes,
        "of": result.of,
        "grade": result.grade or None,
        "grades": dict(result.grades),
        "passes": result.passes,
        "excluded": result.excluded,
        "without_exclusions": number(result.without),
        "without_limit": result.without_limit,
        "limit": e.limit if e else None,
        "rank": list(result.rank) if result.rank and not result.blocked else None,
        "blocked": why_blocked(result.blocked) if result.blocked else None,
        "missing": result.missing or None,
        "running": result.running or None,
        "caveats": caveats,
        "trace": traced,
        "by_pass": [
            {
                **_pass_row(p),
                "conditions": _conditions(campaign.test(result.test), p, readings),
                "readings": reading_rows(p.keys, readings, result.contender, campaign),
            }
            for p in result.by_pass
        ],
        "scatter": number(e.scatter) if e else None,
        "degrees": number(e.degrees) if e else None,
        "effective_degrees": e.effective_degrees if e else None,
        "also": [_other_unit_row(o) for o in result.also],
        "stands": [stands_row(x) for x in result.stands],
        "laboratory": laboratory_row(result.laboratory) if result.laboratory else None,
        "draws": draws_row(result.draws, e.value if e else None),
        "budget": [_budget_row(c) for c in e.contributions] if e else [],
    }


def _other_unit_row(other: InUnit) -> Row:
    return {
        "unit": other.unit,
        "value": number(other.value),
        "u": number(other.u),
        "low": number(other.low),
        "high": number(other.high),
    }


def _pass_row(one: PassValue) -> Row:
    return {
        "together": one.together,
        "specimen": one.specimen,
        "pass": one.pass_,
        "part": one.part or None,
        "value": number(one.value),
        "limit": one.limit,
        "word": one.word or None,
        "excluded": one.excluded or None,
        "absent_because": one.absent_because or None,
    }


def _conditions(test: Test, one: PassValue, readings: Mapping[ReadingKey, Reading]) -> dict[str, str]:
    """What was written of the pass under the test's conditions."""
    beside = [conditions_beside(test, readings[k]) for k in one.keys if k in readings]
    names = {name: dict.fromkeys(b[name] for b in beside if name in b) for name in test.conditions}
    return {name: ", ".join(said) for name, said in names.items() if said}


def _budget_row(part: Contribution) -> Row:
    return {
        "sort": part.source.sort,
        "of": part.source.of,
        "where": part.source.where or None,
        "size": number(part.size),
        "share": number(part.share),
        "shared": part.shared,
        "degrees": number(part.degrees),
        "shape": part.source.shape,
        "sensitivity": number(part.behind.sensitivity) if part.behind else None,
        "of_each": number(part.behind.u) if part.behind else None,
        "of_each_unit": part.behind.unit if part.behind else None,
        "inputs": part.behind.count if part.behind else None,
    }


def comparison_row(pair: Comparison, caveats: list[str]) -> Row:
    """One pair. `difference` is first minus second; `favours` only where a repeat would agree."""
    settle = pair.settle
    return {
        "test": pair.test,
        "quantity": pair.quantity,
        "first": pair.first,
        "second": pair.second,
        "difference": number(pair.difference),
        "u": number(pair.u),
        "low": number(pair.low),
        "high": number(pair.high),
        "unit": pair.unit,
        "percent": number(pair.percent.value) if pair.percent else None,
        "percent_low": number(pair.percent.low) if pair.percent else None,
        "percent_high": number(pair.percent.high) if pair.percent else None,
        "percent_of": pair.second if pair.percent else None,
        "decision": pair.decision,
        "resolved": pair.resolved,
        "differed": pair.differed,
        "differed_low": number(pair.differed_low),
        "differed_high": number(pair.differed_high),
        "favours": pair.favours if pair.resolved else None,
        "beyond": pair.beyond,
        "within": pair.within or None,
        "part": pair.part or None,
        "observed": observed_row(pair.seen) if pair.seen else None,
        "reason": _reason(pair.reason),
        "settle": settle
        and {
            "difference": number(settle.difference),
            "passes": settle.passes,
            "finer": settle.finer,
            "at": settle.at,
            "specimens": settle.specimens,
            "calibration": settle.calibration,
        },
        "draws": draws_row(pair.draws, pair.difference),
        "caveats": caveats,
    }


def first_row(first: FirstPlace, caveats: list[str]) -> Row:
    """Who is first on one quantity, or who may be."""
    return {
        "test": first.test,
        "quantity": first.quantity,
        "winner": first.winner,
        "may_be_first": list(first.may_be_first),
        "unranked": list(first.unranked),
        "part": first.part or None,
        "reason": _reason(first.reason),
        "order_changes_without": first.order_changes_without,
        "ranks_without": {name: list(rank) for name, rank in first.ranks_without.items()},
        "pairs_without": [
            {"first": p.first, "second": p.second, "decision": p.decision, "favours": p.favours}
            for p in first.pairs_without
        ],
        "hangs_on": hanging_row(first.hangs_on) if first.hangs_on else None,
        "caveats": caveats,
    }


def claim_row(outcome: ClaimOutcome, campaign: Campaign, caveats: list[str]) -> Row:
    """A maker's claim against what was measured. `claim` is its words, one source after the other."""
    declared = next(c for c in campaign.contender(outcome.contender).claims if c.id == outcome.claim)
    return {
        "contender": outcome.contender,
        "claim": " / ".join(dict.fromkeys(declared.says.values())),
        "id": outcome.claim,
        "anchor": claim_anchor(declared.name),
        "quantity": outcome.quantity or None,
        "outcome": outcome.outcome,
        "probability": number(outcome.probability),
        "scope": outcome.scope or None,
        "reason": _reason(outcome.reason),
        "sources": dict(declared.says),
        "at_odds": list(outcome.at_odds),
        "accept": None if outcome.accept is None else [number(x) for x in outcome.accept],
        "part": declared.part or None,
        "under": declared.under or None,
        "tested_so": declared.tested_so or None,
        "included": declared.included or None,
        "looked": declared.looked or None,
        "why": declared.why or None,
        "caveats": caveats,
    }


def verdict_row(verdict: Verdict | None, caveats_on_cost: Sequence[str] = ()) -> Row:
    """The verdict. `pairwise` and `rank_shares` are empty, `overall` null, where nothing was weighed."""
    overall = verdict.overall if verdict else None
    return {
        "winner": verdict.winner if verdict else None,
        "criteria": [
            {
                "quantity": c.quantity,
                "group": c.group,
                "weight": number(c.weight),
                "known_scatter": c.known_scatter,
            }
            for c in (verdict.criteria if verdict else ())
        ],
        "pairwise": pairwise(overall.index) if overall else {},
        "rank_shares": rank_shares(overall) if overall else {},
        "overall": overall_row(overall),
        "value": value_rows(verdict.value if verdict else ()),
        "cost": cost_row(verdict.cost if verdict else None, caveats_on_cost),
        "break_even": break_even_rows(verdict.cost if verdict else None),
        "conditions": [
            {
                "contender": m.contender,
                "quantity": m.quantity,
                "outcome": m.outcome,
                "probability": number(m.probability),
            }
            for m in (verdict.conditions if verdict else ())
        ],
    }


def caveat_row(caveat: Caveat) -> Row:
    """A caveat, incident or exclusion, told once; rows name it by its id."""
    return {
        "id": caveat.id,
        "anchor": caveat_anchor(caveat.name),
        "number": caveat.number,
        "sort": caveat.sort,
        "says": says_of(caveat),
        "pushes": caveat.pushes or None,
        "blocks": caveat.blocks,
        "decided": caveat.decided or None,
        "contender": caveat.contender or None,
        "specimen": caveat.specimen or None,
        "pass": caveat.pass_ or None,
        "part": caveat.part or None,
        "quantities": list(caveat.quantities),
        "photos": list(caveat.photos),
        "film": moment_row(caveat.film),
        "when": caveat.when or None,
        "event": caveat.event or None,
        "times": caveat.times if caveat.sort == "incident" else None,
        "said": list(caveat.said),
        "used": caveat.used or None,
        "seen_by": caveat.seen_by or None,
        "otherwise": [_otherwise_row(o) for o in caveat.otherwise],
        "file": caveat.at.file,
        "line": caveat.at.line or None,
    }


def _otherwise_row(other: Otherwise) -> Row:
    """What a result would be with the other of two records; `value` is a limit where `limit` says so."""
    return {
        "said": other.said,
        "quantity": other.quantity,
        "contender": other.contender,
        "part": other.part or None,
        "value": number(other.value),
        "unit": other.unit,
        "limit": other.limit,
        "instead": other.instead or None,
        "moves": other.moves,
    }


def finding_row(finding: Finding) -> Row:
    """One finding of the audit; `line` and `column` are null where it is about a whole file."""
    return {
        "severity": finding.severity,
        "rule": finding.rule,
        "file": finding.place.file,
        "line": finding.place.line or None,
        "column": finding.place.column or None,
        "sheet": finding.place.sheet or None,
        "says": finding.says,
        "why": finding.why,
        "do": finding.do,
        "subject": finding.subject or None,
        "contender": finding.contender or None,
        "accepted": finding.accepted or None,
    }


def _reason(reason: Reason) -> Row:
    return {"code": reason.code, "numbers": numbers(reason.numbers)}
