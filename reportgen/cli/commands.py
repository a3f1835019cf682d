"""The commands in one table. A command's module is loaded when the command is called for, and not before."""

from __future__ import annotations

import importlib
from collections.abc import Mapping

import click

import reportgen

COMMANDS: Mapping[str, str] = {
    "begin": "Start a campaign that compiles as it stands.",
    "audit": "Check data, fairness and prose, and say what would mend it.",
    "compile": "Build the site.",
    "view": "Build the site, show it here and follow every change.",
    "inspect": "Open every page of a site in a headless browser and check it.",
}

EXAMPLES = """\b
Examples:
  reportgen begin stoves
  reportgen compile stoves --out site
  reportgen view"""


class Commands(click.Group):
    """A group that knows its commands by name and loads one only to run it."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Their names, in the order one uses them."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """The command itself, loaded now."""
        if cmd_name not in COMMANDS:
            return None
        command = getattr(importlib.import_module(f"reportgen.cli.{cmd_name}"), cmd_name)
        assert isinstance(command, click.Command)
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """The list under `--help`, from the table alone."""
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


@click.group(
    cls=Commands,
    epilog=EXAMPLES,
    context_settings={"help_option_names": ["--help", "-h"], "max_content_width": 100},
)
@click.version_option(reportgen.__version__, message="%(prog)s %(version)s")
def commands() -> None:
    """Compile test campaigns and their raw readings into a site that a sceptic can check."""
