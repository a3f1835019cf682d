"""`reportgen begin`: a campaign that compiles as it stands."""

from __future__ import annotations

import shlex
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import click

from reportgen.cli.begin_tables import FIRST
from reportgen.cli.outcome import FAILED

if TYPE_CHECKING:
    from reportgen.campaign.declared import Kind
    from reportgen.campaign.kinds import KindOf

EXAMPLE = """\b
Examples:
  reportgen begin stoves
  reportgen begin stoves --contender "Corvane Sol" --contender "Ostler Mk II" \\
      --measure "boil time: timed, s, lower, stopwatch"
"""

CONTENDERS = ("first: First contender", "second: Second contender")
WAYS = ("lower", "higher", "neither")
MEASURES = ("time taken: timed, s, lower, stopwatch", "weight: one reading, g, lower, kitchen-scale")


@click.command(epilog=EXAMPLE)
@click.argument("folder", metavar="DIR", type=click.Path(path_type=Path, file_okay=False))
@click.option("--title", help="The question the comparison answers.")
@click.option(
    "--contender", "contenders", multiple=True, metavar="NAME", help="A product under test; give it once for each."
)
@click.option(
    "--measure",
    "measures",
    multiple=True,
    metavar="WORDS",
    help='What is measured, as "boil time: timed, s, lower"; once for each.',
)
def begin(folder: Path, title: str | None, contenders: tuple[str, ...], measures: tuple[str, ...]) -> None:
    """Make DIR a campaign, and the folder around it a workspace if there is none.

    On a terminal it asks for what isn't given; in a script it takes good defaults. No file is overwritten.
    """
    from reportgen.cli.beginning import Asked
    from reportgen.cli.founding import Standing, found, plan, try_out

    try:
        site = plan(folder)
    except Standing as standing:
        raise click.ClickException(str(standing)) from None
    named = folder.resolve().name.replace("-", " ").replace("_", " ")
    proposed = f"{named[:1].upper()}{named[1:]} compared"
    if _someone_is_there():
        title = title or click.prompt("What question does it answer?", default=proposed)
        contenders = contenders or _several("A product under test, one at a time", CONTENDERS)
        measures = measures or _measures()
    asked = Asked(title or proposed, contenders or CONTENDERS, measures or MEASURES)
    tried = try_out(site, asked)
    if tried.errors:
        for finding in tried.errors:
            click.echo(f"error   {finding.says}" + (f"\n    Do:  {finding.do}" if finding.do else ""), err=True)
        click.echo("Nothing was written.", err=True)
        sys.exit(FAILED)
    written = found(site, asked, tried.files)
    _tell_what_next(folder, site.campaign, [path for path in written if ".schemas" not in path.parts])


def _someone_is_there() -> bool:
    return sys.stdin.isatty() and sys.stdout.isatty()


def _several(what: str, defaults: tuple[str, ...]) -> tuple[str, ...]:
    """Answers until one is left empty; the first two have defaults."""
    said: list[str] = []
    while True:
        default = defaults[len(said)] if len(said) < len(defaults) else ""
        answer = click.prompt(
            what if len(said) < len(defaults) else "Another (Enter when there are no more)",
            default=default,
            show_default=bool(default),
        )
        if not answer.strip():
            return tuple(said)
        said.append(answer.strip())


def _measures() -> tuple[str, ...]:
    """What is measured, each in three short questions."""
    from reportgen.campaign.kinds import KINDS

    click.echo("Now what you measure. The kinds:")
    widest = max(map(len, KINDS))
    for kind, of in KINDS.items():
        usual = ", ".join(filter(None, (of.usual_unit, of.instrument)))
        click.echo(f"  {kind:<{widest}}  {of.means}" + (f" Usually {usual}." if usual else ""))
    said: list[str] = []
    while True:
        name = click.prompt(
            "What do you measure?" if not said else "What else? (Enter when there is no more)",
            default="" if said else "time taken",
            show_default=not said,
        ).strip()
        if not name:
            return tuple(said)
        said.append(f"{name}: {', '.join(_words_of(name, KINDS))}")


def _words_of(name: str, kinds: Mapping[Kind, KindOf]) -> list[str]:
    """Kind, unit, direction and instrument of one measure; what the kind doesn't need isn't asked for."""
    proposed = "timed" if "time" in name else "one reading"
    kind: Kind = click.prompt("  of which kind?", default=proposed, type=click.Choice(list(kinds)), show_choices=False)
    words: list[str] = [kind]
    if kinds[kind].numeric and kind != "count":
        words.append(click.prompt("  in which unit?", default=kinds[kind].usual_unit or "g"))
    usual = "higher" if kind in ("yes/no", "grade") else "lower"
    words.append(click.prompt("  which way is better?", default=usual, type=click.Choice(WAYS)))
    if kinds[kind].instrument or kind == "one reading":
        usual_one = kinds[kind].instrument or "-"
        instrument = click.prompt("  read on which instrument? (- for none)", default=usual_one)
        words += [instrument] if instrument != "-" else []
    return words


def _tell_what_next(folder: Path, campaign: Path, written: list[Path]) -> None:
    for path in written:
        click.echo(f"wrote {path}")
    click.echo("")
    tables = [str(folder / path.name) for path in written if path.name in FIRST]
    click.echo(f"Next: type your readings into {' and '.join(tables)}, a row for each pass of a contender,")
    click.echo(f"and say more about products and tests in {folder / 'campaign.yaml'}.")
    typed = shlex.quote(str(folder))
    click.echo(f"See it as it grows:  reportgen view {typed}")
    click.echo(f"Build the site:      reportgen compile {typed} --out site")
    click.echo("The handbook is part of the site, under handbook/.")
