"""What first place hangs on: who would be alone in it, had a pass, contender or exclusion been otherwise. Frozen."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class WithoutPass:
    """Who would be alone in first place without this one pass; None: nobody."""

    contender: str
    specimen: str
    pass_: str
    part: str
    winner: str | None


@dataclass(frozen=True)
class WithoutContender:
    """Who would be alone in first place without this contender, which isn't in the running for it itself."""

    contender: str
    winner: str | None


@dataclass(frozen=True)
class WithBack:
    """What one exclusion did: who would be alone in first place with its passes back, and whether any rank moves."""

    exclusion: str  # its id
    contenders: tuple[str, ...]
    winner: str | None
    moves: bool


@dataclass(frozen=True)
class Evened:
    """Who would be alone in first place, had each contender only its first `passes` passes."""

    passes: int
    winner: str | None


@dataclass(frozen=True)
class HangsOn:
    """One quantity judged again, each time with one thing otherwise. `winner`: who is alone in first place now.

    `passes` and `contenders` hold only those without which the winner would be another or nobody; `tried` passes were
    left out in turn. `back` has every exclusion that left something out. `evened` is None where all had as many passes
    or some had only one.
    """

    winner: str | None
    tried: int
    passes: tuple[WithoutPass, ...] = ()
    contenders: tuple[WithoutContender, ...] = ()
    back: tuple[WithBack, ...] = ()
    evened: Evened | None = None

    @property
    def lone_pass(self) -> WithoutPass | None:
        """The one pass that decides who is alone in first place; None where none does, or several do."""
        return self.passes[0] if len(self.passes) == 1 else None
