"""What an inspection looks for, and what it says when it finds it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Check:
    """One thing looked for: `sort` names it in a word or two; why it matters to a reader, and what mends it."""

    sort: str
    why: str
    do: str


@dataclass(frozen=True, order=True)
class Fault:
    """One thing wrong with a page. `page` from the site's root; `line` in its file, 0 where only the browser saw it."""

    page: str
    line: int
    sort: str
    says: str


@dataclass(frozen=True)
class Measured:
    """One page of its kind, loaded anew as a slow phone loads it and as paper takes it.

    `painted`: seconds until something is seen; `shift`: how far things moved by themselves (the score of Layout
    Instability, 0 where nothing moved); `bytes_loaded`: all that came, compressed as hosts send it; `requests`: how
    many files that was; `sheets`: of A4.
    """

    kind: str
    page: str
    painted: float
    shift: float
    bytes_loaded: int
    requests: int
    sheets: int


@dataclass(frozen=True)
class Inspected:
    """How many pages were opened, what was found, by page, and what was measured, by kind."""

    pages: int
    faults: tuple[Fault, ...]
    measured: tuple[Measured, ...] = ()
