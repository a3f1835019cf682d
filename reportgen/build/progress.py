"""What a build says while it works, and what it has made."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from reportgen.finding import Finding


@dataclass(frozen=True)
class Progress:
    """`step` in plain words; `campaign` is a folder; `done` of `of` campaigns are through it (`of` 0: the site)."""

    step: str
    campaign: str = ""
    done: int = 0
    of: int = 0


Tell = Callable[[Progress], None]


def quiet(progress: Progress) -> None:
    """Says nothing."""


@dataclass(frozen=True)
class Built:
    """A finished compile. Counts of campaigns and pages; `unchanged`: the site already stood as it should."""

    findings: tuple[Finding, ...]
    campaigns: int
    pages: int
    out: Path
    unchanged: bool = False
