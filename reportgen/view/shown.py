"""What stands now: the number of the last compile, what there is to say about it, where that belongs."""

from __future__ import annotations

import threading
from pathlib import Path
from typing import TYPE_CHECKING

from reportgen.build.progress import Built, Tell, quiet
from reportgen.finding import Finding, Place, Refused

if TYPE_CHECKING:
    from reportgen.build.memory import Standing
    from reportgen.pages.whereabouts import Whereabouts

PATIENCE = 20.0  # seconds a page's question waits for a change

Outcome = Built | Refused | Exception


class Shown:
    """What stands now, guarded. `where` is that of the last site that compiled."""

    def __init__(self) -> None:
        self._changed = threading.Condition()
        self._version = 0
        self._findings: tuple[Finding, ...] = ()
        self._where: Whereabouts | None = None

    def now(self) -> tuple[int, tuple[Finding, ...], Whereabouts | None]:
        """The last compile's number, what it says that isn't accepted, worst first, and where findings belong."""
        with self._changed:
            return self._version, self._findings, self._where

    def show(self, outcome: Outcome) -> None:
        """Take note of a compile, and wake every page that waits."""
        with self._changed:
            self._version += 1
            self._note(outcome)
            self._changed.notify_all()

    def know(self, outcome: Outcome) -> None:
        """Take note of a compile that changed nothing anybody sees."""
        with self._changed:
            self._note(outcome)

    def _note(self, outcome: Outcome) -> None:
        self._findings = findings_of(outcome)
        if isinstance(outcome, Built) and outcome.where is not None:
            self._where = outcome.where

    def after(self, seen: int, patience: float = PATIENCE) -> int:
        """The number of the last compile, as soon as it isn't `seen`, or after `patience` seconds."""
        with self._changed:
            self._changed.wait_for(lambda: self._version != seen, patience)
            return self._version


def findings_of(outcome: Outcome) -> tuple[Finding, ...]:
    """What there is to say about a compile that the author hasn't answered, errors first."""
    if isinstance(outcome, Built | Refused):
        told = (f for f in outcome.findings if not f.accepted)
        return tuple(sorted(told, key=lambda f: f.severity != "error"))
    says = f"reportgen itself failed: {type(outcome).__name__}: {outcome}"
    return (Finding("error", "fault", Place(""), says, do="See the terminal."),)


def says_the_same(before: Outcome, now: Outcome) -> bool:
    """Whether nobody who saw the one need be told of the other."""
    if isinstance(now, Built):
        return now.unchanged and isinstance(before, Built) and now.findings == before.findings
    return isinstance(now, Refused) and isinstance(before, Refused) and now.findings == before.findings


def compiled(path: Path, out: Path | None = None, tell: Tell = quiet, standing: Standing | None = None) -> Outcome:
    """One compile; what went wrong is given back, not raised, because the server goes on."""
    from reportgen.build.run import compile_site

    try:
        return compile_site(path, out, tell, standing)
    except Exception as error:  # whatever went wrong is shown, and the server goes on
        return error
