"""How long a compile will still take, from how long each of its steps took last time.

What is left is what the steps still to come took last time, and of the running one what it took less what has passed;
all of it times how much slower (or faster) this compile has been so far than the last over the steps it has done. A
step that was never timed counts as nothing and makes the sum "at least"; where none was, nothing is said.
"""

from __future__ import annotations

import json
import time
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field, replace

from reportgen.build.progress import Progress, Tell
from reportgen.store.kept import Kept, get, key_of, put

ENOUGH = 0.5  # s of steps done, by last time's count, before this compile's pace is believed
SLOWEST, FASTEST = 4.0, 0.25  # a pace beyond these was something else: a cache that was there, a computer that slept


@dataclass
class Timing:
    """The clock of one compile. `plan` are its steps in order, `last` how many seconds each took last time."""

    plan: tuple[str, ...]
    last: Mapping[str, float]
    clock: Callable[[], float] = time.monotonic
    took: dict[str, float] = field(default_factory=dict)
    running: str = ""
    since: float = 0.0

    def begins(self, step: str) -> None:
        """The step that was running is over, and this one begins."""
        self.over()
        self.running, self.since = step, self.clock()

    def over(self) -> None:
        """Nothing is running any more."""
        if self.running:
            self.took[self.running] = self.took.get(self.running, 0.0) + self.clock() - self.since
        self.running = ""

    def left(self) -> tuple[float, bool] | None:
        """Seconds still to go, and whether that is only the least; None where nothing is known."""
        still = [step for step in self.plan if step not in self.took and step != self.running]
        if not any(step in self.last for step in self.plan):
            return None
        passed = self.clock() - self.since if self.running else 0.0
        now = max(self.last.get(self.running, 0.0) * self._pace() - passed, 0.0)
        ahead = sum(self.last.get(step, 0.0) for step in still) * self._pace()
        return now + ahead, any(step not in self.last for step in (*still, *filter(None, (self.running,))))

    def _pace(self) -> float:
        done = [step for step in self.took if step in self.last]
        before = sum(self.last[step] for step in done)
        if before < ENOUGH:
            return 1.0
        return min(max(sum(self.took[step] for step in done) / before, FASTEST), SLOWEST)

    def telling(self, tell: Tell) -> Tell:
        """`tell`, with every step timed and what is left told along."""

        def told(progress: Progress) -> None:
            self.begins(name_of(progress))
            left = self.left()
            tell(replace(progress, left=left[0], at_least=left[1]) if left else progress)

        return told


@contextmanager
def timed(kept: Kept, key: str, plan: tuple[str, ...], tell: Tell) -> Iterator[Tell]:
    """`tell`, with what is left told along; what each step took is kept under `key` once all of `plan` are over."""
    timing = Timing(plan, times(kept, key))
    yield timing.telling(tell)
    timing.over()
    keep(kept, key, timing.took)


def name_of(progress: Progress) -> str:
    """The name under which a step's time is kept."""
    return f"{progress.campaign}: {progress.step}"


def times(kept: Kept, key: str) -> Mapping[str, float]:
    """How long each step took last time; nothing where that isn't kept or can't be read."""
    try:
        told = json.loads(get(kept, _key(key)) or b"{}")
    except ValueError:
        return {}
    rows = told.items() if isinstance(told, dict) else ()
    return {name: took for name, took in rows if isinstance(took, float) and 0 <= took < float("inf")}


def keep(kept: Kept, key: str, took: Mapping[str, float]) -> None:
    """Keep them for next time."""
    put(kept, _key(key), json.dumps(dict(took)).encode())


def planned(tables: Iterable[tuple[Sequence[str], Sequence[str]]]) -> tuple[str, ...]:
    """The names of all steps in order: each table's steps for each campaign (or for the site: "")."""
    return tuple(
        name_of(Progress(step, folder))
        for folders, steps in tables
        for folder in tuple(folders)
        for step in tuple(steps)
    )


def _key(key: str) -> str:
    return key_of("pace", key)
