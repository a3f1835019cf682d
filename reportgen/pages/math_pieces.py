"""Pieces of a formula set as mathematics, and how a formula of levels is made of them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from reportgen.pages.words import words

MINUS, TIMES = "\u2212", "×"
LG = "10\u2009lg"
TENTH = "0.1"  # of a decibel's number: the exponent of ten


@dataclass(frozen=True)
class Math:
    """A piece of a formula: a `name`, `value`, `number` or `sign` with its `text`, or what holds others.

    `figure` is a value's number alone. No links stand in it: to a screen reader a formula is one thing.
    """

    sort: Literal["name", "value", "number", "sign", "function", "row", "fraction", "power", "root"]
    text: str = ""
    inside: tuple[Math, ...] = ()
    figure: str = ""


def row(*pieces: Math) -> Math:
    """Pieces side by side; a row within them is taken apart."""
    flat = [inner for piece in pieces for inner in (piece.inside if piece.sort == "row" else (piece,))]
    return Math("row", inside=tuple(flat))


def bracketed(made: Math) -> Math:
    """A piece in brackets."""
    return row(Math("sign", "("), made, Math("sign", ")"))


def energy(level: Math) -> Math:
    """10^(0.1·L), the energy of a level as a part of the reference (ISO 3744:2010, 8.2)."""
    bare = Math("number", level.figure) if level.figure else level
    whole = bracketed(bare) if bare.sort == "row" or bare.text.startswith(MINUS) else bare
    return Math("power", inside=(Math("number", "10"), row(Math("number", TENTH), Math("sign", TIMES), whole)))


def level_of(inside: Math) -> Math:
    """10 lg(…), the level of an energy."""
    return row(Math("function", LG), bracketed(inside))


def energy_sum(levels: Sequence[Math]) -> Math:
    """10·lg(Σ 10^(0.1·L)), each level written out."""
    return level_of(_added(levels))


def energy_mean(levels: Sequence[Math]) -> Math:
    """10·lg(Σ 10^(0.1·L) ÷ n), each level written out."""
    return level_of(Math("fraction", inside=(_added(levels), Math("number", str(len(levels))))))


def over_parts(function: str, level: Math) -> Math:
    """A mean or sum of energies over parts that aren't written out: 10·lg(mean over parts of 10^(0.1·L))."""
    said = Math("function", words(f"function.{function}") + "\u00a0")
    return level_of(row(said, energy(level)))


def energy_difference(level: Math, background: Math) -> Math:
    """10·lg(10^(0.1·L) − 10^(0.1·B)): a level less its background (ISO 3744:2010, 8.2.3)."""
    return level_of(row(energy(level), Math("sign", MINUS), energy(background)))


def _added(levels: Sequence[Math]) -> Math:
    signed = [piece for level in levels for piece in (Math("sign", "+"), energy(level))]
    return row(*signed[1:])
