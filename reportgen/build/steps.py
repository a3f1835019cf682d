"""The way of one campaign from its folder to its pages, in one table.

A step gets exactly what `reads` names and gives one thing under `gives`. The table is in order; running it is
`follow`. What is there before the first step: workspace, folder, in_reach, publication, language, site_texts, program,
kept; before the second table also others, what campaigns tested earlier came to; before the third also theme.

A step that is begun early runs beside the others, in a thread, from what is there before the first of its table; its
place in the table is where it is waited for.

In a process that compiles again a step is run anew only where something it reads has changed, and one that looks at the
disk only where a file has; so the author's texts, which change most often, go a way of their own.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from typing import Any, Literal

from reportgen.build import campaign_steps as do
from reportgen.build.meanwhile import meanwhile
from reportgen.build.memory import Memory

Made = Mapping[str, Any]  # what the steps made of one campaign, by the name the table gives it


@dataclass(frozen=True)
class Step:
    """`says` is its name in plain words, for who waits; `looks` says whether it looks at files, and at which:
    "everything" or "data", which is all but the words of texts. `early`: begun before all others of its table."""

    gives: str
    reads: tuple[str, ...]
    run: Callable[..., Any]
    says: str
    looks: Literal["", "everything", "data"] = ""
    early: bool = False


READ: tuple[Step, ...] = (
    Step("declared", ("workspace", "folder", "publication"), do.declare, "reading the declarations", "everything"),
    Step("samples", ("workspace",), do.open_samples, "making room for logger files", "data"),
    Step("measured", ("declared",), do.without_texts, "setting texts apart"),
    Step("readings", ("workspace", "measured", "samples"), do.read, "reading the measurements", "data"),
    Step("declared", ("declared", "readings"), do.take_along, "noting which instruments were used"),
    Step("measured", ("declared",), do.without_texts, "setting texts apart again"),
)

CHECKED: tuple[Step, ...] = (
    Step("history", ("measured", "others"), do.history, "looking at campaigns tested before"),
    Step(
        "evaluation",
        ("measured", "readings", "samples", "history", "language", "program", "kept"),
        do.evaluate,
        "working out results",
    ),
    Step("prose", ("declared", "evaluation", "site_texts"), do.check_prose, "following references"),
    Step("files", ("workspace", "declared"), do.files_of, "looking for what is unused", "data"),
    Step(
        "findings",
        ("declared", "readings", "evaluation", "publication", "files", "prose"),
        do.audit,
        "checking data, fairness and prose",
    ),
    Step("card", ("measured", "evaluation", "readings", "language"), do.card, "noting it in the archive"),
    Step("named", ("declared",), do.named, "looking up what texts name"),
)

SHOWN: tuple[Step, ...] = (
    Step("figures", ("measured", "evaluation", "language", "program", "kept"), do.draw, "drawing charts"),
    Step("raw_views", ("workspace", "readings", "evaluation"), do.view_raw_files, "opening the raw files", "data"),
    Step(
        "record",
        ("measured", "evaluation", "findings", "readings", "publication"),
        do.record,
        "writing results.json",
    ),
    Step("copied", ("workspace", "measured", "named", "readings", "files"), do.copied, "copying files", "data"),
    Step("passed_on", ("workspace", "measured", "copied", "readings"), do.pass_on, "taking checksums", "everything"),
    Step(
        "open_data",
        ("measured", "publication", "readings", "record", "passed_on", "program", "kept"),
        do.open_data,
        "making tables for others to take",
    ),
    Step(
        "told",
        (
            *("publication", "measured", "readings", "evaluation", "figures", "findings", "theme"),
            *("raw_views", "site_texts", "open_data"),
        ),
        do.gather,
        "putting pages together",
    ),
    Step("of_results", ("told",), do.pages_of_results, "writing pages"),
    Step("with_texts", ("told", "declared"), do.pages_with_texts, "writing pages with the author's texts"),
    Step("pages", ("of_results", "with_texts"), do.all_pages, "gathering pages"),
    Step("explored", ("told",), do.explored, "making charts ready to explore"),
    Step("preview", ("told", "program", "kept"), do.preview, "drawing the picture for shared links"),
    Step(
        "pictures",
        ("workspace", "measured", "named", "files", "program", "kept"),
        do.pictures,
        "making pictures",
        "data",
        early=True,
    ),
)


def follow(steps: tuple[Step, ...], begin: Made, tell: Callable[[str], None], memory: Memory) -> dict[str, Any]:
    """Run `steps` in order from what `begin` holds; everything made, by name. Raises what a step raises."""
    made = dict(begin)
    begun = {step.gives: meanwhile(partial(_run, step, begin, memory)) for step in steps if step.early}
    for step in steps:
        tell(step.says)
        made[step.gives] = begun[step.gives]() if step.early else _run(step, made, memory)
    return made


def _run(step: Step, made: Made, memory: Memory) -> Any:
    """What the step gives from what was made before it."""
    inputs = tuple(made[name] for name in step.reads)
    seen = getattr(made["in_reach"], step.looks) if step.looks else ""
    return memory.again(step.says, (*inputs, seen), partial(step.run, *inputs))
