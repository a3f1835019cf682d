"""Options that several commands share."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import click

path_argument = click.argument(
    "path", type=click.Path(path_type=Path, exists=True, file_okay=False), default=".", metavar="[PATH]"
)
json_option = click.option("as_json", "--json", is_flag=True, help="Print it as JSON, for machines.")


def print_json(told: Any) -> None:
    """`told` on standard output, readable and stable."""
    click.echo(json.dumps(told, indent=1, ensure_ascii=False))
