"""The commands: words in, words out, exit status."""

from __future__ import annotations


def main() -> None:
    """What `reportgen` on the command line runs; never returns, and never shows a stack trace unless asked to."""
    from reportgen.cli.outcome import run

    run()
