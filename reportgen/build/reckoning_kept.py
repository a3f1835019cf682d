"""What draws and exact quantiles found, as it is kept: worked out once for what it came from, told again from JSON.

One entry a campaign and program; in it each number stands under the digest of all that it depends on. What a compile
didn't ask for is let go when something new is kept.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from reportgen.store.kept import Kept, get, key_of, put

if TYPE_CHECKING:
    from reportgen.campaign.declared import Declared
    from reportgen.evaluation.evaluated import Evaluation
    from reportgen.evaluation.history import History
    from reportgen.evaluation.traces_read import Pieces
    from reportgen.intake import Readings
    from reportgen.judgement.drawn.found import Figures


@dataclass
class _Book:
    """`before`: what was kept; `asked`: what is asked for now, from there or found anew."""

    before: Mapping[str, Figures]
    asked: dict[str, Figures] = field(default_factory=dict)

    def keep(self, made_of: str, work: Callable[[], Figures], fits: Callable[[Figures], bool]) -> Figures:
        """A `judgement.found.Keep`."""
        found = self.asked.get(made_of, self.before.get(made_of))
        if found is None or not fits(found):
            found = work()
        self.asked[made_of] = found
        return found


def evaluation(
    declared: Declared,
    readings: Readings,
    pieces: Pieces,
    program: str,
    kept: Kept,
    history: History | None = None,
) -> Evaluation:
    """The campaign worked out; nothing is drawn, no quantile looked for, that was before. Raises `Refused`.

    `program` is the digest of the code and its libraries; `history` what earlier campaigns tell. What is kept stands
    under the digest of the sums it came from, and a scatter from history is in them: another history finds other keys.
    """
    from reportgen.evaluation.evaluate import evaluate
    from reportgen.evaluation.history import NO_HISTORY
    from reportgen.judgement.reach.remembered import remembering

    key = key_of("reckoning", program, declared.campaign.id)
    draws, numbers = _told(get(kept, key))
    book = _Book(draws)
    with remembering(numbers) as asked:
        found = evaluate(declared, readings, pieces, book.keep, history or NO_HISTORY)
    if book.asked != draws or asked != numbers:
        told = {"draws": book.asked, "numbers": asked}
        put(kept, key, json.dumps(told, separators=(",", ":")).encode())
    return found


def _told(data: bytes | None) -> tuple[dict[str, Figures], dict[str, float]]:
    """Rows that are what they should be; the others are as if they had never been kept."""
    try:
        told = json.loads(data) if data else None
    except ValueError:
        return {}, {}
    return (
        {name: tuple(row) for name, row in _rows(told, "draws") if isinstance(row, list) and all(map(_is_float, row))},
        {name: number for name, number in _rows(told, "numbers") if _is_float(number)},
    )


def _rows(told: Any, under: str) -> list[tuple[str, Any]]:
    rows = told.get(under) if isinstance(told, dict) else None
    return list(rows.items()) if isinstance(rows, dict) else []


def _is_float(value: Any) -> bool:
    return type(value) is float
