"""A mistake made in every row of a table is told once, with its lines: ten thousand messages help nobody."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from reportgen.finding import Finding

LINES = 3  # lines named beside the first
MOST = 20  # different mistakes of one sort told of one file


def told_once(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Errors of one text in one file become one; of one rule in one file the first `MOST` stay, the last says how many
    more there are. The order stays, and warnings and notes stay as they are: an author answers them one by one."""
    alike: dict[tuple[str, ...], list[Finding]] = {}
    for i, finding in enumerate(findings):
        apart = "" if finding.severity == "error" else str(i)
        at = finding.place
        alike.setdefault((finding.rule, at.file, at.sheet, finding.says, apart), []).append(finding)
    by_rule: dict[tuple[str, str, str], list[Finding]] = {}
    kept: list[Finding] = []
    for several in alike.values():
        first = _with_lines(several)
        of_rule = by_rule.setdefault((first.rule, first.place.file, first.place.sheet), [])
        if first.severity == "error":
            of_rule.append(first)
        if first.severity != "error" or len(of_rule) <= MOST:
            kept.append(first)
    more = {id(told[MOST - 1]): len(told) - MOST for told in by_rule.values() if len(told) > MOST}
    return tuple(_with_more(f, more[id(f)]) if id(f) in more else f for f in kept)


def _with_lines(several: list[Finding]) -> Finding:
    first, *others = several
    lines = sorted({f.place.line for f in others} - {first.place.line, 0})
    if not lines:
        return first
    shown = ", ".join(str(line) for line in lines[:LINES])
    rest = f" and {len(lines) - LINES} more" if len(lines) > LINES else ""
    what = "row" if first.place.sheet else "line"
    return replace(first, says=f"{first.says} The same in {what}{'s' if len(lines) > 1 else ''} {shown}{rest}.")


def _with_more(finding: Finding, more: int) -> Finding:
    what = "mistake of this sort is" if more == 1 else "mistakes of this sort are"
    here = "sheet" if finding.place.sheet else "file"
    return replace(finding, says=f"{finding.says} {more} more {what} in this {here}.")
