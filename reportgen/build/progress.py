"""What a build says while it works, and what it has made."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from reportgen.finding import Finding

if TYPE_CHECKING:
    from reportgen.pages.whereabouts import Whereabouts


@dataclass(frozen=True)
class Progress:
    """`step` in plain words; `campaign` is a folder; `done` of `of` campaigns are through it (`of` 0: the site).

    `left`: seconds still to go, by how long steps took last time, and by `at_least` only the least; None: not known.
    """

    step: str
    campaign: str = ""
    done: int = 0
    of: int = 0
    left: float | None = None
    at_least: bool = False


Tell = Callable[[Progress], None]


def quiet(progress: Progress) -> None:
    """Says nothing."""


@dataclass(frozen=True)
class Built:
    """A finished compile. Counts of campaigns and pages; `unchanged`: the site already stood as it should.

    `where` tells where findings belong on the site, to a process that asked for it by compiling again.
    """

    findings: tuple[Finding, ...]
    campaigns: int
    pages: int
    out: Path
    unchanged: bool = False
    where: Whereabouts | None = None
