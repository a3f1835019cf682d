"""Findings in the order in which they do harm."""

from __future__ import annotations

from collections.abc import Iterable

from reportgen.finding import SEVERITIES, Finding


def worst_first(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Each finding once: errors, warnings, notes; inside each as the audit's table ranks the rules, then by place.

    A rule that the table doesn't know belongs to an earlier stage and comes before those that it knows.
    """
    from reportgen.audit.rules import RULES

    harm = {rule.name: rank for rank, rule in enumerate(RULES)}
    return tuple(
        sorted(
            dict.fromkeys(findings),
            key=lambda f: (SEVERITIES.index(f.severity), harm.get(f.rule, -1), f.place, f.says),
        )
    )
