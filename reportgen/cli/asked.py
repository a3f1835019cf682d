"""Options that several commands share."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import click

from reportgen.build.progress import Progress, Tell

CLEAR = "\r\x1b[K"

path_argument = click.argument(
    "path", type=click.Path(path_type=Path, exists=True, file_okay=False), default=".", metavar="[PATH]"
)
json_option = click.option("as_json", "--json", is_flag=True, help="Print it as JSON, for machines.")


def print_json(told: Any) -> None:
    """`told` on standard output, readable and stable."""
    click.echo(json.dumps(told, indent=1, ensure_ascii=False))


def line_on_a_terminal() -> Callable[[str], None]:
    """One line that each call writes anew where someone is looking; silence in a pipe."""
    stream = sys.stderr
    if not stream.isatty():
        return lambda text: None

    def write(text: str) -> None:
        stream.write(f"{CLEAR}{text[:100]}")
        stream.flush()

    return write


def progress_on_a_terminal() -> Tell:
    """The steps of a build on one such line."""
    line = line_on_a_terminal()

    def tell(progress: Progress) -> None:
        campaign = f"{progress.campaign or 'campaign'} ({progress.done + 1} of {progress.of}): " if progress.of else ""
        line(f"{campaign}{progress.step} …")

    return tell


def progress_over() -> None:
    """Clear the line, so that what is printed next begins on it."""
    line_on_a_terminal()("")
