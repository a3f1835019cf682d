"""What someone who waits at a terminal sees: one line, written anew at each step and each second; nothing in a pipe."""

from __future__ import annotations

import os
import shutil
import sys
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import TextIO

from reportgen.build.progress import Progress, Tell

CLEAR = "\r\x1b[K"
TICK = 1.0  # s
MINUTE = 60.0  # s


def line_on_a_terminal() -> Callable[[str], None]:
    """One line that each call writes anew where someone is looking; silence in a pipe."""
    stream = sys.stderr
    if not _looked_at(stream):
        return lambda text: None

    def write(text: str) -> None:
        stream.write(f"{CLEAR}{text[: shutil.get_terminal_size().columns - 1]}")
        stream.flush()

    return write


def progress_on_a_terminal() -> Tell:
    """The steps of a build on one such line, with how long it will still take."""
    if not _looked_at(sys.stderr):
        return lambda progress: None
    return _LINE.tell


def progress_over() -> None:
    """Clear the line, so that what is printed next begins on it."""
    _LINE.end()
    line_on_a_terminal()("")


def told(progress: Progress, waited: float = 0.0) -> str:
    """The line `waited` seconds after a step began."""
    campaign = f"{progress.campaign or 'campaign'} ({progress.done + 1} of {progress.of}): " if progress.of else ""
    left = "" if progress.left is None else f" {still(progress.left - waited, progress.at_least)}"
    return f"{campaign}{progress.step} …{left}"


def still(seconds: float, at_least: bool = False) -> str:
    """How long still, in figures no finer than they are known: "about 8 s left", "about 2 min left"."""
    if seconds <= 0:
        return "longer than last time"
    about = "at least" if at_least else "about"
    if seconds <= MINUTE:
        step = 1 if seconds <= 10 else 5
        return f"{about} {_up(seconds, step)} s left"
    return f"{about} {_up(seconds / MINUTE, 1)} min left"


def _up(number: float, step: int) -> int:
    return -int(-number // step) * step


def _looked_at(stream: TextIO) -> bool:
    return stream.isatty() and os.environ.get("TERM") != "dumb"


@dataclass
class _Line:
    """The line and the clock that keeps it true between steps."""

    guard: threading.Lock = field(default_factory=threading.Lock)
    progress: Progress | None = None
    since: float = 0.0
    clock: threading.Thread | None = None
    ended: threading.Event = field(default_factory=threading.Event)

    def tell(self, progress: Progress) -> None:
        with self.guard:
            self.progress, self.since = progress, time.monotonic()
            self._write()
            if self.clock is None:
                self.ended = threading.Event()
                self.clock = threading.Thread(target=self._tick, args=(self.ended,), daemon=True)
                self.clock.start()

    def end(self) -> None:
        with self.guard:
            self.progress, self.clock = None, None
            self.ended.set()

    def _tick(self, ended: threading.Event) -> None:
        while not ended.wait(TICK):
            with self.guard:
                self._write()

    def _write(self) -> None:
        if self.progress is not None:
            line_on_a_terminal()(told(self.progress, time.monotonic() - self.since))


_LINE = _Line()
