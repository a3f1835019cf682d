"""The audit: every rule asked, the author's acceptances laid beside what was found."""

from __future__ import annotations

import posixpath
from dataclasses import replace

from reportgen.audit.case import Case, Rule, Seen
from reportgen.audit.rules import RULES
from reportgen.campaign.declared import Acceptance, Campaign, Declared, Publication, Test
from reportgen.evaluation.evaluated import Evaluation
from reportgen.finding import Finding, in_order
from reportgen.intake.reading import Readings


def audit(
    declared: Declared,
    readings: Readings,
    evaluation: Evaluation,
    publication: Publication,
    files: tuple[str, ...] = (),
) -> tuple[Finding, ...]:
    """Everything the rules find in one campaign, errors first. `files` are the paths of all its files."""
    case = Case(declared, readings, evaluation, publication, files)
    found = [_finding(rule, seen) for rule in RULES for seen in rule.check(case)]
    return in_order(accepted([*found, *declared.findings, *readings.findings], declared))


def accepted(findings: list[Finding], declared: Declared) -> list[Finding]:
    """The same findings, those the author answered carrying the answer; and answers to nothing, as notes."""
    answers = {a.id: a for a in declared.campaign.accepts}
    used: set[str] = set()
    out = []
    for finding in findings:
        fitting = (a for a in answers.values() if _answers(a, finding, declared.campaign))
        answer = next(fitting, None) if finding.severity != "error" else None
        if answer:
            used.add(answer.id)
            finding = replace(finding, accepted=answer.because)
        out.append(finding)
    known = {r.name for r in RULES} | {f.rule for f in findings}
    for answer in answers.values():
        if answer.id not in used:
            out.append(_answers_nothing(answer, declared, known))
    return out


def _answers(answer: Acceptance, finding: Finding, campaign: Campaign) -> bool:
    if answer.rule != finding.rule:
        return False
    if answer.about.contender and answer.about.contender != finding.contender:
        return False
    return not answer.about.quantities or bool(_about(finding, campaign) & set(answer.about.quantities))


def _about(finding: Finding, campaign: Campaign) -> frozenset[str]:
    """The quantities a finding is about: its own, all of its test's, or all that its file of readings is read for."""
    sort, _, id = finding.subject.partition("/")
    if sort == "quantity":
        return frozenset({id})
    tests = [t for t in campaign.tests if (t.id == id if sort == "test" else _is_read_by(t, finding, campaign))]
    return frozenset(q.id for t in tests for q in t.quantities)


def _is_read_by(test: Test, finding: Finding, campaign: Campaign) -> bool:
    files = {posixpath.normpath(posixpath.join(campaign.folder, s.file)) for s in test.sources if s.file}
    return finding.place.file in files


def _answers_nothing(answer: Acceptance, declared: Declared, known: set[str]) -> Finding:
    place = declared.at(f"acceptance/{answer.id}")
    if answer.rule not in known:
        names = ", ".join(sorted(r.name for r in RULES))
        return Finding("warning", "accept", place, f"No rule is called `{answer.rule}`.", do=f"The rules are: {names}.")
    return Finding(
        "note", "accept", place, f"Nothing is found any more that `{answer.rule}` accepts.", do="Remove the entry."
    )


def _finding(rule: Rule, seen: Seen) -> Finding:
    return Finding(
        seen.severity or rule.severity,
        rule.name,
        seen.place,
        seen.says,
        rule.why,
        rule.do,
        seen.subject,
        seen.contender,
    )
