"""`reportgen view`: build the site, show it here and follow every change."""

from __future__ import annotations

import signal
import time
from pathlib import Path
from types import FrameType
from typing import TYPE_CHECKING

import click

from reportgen.cli.asked import path_argument
from reportgen.cli.waiting import progress_on_a_terminal, progress_over

if TYPE_CHECKING:
    from reportgen.view import Outcome

EXAMPLE = """\b
Example:
  reportgen view stoves"""


@click.command(epilog=EXAMPLE)
@path_argument
@click.option("--port", type=click.IntRange(1, 65535), help="The port to serve on (default: one that is free).")
def view(path: Path, port: int | None) -> None:
    """Build the site of PATH (default: here), show it on this machine and rebuild it on every change.

    A mistake shows on the page and here; the last good site stays. Ctrl-C ends it.
    """
    signal.signal(signal.SIGTERM, _end)
    from reportgen.build.memory import Standing
    from reportgen.build.run import SITE
    from reportgen.sources import find_workspace
    from reportgen.view import Shown, changes, compiled, says_the_same, serving

    root = find_workspace(path).root
    out, standing = root / SITE, Standing()
    tell = progress_on_a_terminal()
    shown = Shown()
    outcome = compiled(path, out, tell)
    shown.show(outcome)
    _say(outcome, path)
    try:
        with serving(out, shown, port, root) as address:
            click.echo(f"Open {address} – it follows every change; Ctrl-C ends it.")
            for _ in changes(path, out):
                began = time.perf_counter_ns()
                before, outcome = outcome, compiled(path, out, tell, standing)
                if says_the_same(before, outcome):
                    shown.know(outcome)
                    progress_over()
                    continue
                shown.show(outcome)
                _say(outcome, path, (time.perf_counter_ns() - began) // 1_000_000)
    except KeyboardInterrupt:
        click.echo("")
    except OSError as error:
        if port is None:
            raise
        raise click.ClickException(
            f"Port {port} can't be used: {error.strerror}. Leave --port out for one that is free."
        ) from None


def _end(number: int, frame: FrameType | None) -> None:
    """A polite request to stop, from a shell's `kill` or a closing session, ends it as Ctrl-C does."""
    raise KeyboardInterrupt


def _say(outcome: Outcome, path: Path, milliseconds: int = 0) -> None:
    from reportgen.build.progress import Built
    from reportgen.cli.outcome import in_words
    from reportgen.cli.say import counted, root_of, say
    from reportgen.finding import Refused

    progress_over()
    took = f" in {milliseconds} ms" if milliseconds else ""
    if isinstance(outcome, Built):
        say(outcome.findings, root_of(path))
        click.echo(f"Compiled{took}: {counted(outcome.findings)}.")
    elif isinstance(outcome, Refused):
        say(outcome.findings, root_of(path))
        click.echo(f"Not compiled: {counted(outcome.findings)}. The last good site is still shown.", err=True)
    else:
        click.echo(in_words(outcome), err=True)
