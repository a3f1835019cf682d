"""What the steps of a compile gave, kept in a process that compiles again.

A step whose inputs are what they were isn't run: it gives what it gave. One that looks at the disk is given the digest
of the files it could see as one more input. What comes out equal is taken for the very thing that came out before, so
that later steps need not look into it. Nothing here outlives the process.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable
from dataclasses import dataclass, field
from typing import Any


@dataclass
class Memory:
    """Of each piece of work, by name, what it was given and what it gave."""

    last: dict[str, tuple[tuple[Any, ...], Any]] = field(default_factory=dict)

    def again(self, name: str, given: tuple[Any, ...], work: Callable[[], Any]) -> Any:
        """What `work` gives, or gave for the same `given`. What it raises is not kept."""
        before = self.last.get(name)
        if before is not None and same(before[0], given):
            return before[1]
        made = work()
        if before is not None and same(before[1], made):
            made = before[1]
        self.last[name] = (given, made)
        return made


@dataclass
class Standing:
    """What a process remembers of a workspace between compiles: a memory a campaign, and one of the site as a whole.

    `ground` is what everything rests on (program, settings, theme, language): another ground, and all is forgotten.
    """

    ground: Hashable = None
    campaigns: dict[str, Memory] = field(default_factory=dict)
    site: Memory = field(default_factory=Memory)

    def on(self, ground: Hashable) -> None:
        """Stand on `ground`."""
        if ground != self.ground:
            self.ground, self.campaigns, self.site = ground, {}, Memory()

    def of(self, folder: str) -> Memory:
        """The memory of the campaign in `folder`."""
        return self.campaigns.setdefault(folder, Memory())


def same(one: Any, other: Any) -> bool:
    """Whether two pieces of data are alike; what can't be compared isn't."""
    if one is other:
        return True
    try:
        return type(one) is type(other) and bool(one == other)
    except (ValueError, TypeError, RecursionError):
        return False
