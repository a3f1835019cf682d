"""Short forms: one line that stands for a few keys."""

from __future__ import annotations

import re
from collections.abc import Mapping

from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.campaign.kinds import KINDS, LATER_KINDS
from reportgen.campaign.shape import NotThat

BETTER = ("lower", "higher", "neither")


def measure(text: str) -> Mapping[str, str]:
    """`weighed before and after, g, lower, bench-scale` in any order → kind, unit, better, instrument.

    What is neither a kind nor a direction is the unit where it comes first, the instrument after that; two words
    with a hyphen are an instrument wherever they stand. Where an instrument's name is plain (`timed, stopwatch, s`),
    the loader, which knows the instruments, puts the two right.
    """
    found: dict[str, str] = {}
    rest: list[str] = []
    for piece in _pieces(text):
        if piece in KINDS or piece in LATER_KINDS:
            _put(found, "kind", piece)
        elif piece in BETTER:
            _put(found, "better", piece)
        else:
            rest.append(piece)
    if "kind" not in found:
        raise NotThat(f"“{text}” names no kind of measurement", did_you_mean(_pieces(text)[0], KINDS))
    for piece in rest:
        looks_like_instrument = re.search(r"[A-Za-z]{3,}-[A-Za-z]{3,}", piece) is not None or "unit" in found
        _put(found, "instrument" if looks_like_instrument else "unit", piece)
    return found


def _pieces(text: str) -> list[str]:
    pieces = [re.sub(r"\s+", " ", p).strip() for p in text.split(",")]
    if not all(pieces):
        raise NotThat(f"“{text}” has a comma with nothing beside it")
    return pieces


def _put(found: dict[str, str], key: str, piece: str) -> None:
    if key in found:
        raise NotThat(
            f"“{piece}” is one piece too many: the {key} is already “{found[key]}”",
            "A line holds one kind, one unit, one direction and one instrument, with commas between.",
        )
    found[key] = piece
