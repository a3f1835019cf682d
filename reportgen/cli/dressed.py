"""Findings laid out for someone at a terminal: folded to its width, the severity alone in colour."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TextIO

from rich.console import Console
from rich.table import Table
from rich.text import Text

from reportgen.cli.finding_told import advised, said, where
from reportgen.finding import Finding

COLOURS = {"error": "bold red", "warning": "bold yellow", "note": "bold blue"}
WIDEST = 110


def dressed(findings: Sequence[Finding], root: Path | None, stream: TextIO) -> None:
    """Print `findings`, the worst in full; colours stay away where NO_COLOR is set."""
    console = Console(file=stream, highlight=False)
    table = Table.grid(padding=(0, 2, 0, 0))
    table.add_column(no_wrap=True)
    table.add_column(overflow="fold")
    for finding, advice in zip(findings, advised(findings), strict=True):
        table.add_row(Text(finding.severity, COLOURS[finding.severity]), Text(where(finding.place, root), "bold"))
        table.add_row("", Text(said(finding)))
        for name, text in advice:
            table.add_row("", Text(f"{name} {text}"))
        if advice:
            table.add_row("", "")
    console.print(table, width=min(console.width, WIDEST))
