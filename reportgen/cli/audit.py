"""`reportgen audit`: check data, fairness and prose; write nothing."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from reportgen.cli.asked import json_option, path_argument, print_json
from reportgen.cli.outcome import FAILED
from reportgen.cli.waiting import progress_on_a_terminal, progress_over

EXAMPLE = """\b
Example:
  reportgen audit stoves"""


@click.command(epilog=EXAMPLE)
@path_argument
@json_option
def audit(path: Path, as_json: bool) -> None:
    """Check data, fairness and prose of the workspace or campaign in PATH (default: here), and say what would mend it.

    Writes nothing. Ends with 1 where there is an error, with 0 where there are only warnings and notes.
    """
    from reportgen.build.run import audit_path
    from reportgen.cli.say import as_rows, counted, root_of, say

    findings = audit_path(path, progress_on_a_terminal())
    progress_over()
    failed = any(finding.severity == "error" for finding in findings)
    if as_json:
        print_json({"ok": not failed, "findings": as_rows(findings)})
    else:
        say(findings, root_of(path), err=False)
        click.echo(f"Audited: {counted(findings)}.")
    if failed:
        sys.exit(FAILED)
