"""English, fourth part of its table: percentages and their base, and what is said of results hardly known."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

QUANTITIES: Mapping[str, str | Forms] = {
    "percent.of": "{name}: {said}",
    "percent.less": "{value} less than {other}",
    "percent.more": "{value} more than {other}",
    "percent.same": "as much as {other}",
    "percent.between.less": "{said} ({low} to {high} less)",
    "percent.between.more": "{said} ({low} to {high} more)",
    "percent.between.both": "{said} ({low} less to {high} more)",
}
