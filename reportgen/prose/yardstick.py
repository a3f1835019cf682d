"""What a gap was held against, in words: "four passes each", "the scatter stated for the method"."""

from __future__ import annotations

from reportgen.prose.standing import Standing
from reportgen.wording.count import in_words
from reportgen.wording.language import say, say_of


def yardstick(s: Standing, contenders: tuple[str, ...]) -> str:
    """What set the width that these contenders' gaps were held against."""
    origin = s.scatter.origin if s.scatter else "passes"
    if origin in ("declared", "both"):
        past = s.scatter is not None and s.scatter.declared_by == "past campaigns"
        return say(f"yardstick.{origin}.past" if past else f"yardstick.{origin}")
    if several_specimens(s):
        return say("yardstick.specimens")
    passes = {s.result(c).passes for c in contenders}
    if len(passes) != 1:
        return say("yardstick.uneven")
    (n,) = passes
    return say_of(n, "yardstick.passes", count=in_words(n))


def several_specimens(s: Standing) -> bool:
    """Was some contender bought more than once, so that specimens were compared and not passes?"""
    return any(r.by_specimens for r in s.results)


def ran_once(s: Standing) -> bool:
    """Whether no ranked contender has more than one pass."""
    return all(r.passes <= 1 for r in s.ranked)


def how_often(s: Standing) -> str:
    """ "One reading each", "each ran once", or that the passes are too few."""
    if not ran_once(s):
        return say("first.too-few")
    if s.quantity.kind == "laboratory":
        return say("first.ran-once.sample")
    reading = s.quantity.kind in ("one reading", "level", "peak", "count", "yes/no", "grade") and not s.part
    return say("first.ran-once.reading" if reading else "first.ran-once")


def scatter_unknown(s: Standing) -> bool:
    """Whether nothing says how far a repeat would differ, so that only these runs can be spoken of."""
    if s.first is not None and s.first.reason.code == "no-scatter-known":
        return True
    return s.scatter is not None and s.scatter.origin == "none"
