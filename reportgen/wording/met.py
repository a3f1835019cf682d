"""What the program met among the readings and must tell wherever it bears: facts in data, one sentence each."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from reportgen.wording.language import say, say_of


@dataclass(frozen=True)
class Met:
    """`code` names the sentence (`met.<code>` in a language's table), `gaps` fill it, in texts as the author typed them
    or printed by this room. `count` chooses among plural forms, None where the sentence has none."""

    code: str
    gaps: Mapping[str, str] = field(default_factory=dict)
    count: int | None = None


def met_says(met: Met) -> str:
    """The sentence."""
    if met.count is None:
        return say(f"met.{met.code}", **met.gaps)
    return say_of(met.count, f"met.{met.code}", **met.gaps)
