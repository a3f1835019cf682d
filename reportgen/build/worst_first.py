"""Findings in the order in which they do harm."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace

from reportgen.finding import SEVERITIES, Finding

QUOTED = 160  # characters of what an author wrote, in a message: the place shows the rest
_QUOTED = re.compile(f"“([^”]{{{QUOTED}}})[^”]+”")
_NAMED = re.compile(f"([^\\s“”…]{{{QUOTED}}})[^\\s“”…]+")


def worst_first(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Each finding once: errors, warnings, notes; inside each as the audit's table ranks the rules, then by place.

    A rule that the table doesn't know belongs to an earlier stage and comes before those that it knows.
    """
    from reportgen.audit.rules import RULES

    harm = {rule.name: rank for rank, rule in enumerate(RULES)}
    return tuple(
        sorted(
            dict.fromkeys(map(_quoting_little, findings)),
            key=lambda f: (SEVERITIES.index(f.severity), harm.get(f.rule, -1), f.place, f.says),
        )
    )


def _quoting_little(finding: Finding) -> Finding:
    """The finding with long quotations cut: a page that slipped into one cell would hide all the other findings."""
    says, do = (_NAMED.sub("\\1…", _QUOTED.sub("“\\1…”", text)) for text in (finding.says, finding.do))
    return finding if (says, do) == (finding.says, finding.do) else replace(finding, says=says, do=do)
