"""`reportgen inspect`: open every page of a site in a headless browser and check it."""

from __future__ import annotations

import sys
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from reportgen.cli.asked import json_option, print_json
from reportgen.cli.outcome import FAILED
from reportgen.cli.waiting import line_on_a_terminal, progress_over

if TYPE_CHECKING:
    from reportgen.browser.inspect import Fault, Inspected, Measured

EXAMPLE = """\b
Example:
  reportgen inspect .site"""
MOST_PAGES = 3  # named where one thing is wrong on many


@click.command(epilog=EXAMPLE)
@click.argument("site", type=click.Path(path_type=Path, exists=True, file_okay=False))
@click.option("all_variants", "--all", is_flag=True, help="Every page light and dark, on a phone and a desk; slower.")
@click.option("--samples", is_flag=True, help="Only one page of each kind, in all of these; quicker.")
@json_option
def inspect(site: Path, all_variants: bool, samples: bool, as_json: bool) -> None:
    """Open every page of the compiled SITE in a headless Chromium and check it.

    Every page once, one of each kind light and dark, on a phone and a desk, by keys, without scripts, on paper and over
    a slow line. Looks for dead links and anchors, pages that forward nowhere, broken feeds and linked data, headings,
    script errors, requests that fail or leave the site, pages wider than a window (320 to 1280 px), text that is cut
    when spaced, what keys don't reach, what moves, what paper cuts, weight, and barriers to readers (axe, WCAG 2.2).
    Ends with 1 where there is a fault.
    """
    from reportgen.browser.chromium import NoBrowserError
    from reportgen.browser.inspect import inspect_site

    line = line_on_a_terminal()
    try:
        found = inspect_site(
            site,
            lambda doing, done, of: line(f"{done + 1} of {of}: {doing}"),
            all_variants=all_variants,
            samples_only=samples,
        )
    except NoBrowserError as error:
        raise click.ClickException(str(error)) from None
    finally:
        progress_over()
    if as_json:
        print_json(_for_machines(found))
    elif found.pages:
        _say(found)
    else:
        click.echo(f"There is no page in {site}. Name the folder that `reportgen compile` built.", err=True)
    if found.faults or not found.pages:
        sys.exit(FAILED)


def _for_machines(found: Inspected) -> dict[str, Any]:
    from reportgen.browser.inspect import CHECKS

    return {
        "ok": bool(found.pages) and not found.faults,
        "pages": found.pages,
        "faults": [{**asdict(f), "why": CHECKS[f.sort].why, "do": CHECKS[f.sort].do} for f in found.faults],
        "measured": [asdict(measured) for measured in found.measured],
    }


def _say(found: Inspected) -> None:
    from reportgen.browser.inspect import CHECKS

    for sort, check in CHECKS.items():
        faults = [fault for fault in found.faults if fault.sort == sort]
        if faults:
            click.echo(f"{sort}: {check.why}.\n  To mend it: {check.do}.")
            for text in _places(faults):
                click.echo(f"  {text}")
    if found.measured:
        click.echo("One page of each kind, on a phone with a slow line (400 kbit/s, a processor four times as slow):")
        for text in _table(found.measured):
            click.echo(f"  {text}")
    number = len(found.faults)
    faults_said = "no faults" if not number else f"{number} fault{'' if number == 1 else 's'}"
    click.echo(f"Inspected {found.pages} page{'' if found.pages == 1 else 's'}: {faults_said}.")


def _places(faults: list[Fault]) -> list[str]:
    """One line for each thing that is wrong, with the pages it is wrong on."""
    by_what: dict[str, list[str]] = {}
    for fault in faults:
        place = f"{fault.page}:{fault.line}" if fault.line else fault.page
        by_what.setdefault(fault.says, []).append(place)
    return [
        f"{', '.join(places[:MOST_PAGES])}{_and_more(len(places) - MOST_PAGES)}  {says}"
        for says, places in by_what.items()
    ]


def _and_more(number: int) -> str:
    return f" and {number} more" if number > 0 else ""


def _table(measured: tuple[Measured, ...]) -> list[str]:
    """Figures under figures: kind, seconds until something is seen, bytes, files, sheets of paper, the page."""
    from reportgen.wording.number import fixed

    rows = [("kind of page", "first seen", "shift", "loaded", "files", "sheets", "page")]
    rows += [
        (
            m.kind,
            f"{fixed(m.painted, 1)} s",
            fixed(m.shift, 3),
            f"{fixed(m.bytes_loaded / 1000, 1)} kB",
            str(m.requests),
            str(m.sheets),
            m.page,
        )
        for m in measured
    ]
    widths = [max(len(row[n]) for row in rows) for n in range(len(rows[0]))]
    return [
        "  ".join(
            cell.ljust(width) if n in (0, len(row) - 1) else cell.rjust(width)
            for n, (cell, width) in enumerate(zip(row, widths, strict=True))
        ).rstrip()
        for row in rows
    ]
