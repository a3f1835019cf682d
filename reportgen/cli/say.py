"""Findings for the terminal: the three that harm most in full, the rest a line each, a count at the end.

On a terminal they are wrapped and coloured; in a pipe they are plain text, a finding's first line always
``severity file:line:column says``.
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path

import click

from reportgen.cli.finding_told import advised, said, where
from reportgen.finding import SEVERITIES, Finding, Refused


def say(findings: Sequence[Finding], root: Path | None = None, err: bool = True) -> None:
    """Print `findings` as the stream can show them; `root` is the folder that their files are named from."""
    stream = sys.stderr if err else sys.stdout
    if stream.isatty():
        from reportgen.cli.dressed import dressed

        dressed(_open(findings), root, stream)
        return
    for line in in_plain_text(findings, root):
        click.echo(line, err=err)


def in_plain_text(findings: Sequence[Finding], root: Path | None = None) -> list[str]:
    """Lines for a pipe. What the author has accepted is counted, not shown."""
    lines = []
    open_ = _open(findings)
    for finding, advice in zip(open_, advised(open_), strict=True):
        lines.append(f"{finding.severity:<7} {where(finding.place, root)}  {said(finding)}")
        lines += [f"    {name:<4} {text}" for name, text in advice]
    return lines


def counted(findings: Sequence[Finding]) -> str:
    """``2 errors, 1 warning`` or ``nothing to mend``."""
    open_ = _open(findings)
    counts = [(sum(f.severity == s for f in open_), s) for s in SEVERITIES]
    text = ", ".join(f"{n} {s}{'' if n == 1 else 's'}" for n, s in counts if n)
    accepted = len(findings) - len(open_)
    return (text or "nothing to mend") + (f" ({accepted} accepted)" if accepted else "")


def as_rows(findings: Sequence[Finding]) -> list[dict[str, object]]:
    """For `--json`: one flat row a finding, files named from the workspace."""
    return [
        {
            "severity": f.severity,
            "rule": f.rule,
            "file": f.place.file,
            "line": f.place.line or None,
            "column": f.place.column or None,
            "sheet": f.place.sheet or None,
            "says": f.says,
            "why": f.why,
            "do": f.do,
            "subject": f.subject or None,
            "contender": f.contender or None,
            "accepted": f.accepted or None,
        }
        for f in findings
    ]


def root_of(path: Path) -> Path | None:
    """The folder that findings about `path` name their files from; None where there is nothing to find there."""
    from reportgen.sources import find_workspace

    try:
        return find_workspace(path).root
    except Refused:
        return None


def _open(findings: Sequence[Finding]) -> tuple[Finding, ...]:
    """Those not accepted, errors first; inside a severity as they came, which is worst first."""
    return tuple(sorted((f for f in findings if not f.accepted), key=lambda f: SEVERITIES.index(f.severity)))
