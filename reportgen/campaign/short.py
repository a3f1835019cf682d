"""Short forms: one line that stands for a few keys."""

from __future__ import annotations

import re
from collections.abc import Mapping

from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.campaign.frame_rates import FRAMES_A_SECOND
from reportgen.campaign.kinds import KINDS
from reportgen.campaign.scalar import NUMBER
from reportgen.campaign.shape import NotThat

BETTER = ("lower", "higher", "neither")
_ONE_OF_EACH = "A line holds one kind, one unit, one direction and one instrument, with commas between."
_PIECE = r"[^,\n]*[^,\s][^,\n]*"
_KIND = "|".join(KINDS)

COUNT_OF, COUNT_IN = "count of ", "in "
PAST = "past campaigns"
PAST_PATTERN = rf"^\s*{PAST}\s*$"

MEASURE_PATTERN = rf"^(?:{_PIECE},)*\s*(?:{_KIND}|{COUNT_OF}{_PIECE})\s*(?:,{_PIECE})*$"
WHERE_PATTERN = rf"^{_PIECE}(?:,{_PIECE}){{0,4}}$"
COLUMN_PATTERN = rf"^{_PIECE}(?:,{_PIECE}){{0,2}}$"
INSTRUMENT_PATTERN = rf"^\s*(?:{NUMBER}|up to |from |by hand|accuracy |class |[±+]|\+-)[^\n]*$"


def measure(text: str) -> Mapping[str, str]:
    """`weighed before and after, g, lower, bench-scale` in any order → kind, unit, better, instrument.

    What is neither a kind nor a direction is the unit where it comes first, the instrument after that; two words
    with a hyphen are an instrument wherever they stand. Where an instrument's name is plain (`timed, stopwatch, s`),
    the loader, which knows the instruments, puts the two right.
    """
    found: dict[str, str] = {}
    others: list[str] = []
    for piece in _pieces(text):
        if piece in KINDS:
            _put(found, "kind", piece)
        elif piece in BETTER:
            _put(found, "better", piece)
        elif piece.startswith(COUNT_OF):
            _put(found, "kind", "count")
            found["count of"] = piece.removeprefix(COUNT_OF)
        elif "count of" in found and piece.startswith(COUNT_IN):
            _put(found, "in", piece.removeprefix(COUNT_IN))
        else:
            others.append(piece)
    if "kind" not in found:
        raise NotThat(f"“{text.strip()}” names no kind of measurement", did_you_mean(_pieces(text)[0], KINDS))
    return _unit_and_instrument(found, others)


def column(text: str) -> Mapping[str, str]:
    """`canister before, g, bench-scale` → column, unit, instrument; the heading comes first."""
    heading, *others = _pieces(text)
    return _unit_and_instrument({"column": heading}, others)


def instrument(text: str) -> Mapping[str, str]:
    """`0.1 dB, up to 130 dB, accuracy ±1.5 dB`, `0.01 s, by hand`, `60000/1001 frames a second`, in any order."""
    found: dict[str, str] = {}
    if comma := re.search(r"\bclass \d+,\d+", text):
        do = f"Write a decimal point: {comma[0].replace(',', '.')}."
        raise NotThat(f"“{comma[0]}” has a comma in a number", do)
    for piece in _pieces(text):
        if piece == "by hand":
            _put(found, "by hand", "yes")
        elif re.fullmatch(FRAMES_A_SECOND, piece):
            _put(found, "frames", piece)
        elif re.match(r"±|\+/?-|class ", piece):
            _put(found, "accuracy", piece)
        elif piece.startswith("accuracy "):
            _put(found, "accuracy", piece.removeprefix("accuracy "))
        elif piece.startswith(("up to ", "from ")) or " to " in piece:
            _put(found, "range", piece)
        elif piece.startswith("reaction "):
            _put(found, "reaction", piece.removeprefix("reaction "))
        elif piece.startswith("clock "):
            _put(found, "clock", piece.removeprefix("clock "))
        elif piece.startswith("shared "):
            _put(found, "shared", piece.removeprefix("shared "))
        elif re.match(NUMBER, piece):
            _put(found, "resolution", piece)
        else:
            raise NotThat(f"“{piece}” is neither a resolution, a range nor an accuracy")
    return found


def where(text: str) -> Mapping[str, str]:
    """`ostler, pass 2, canister after` → contender, pass, reading; `part` and `specimen` are written like `pass`."""
    found: dict[str, str] = {}
    for piece in _pieces(text):
        role, _, rest = piece.partition(" ")
        if role in ("pass", "part", "specimen") and rest:
            _put(found, role, rest)
        elif "contender" not in found:
            found["contender"] = piece
        else:
            _put(found, "reading", piece)
    return found


def past_campaigns(text: str) -> Mapping[str, str]:
    """`past campaigns`, and nothing else in one line."""
    if text.strip() != PAST:
        raise NotThat(f"“{text.strip()}” is no repeatability", f"Write `{PAST}`, or a quantity and a figure below it.")
    return {PAST: "yes"}


def which(text: str) -> Mapping[str, str]:
    """The same, where a reading and whose it is must be named."""
    found = where(text)
    if "contender" not in found or "reading" not in found:
        raise NotThat(f"“{text.strip()}” doesn't name both a contender and the heading of a reading")
    return found


def source(text: str) -> Mapping[str, str]:
    """One line is a file, `raw/day.xlsx, sheet Bench` one sheet of it, a name with braces a logger's files; several
    lines are the table itself."""
    if "\n" in text.strip():
        return {"table": text}
    if re.search(r"\{[^{}]*\}", text):
        return {"logger": text.strip()}
    sheet = re.fullmatch(r"(?P<file>.+\.(?:xlsx|xlsm|ods))\s*,\s*sheet\s+(?P<sheet>\S.*)", text.strip(), re.IGNORECASE)
    return {"file": sheet["file"], "sheet": sheet["sheet"]} if sheet else {"file": text.strip()}


def _unit_and_instrument(found: dict[str, str], others: list[str]) -> dict[str, str]:
    for piece in others:
        looks_like_instrument = re.search(r"[A-Za-z]{3,}-[A-Za-z]{3,}", piece) is not None
        _put(found, "instrument" if looks_like_instrument or "unit" in found else "unit", piece)
    return found


def _pieces(text: str) -> list[str]:
    pieces = [re.sub(r"\s+", " ", p).strip() for p in text.split(",")]
    if not all(pieces):
        raise NotThat(f"“{text.strip()}” has a comma with nothing beside it")
    return pieces


def _put(found: dict[str, str], key: str, piece: str) -> None:
    if key in found:
        named = "direction" if key == "better" else key
        raise NotThat(f"“{piece}” is one piece too many: the {named} is already “{found[key]}”", _ONE_OF_EACH)
    found[key] = piece
