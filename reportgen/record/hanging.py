"""What first place hangs on, in the record."""

from __future__ import annotations

from typing import Any

from reportgen.evaluation.hanging import HangsOn


def hanging_row(found: HangsOn) -> dict[str, Any]:
    """`passes` and `contenders`: those without which `winner`, who would then be alone in first place, is another than
    now, or nobody; `tried` passes were left out in turn. `back`: each exclusion with its passes back, and whether any
    rank moves. `evened`: had each contender only its first so many passes.
    """
    return {
        "winner": found.winner,
        "tried": found.tried,
        "passes": [
            {"contender": p.contender, "specimen": p.specimen, "pass": p.pass_, "part": p.part or None,
             "winner": p.winner}
            for p in found.passes
        ],
        "contenders": [{"contender": c.contender, "winner": c.winner} for c in found.contenders],
        "back": [
            {"exclusion": b.exclusion, "contenders": list(b.contenders), "winner": b.winner, "moves": b.moves}
            for b in found.back
        ],
        "evened": {"passes": found.evened.passes, "winner": found.evened.winner} if found.evened else None,
    }  # fmt: skip
