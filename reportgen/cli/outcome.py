"""How a command ends: 0 fine, 1 an error or a failed check, 2 misuse; and what is said when something broke."""

from __future__ import annotations

import errno
import os
import sys
import warnings

import click

from reportgen.finding import Refused

FINE, FAILED, MISUSED = 0, 1, 2
TRACE = "REPORTGEN_TRACE"
IN_THE_WAY = "A file stands where a folder has to be; move it, or name another place with --out."
REMEDIES = {
    errno.ENOSPC: "Make room on that disk, or name another place with --out.",
    errno.EDQUOT: "Make room on that disk, or name another place with --out.",
    errno.EROFS: "Nothing can be written there; name another place with --out.",
    errno.EACCES: "You may not write there; name another place with --out.",
    errno.EEXIST: IN_THE_WAY,
    errno.ENOTDIR: IN_THE_WAY,
    errno.EPERM: "You may not write there; name another place with --out.",
}
# What these warn of is looked at and told as findings, or left out of pages anyway. Silenced once for the process: a
# guard around each use would reach into work that runs beside it.
UNHEARD = ("PIL", "openpyxl")
REPORT_TO = "the project's issue list"


def run(arguments: list[str] | None = None) -> None:
    """Run the command line and exit. Mistakes in the author's files or on the disk get a message and no stack trace."""
    from reportgen.cli.commands import commands

    for library in UNHEARD:
        warnings.filterwarnings("ignore", module=rf"{library}\.")
    try:
        commands.main(arguments, prog_name="reportgen")
    except Exception as broken:  # the last line before the terminal: no stack trace reaches an author
        if os.environ.get(TRACE):
            raise
        click.echo(in_words(broken), err=True)
        sys.exit(FAILED)


def in_words(broken: Exception) -> str:
    """What to tell someone who can't be expected to read a stack trace."""
    if isinstance(broken, Refused):
        from reportgen.cli.say import in_plain_text

        return "\n".join(in_plain_text(broken.findings))
    if isinstance(broken, OSError) and broken.strerror:
        where = f"{broken.filename}: " if broken.filename else ""
        remedy = REMEDIES.get(broken.errno or 0, "")
        return f"{where}{broken.strerror}.\n  Nothing that stood before was changed.{remedy and ' ' + remedy}"
    return (
        f"reportgen itself failed: {type(broken).__name__}: {broken}\n"
        "  That is a fault of the program, not of your files; nothing that stood before was changed.\n"
        f"  Set {TRACE}=1 to see where it happened, and report it with that trace to {REPORT_TO}."
    )
