"""`reportgen compile`: build the site."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from reportgen.cli.asked import json_option, path_argument, print_json
from reportgen.cli.outcome import FAILED, in_words
from reportgen.cli.waiting import progress_on_a_terminal, progress_over
from reportgen.finding import Refused

EXAMPLE = """\b
Example:
  reportgen compile stoves --out site"""


@click.command(epilog=EXAMPLE)
@path_argument
@click.option(
    "--out",
    type=click.Path(path_type=Path, file_okay=False),
    help="Where to build it (default: .site in PATH's workspace).",
)
@json_option
def compile(path: Path, out: Path | None, as_json: bool) -> None:
    """Build the site of the workspace or campaign in PATH (default: here).

    The site that stood before stays until the new one is whole, and stays if there are errors.
    """
    from reportgen.build.run import compile_site
    from reportgen.cli.say import as_rows, counted, root_of, say

    try:
        built = compile_site(path, out, progress_on_a_terminal())
    except Refused as refused:
        progress_over()
        if as_json:
            print_json({"ok": False, "findings": as_rows(refused.findings)})
        else:
            say(refused.findings, root_of(path))
            click.echo(f"Not compiled: {counted(refused.findings)}. What was built before is untouched.", err=True)
        sys.exit(FAILED)
    except OSError as fault:
        progress_over()
        if not as_json:
            raise
        print_json({"ok": False, "findings": [], "fault": in_words(fault)})
        sys.exit(FAILED)
    progress_over()
    if as_json:
        print_json(
            {
                "ok": True,
                "out": str(built.out),
                "campaigns": built.campaigns,
                "pages": built.pages,
                "unchanged": built.unchanged,
                "findings": as_rows(built.findings),
            }
        )
        return
    say(built.findings, root_of(path))
    pages, campaigns = _many(built.pages, "page"), _many(built.campaigns, "campaign")
    done = "Nothing has changed" if built.unchanged else "Compiled"
    click.echo(f"{done}: {campaigns}, {pages}; {counted(built.findings)}.")
    click.echo(f"Open {built.out / 'index.html'}")


def _many(count: int, of: str) -> str:
    return f"{count} {of}{'' if count == 1 else 's'}"
