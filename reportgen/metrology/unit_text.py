"""A unit as people write it → its atoms with their powers: `mm/s²` is mm to 1 and s to −2.

ISO 80000-1, 7.2: after a solidus comes one unit, or several in brackets; `J/kg·K` is refused rather than guessed.
Powers are written ², ^2, **2 or, as many do, just 2 (`m3/h`).
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from reportgen.metrology.errors import UnitError

Atoms = tuple[tuple[str, Fraction], ...]

LONGEST = 80
HIGHEST_POWER = 12
EXAMPLES = "write a unit such as g, s, °C, lbf, dB or %"
_RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻⁺", "0123456789-+")
_LOWERED = str.maketrans("0123456789-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻")
_TWO_WORDS = (
    (re.compile(r"\b[Uu][Ss] fl\.? ?oz\b\.?|\bfl\.? ?oz\b\.?"), "fl_oz"),
    (re.compile(r"\bsq\.? ?(ft|in|mi|yd|m)\b"), r"\1^2"),
    (re.compile(r"\bcu\.? ?(ft|in|yd|m)\b"), r"\1^3"),
    (re.compile(r"\bUS (gal|pt|qt|cup)\b"), r"\1"),
    (re.compile(r"% ?[Rr]\.?[Hh]\b\.?"), "%"),
    (re.compile(r"\bdB ?SPL\b"), "dB"),
    (re.compile(r"\b(in|ft|yd|mi|lb|lbs|oz|qt|pt|gal|min|sec|hr|hrs)\.(?=\s|$)"), r"\1"),
    (re.compile(r"\bin ?Hg\b"), "inHg"),
    (re.compile(r"\bmm ?Hg\b"), "mmHg"),
    (re.compile(r"\bdeg(?:rees?)? ([CF])\b"), r"°\1"),
    (re.compile(r"° ([CF])\b"), r"°\1"),
    (re.compile(r"\bdB ([ACZ])\b"), r"dB(\1)"),
    (re.compile(r"\bN\.?m\b"), "N·m"),
    (re.compile(r"\bcc\b"), "cm^3"),
    (re.compile(r"\s+per\s+"), "/"),
)
_TOKEN = re.compile(
    r"""\s*(?:
      (?P<number>\d+(?:\.\d+)?)
    | (?P<atom>dB\([ACZ]\) | Δ?°?[^\W\d⁰¹²³⁴-⁹]+ | [%‰€£¥$] | °)
      (?P<power>\s*(?:\^|\*\*)\s*(?:[-+]?\d+|\(\s*[-+]?\d+\s*(?:/\s*\d+)?\s*\)) | [-+]?\d+ | [⁻⁺]?[⁰¹²³⁴-⁹]+)?
    | (?P<open>\()
    | (?P<close>\)\s*(?P<outer>\s*(?:\^|\*\*)\s*(?:[-+]?\d+|\(\s*[-+]?\d+\s*(?:/\s*\d+)?\s*\)) | [⁻⁺]?[⁰¹²³⁴-⁹]+)?)
    | (?P<times>[·*×.⋅])
    | (?P<over>/|÷)
    )""",
    re.VERBOSE,
)


@dataclass(frozen=True)
class _Token:
    sort: str
    text: str
    power: Fraction = Fraction(1)


def read_atoms(text: str) -> Atoms:
    """The atoms of a written unit in the order written, equal ones merged. Raises UnitError."""
    if len(text) > LONGEST:
        raise UnitError(f"a unit of {len(text)} characters", f"units have at most {LONGEST}")
    tidy = unicodedata.normalize("NFC", text).strip().replace("μ", "µ").replace("−", "-")
    tidy = tidy.replace("Ω", "Ω").replace("℃", "°C").replace("℉", "°F").replace("º", "°")
    for pattern, plain in _TWO_WORDS:
        tidy = pattern.sub(plain, tidy)
    atoms, rest = _product(_tokens(tidy, text), text, 0)
    if rest:
        raise UnitError(f"“{text}” closes a bracket that it never opened", "take it out, or open it before: J/(kg·K)")
    return merged(atoms)


def merged(atoms: Iterable[tuple[str, Fraction]]) -> Atoms:
    """Powers of equal atoms added up, in the order they first stand; those that cancel are gone."""
    powers: dict[str, Fraction] = {}
    for atom, power in atoms:
        powers[atom] = powers.get(atom, Fraction(0)) + power
    return tuple((atom, power) for atom, power in powers.items() if power)


def write_atoms(atoms: Atoms) -> str:
    """The symbol of a product of atoms, as ISO 80000-1 sets it: `J/(kg·K)`, `1/min`, `m/s²`."""
    above = [_raised(atom, power) for atom, power in atoms if power > 0]
    below = [_raised(atom, -power) for atom, power in atoms if power < 0]
    if not below:
        return "·".join(above)
    bottom = below[0] if len(below) == 1 and (" " not in below[0] or below[0][0] == "(") else f"({'·'.join(below)})"
    return f"{'·'.join(above) or '1'}/{bottom}"


def _raised(atom: str, power: Fraction) -> str:
    if power == 1:
        return atom
    if " " in atom:
        atom = f"({atom})"
    if power.denominator == 1:
        return atom + str(power).translate(_LOWERED)
    return f"{atom}^({power})"


def _power(text: str | None) -> Fraction:
    if not text:
        return Fraction(1)
    plain = re.sub(r"[\^*()\s]", "", text.translate(_RAISED))
    above, _, below = plain.partition("/")
    if len(plain) > 8 or abs(int(above)) > HIGHEST_POWER or (below and not 0 < int(below) <= HIGHEST_POWER):
        raise UnitError(f"a power of {plain}", f"powers of units go up to {HIGHEST_POWER}")
    return Fraction(int(above), int(below or 1))


def _tokens(tidy: str, text: str) -> list[_Token]:
    tokens: list[_Token] = []
    at = 0
    while at < len(tidy):
        match = _TOKEN.match(tidy, at)
        if not match:
            raise UnitError(f"“{text}” can't be read as a unit: {tidy[at:].strip()[:1]!r} has no place", EXAMPLES)
        at = match.end()
        sort = match.lastgroup or ""
        if match["atom"]:
            tokens.append(_Token("atom", match["atom"], _power(match["power"])))
        elif match["close"]:
            tokens.append(_Token("close", ")", _power(match["outer"])))
        else:
            tokens.append(_Token(sort, match[sort]))
    tokens.reverse()  # taken from the end
    return tokens


def _product(tokens: list[_Token], text: str, depth: int) -> tuple[list[tuple[str, Fraction]], list[_Token]]:
    if depth > 5:
        raise UnitError(f"“{text}” has too many brackets", "write it with fewer: J/(kg·K)")
    atoms = _factor(tokens, text, depth)
    divided = False
    while tokens and tokens[-1].sort != "close":
        token = tokens[-1]
        over = token.sort == "over"
        if token.sort in ("times", "over"):
            tokens.pop()
        if divided and not over:
            raise UnitError(
                f"“{text}” can be read two ways", "after a stroke put several units in brackets, such as J/(kg·K)"
            )
        divided = divided or over
        atoms += [(atom, -power if over else power) for atom, power in _factor(tokens, text, depth)]
    return atoms, tokens


def _factor(tokens: list[_Token], text: str, depth: int) -> list[tuple[str, Fraction]]:
    if not tokens:
        raise UnitError(f"“{text}” stops in the middle", "write what comes behind, or take the last sign out: g/s")
    token = tokens.pop()
    if token.sort == "atom":
        return [(token.text, token.power)]
    if token.sort == "open":
        inner, rest = _product(tokens, text, depth + 1)
        if not rest:
            raise UnitError(f"“{text}” opens a bracket and never closes it", "close it: J/(kg·K)")
        outer = rest.pop().power
        return [(atom, power * outer) for atom, power in inner]
    if token.sort == "number":
        if tokens and tokens[-1].sort == "atom":
            after = tokens.pop()
            if token.text == "1":
                return [(after.text, after.power)]
            if after.power != 1 or float(token.text) == 0:
                raise UnitError(
                    f"“{text}” has a number for a unit", "write a number only with a plain unit: L/(100 km)"
                )
            return [(f"{token.text} {after.text}", after.power)]
        if token.text == "1":
            return []
        raise UnitError(f"“{text}” has a number for a unit", "write units and whole powers alone: m^2, 1/s")
    raise UnitError(f"“{text}” can't be read as a unit", EXAMPLES)
