"""`reportgen inspect`: open every page of a site in a headless browser and check it."""

from __future__ import annotations

import sys
from dataclasses import asdict
from pathlib import Path

import click

from reportgen.cli.asked import json_option, print_json
from reportgen.cli.outcome import FAILED
from reportgen.cli.waiting import line_on_a_terminal, progress_over

EXAMPLE = """\b
Example:
  reportgen inspect .site"""


@click.command(epilog=EXAMPLE)
@click.argument("site", type=click.Path(path_type=Path, exists=True, file_okay=False))
@json_option
def inspect(site: Path, as_json: bool) -> None:
    """Open every page of the compiled SITE in a headless Chromium and check it.

    Looks for script errors, requests that fail or leave the site, dead links and anchors, pages wider than a phone,
    pictures without a text in their stead, and barriers to readers (axe). Ends with 1 where there is a fault.
    """
    from reportgen.browser.chromium import NoBrowserError
    from reportgen.browser.inspect import inspect_site

    line = line_on_a_terminal()
    try:
        found = inspect_site(site, lambda page, done, of: line(f"{done + 1} of {of}: {page}"))
    except NoBrowserError as error:
        raise click.ClickException(str(error)) from None
    finally:
        progress_over()
    if as_json:
        print_json(
            {
                "ok": bool(found.pages) and not found.faults,
                "pages": found.pages,
                "faults": [asdict(fault) for fault in found.faults],
            }
        )
    else:
        for fault in found.faults:
            place = f"{fault.page}:{fault.line}" if fault.line else fault.page
            click.echo(f"{place}  {fault.sort}: {fault.says}")
        number = len(found.faults)
        faults = "no faults" if not number else f"{number} fault{'' if number == 1 else 's'}"
        if found.pages:
            click.echo(f"Inspected {found.pages} page{'' if found.pages == 1 else 's'}: {faults}.")
        else:
            click.echo(f"There is no page in {site}. Name the folder that `reportgen compile` built.", err=True)
    if found.faults or not found.pages:
        sys.exit(FAILED)
