"""What is told of each finding, in a pipe and on a terminal alike: what it says, where, and what stands under it.

What is in full is told once: a second finding of one rule has the same reason and remedy, and leaves room to others.
Of every error, without whose mending nothing compiles, what to do is told.
"""

from __future__ import annotations

import os
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from reportgen.finding import Finding, Place

IN_FULL = 3


def advised(findings: Sequence[Finding]) -> list[tuple[tuple[str, str], ...]]:
    """What stands under each finding, as (``Why:`` or ``Do:``, text): nothing that was told already."""
    told: set[tuple[str, str]] = set()
    out = []
    for finding in findings:
        advice = (finding.why, finding.do)
        new = any(advice) and advice not in told
        in_full = new and len(told) < IN_FULL
        if new and (in_full or finding.severity == "error"):
            told.add(advice)
            lines = (("Why:", finding.why if in_full else ""), ("Do:", finding.do))
            out.append(tuple((name, text) for name, text in lines if text))
        else:
            out.append(())
    return out


def said(finding: Finding) -> str:
    """What it says and, where it can be accepted, the rule's name that `accept:` wants."""
    return finding.says if finding.severity == "error" else f"{finding.says} [{finding.rule}]"


def where(place: Place, root: Path | None) -> str:
    """The place as one would open it from here: from the current folder where that is above it, else in full."""
    if root is None or not place.file:
        return str(place)
    full = root / place.file
    shorter = os.path.relpath(full)
    return str(replace(place, file=str(full) if shorter.startswith(os.pardir) else shorter))
