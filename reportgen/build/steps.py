"""The way of one campaign from its folder to its pages, in one table.

A step gets exactly what `reads` names and gives one thing under `gives`. The table is in order; running it is
`follow`. What is there before the first step: workspace, folder, publication, site_texts, program, kept; before the
second table also others, what campaigns tested earlier came to; before the third also theme.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from reportgen.build import campaign_steps as do


@dataclass(frozen=True)
class Step:
    """`says` is its name in plain words, for who waits."""

    gives: str
    reads: tuple[str, ...]
    run: Callable[..., Any]
    says: str


READ: tuple[Step, ...] = (
    Step("declared", ("workspace", "folder", "publication"), do.declare, "reading the declarations"),
    Step("samples", ("workspace",), do.open_samples, "making room for logger files"),
    Step("readings", ("workspace", "declared", "samples"), do.read, "reading the measurements"),
    Step("declared", ("declared", "readings"), do.take_along, "noting which instruments were used"),
)

CHECKED: tuple[Step, ...] = (
    Step("history", ("declared", "others"), do.history, "looking at campaigns tested before"),
    Step(
        "evaluation",
        ("declared", "readings", "samples", "history", "program", "kept"),
        do.evaluate,
        "working out results",
    ),
    Step("prose", ("declared", "evaluation", "site_texts"), do.check_prose, "following references"),
    Step("files", ("workspace", "declared"), do.files_of, "looking for what is unused"),
    Step(
        "findings",
        ("declared", "readings", "evaluation", "publication", "files", "prose"),
        do.audit,
        "checking data, fairness and prose",
    ),
    Step("card", ("declared", "evaluation"), do.card, "noting it in the archive"),
)

SHOWN: tuple[Step, ...] = (
    Step("figures", ("declared", "evaluation", "program", "kept"), do.draw, "drawing charts"),
    Step("raw_views", ("workspace", "readings", "evaluation"), do.view_raw_files, "opening the raw files"),
    Step(
        "told",
        (
            *("publication", "declared", "readings", "evaluation", "figures", "findings", "theme"),
            *("raw_views", "site_texts"),
        ),
        do.gather,
        "putting pages together",
    ),
    Step("pages", ("told",), do.build_pages, "writing pages"),
    Step("record", ("declared", "evaluation", "findings", "readings"), do.record, "writing results.json"),
    Step("copied", ("workspace", "declared", "readings", "files"), do.copied, "copying files"),
    Step("pictures", ("workspace", "declared", "files", "program", "kept"), do.pictures, "making pictures"),
)


def follow(steps: tuple[Step, ...], begin: Mapping[str, Any], tell: Callable[[str], None]) -> dict[str, Any]:
    """Run `steps` in order from what `begin` holds; everything made, by name. Raises what a step raises."""
    made = dict(begin)
    for step in steps:
        tell(step.says)
        made[step.gives] = step.run(*(made[name] for name in step.reads))
    return made
