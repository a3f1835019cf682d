"""The words of an order that was only seen: `a little less than ostler; about like tamsin`, and whole sentences.

A cell of one contender holds one saying or several, parted by `;` or `and`. The normal form parts them by `; ` and
spells each `[a little |much ]less|more than NAME` or `about like NAME`.
"""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal

from reportgen.campaign.shape import NotThat

WAYS = (
    "less than", "a little less than", "much less than", "more than", "a little more than", "much more than",
    "about like",
)  # fmt: skip
_WAY = r"(?:(?P<degree>a little|much)\s+)?(?P<way>less|more)\s+than|(?P<alike>about\s+like)"
_SAYING = re.compile(rf"(?:{_WAY})\s+(?P<other>\S.*?)", re.IGNORECASE)
_SENTENCE = re.compile(rf"(?P<subject>\S.*?)\s+(?:{_WAY})\s+(?P<other>\S.*?)", re.IGNORECASE)
_BETWEEN = re.compile(r"\s*;\s*|\s*,?\s+and\s+(?=(?:a\s+little|much|less|more|about)\s)", re.IGNORECASE)


def _any_case(words: str) -> str:
    """A pattern for these words in capitals or not, with any space between; ECMA 262 has no flag for it inside."""
    return r"\s+".join("".join(f"[{c.upper()}{c}]" for c in word) for word in words.split())


SENTENCE_PATTERN = rf"^\s*\S[^\n]*?\s+(?:{'|'.join(map(_any_case, WAYS))})\s+\S[^\n]*$"


Way = Literal["less", "more", "alike"]


@dataclass(frozen=True)
class Saying:
    """Less than, more than or about like another contender, `other` as it was typed (or, later, its id)."""

    way: Way
    degree: Literal["", "a little", "much"]
    other: str

    @property
    def text(self) -> str:
        """The normal form: `a little less than ostler`."""
        way = "about like" if self.way == "alike" else f"{self.way} than"
        return " ".join(filter(None, (self.degree, way, self.other)))


def sayings(text: str) -> tuple[Saying, ...]:
    """What one cell says of its contender, in its order. Raises NotThat, with the words that were perhaps meant."""
    pieces = [p.strip().rstrip(".") for p in _BETWEEN.split(re.sub(r"\s+", " ", text).strip())]
    return tuple(_saying(piece) for piece in pieces if piece) or (_saying(text),)


def one_cell(said: Iterable[Saying]) -> str:
    """Several sayings of one contender as one cell, in the normal form."""
    return "; ".join(s.text for s in said)


def sentence(text: str) -> tuple[str, Saying]:
    """`corvane less than ostler` → corvane, and what is said of it. Raises NotThat."""
    said = re.sub(r"\s+", " ", text).strip().rstrip(".")
    found = _SENTENCE.fullmatch(said)
    if found is None:
        raise NotThat(
            f"“{said}” doesn't say how one contender stood to another", f"Write it like this: {_like('corvane ')}."
        )
    return found["subject"], _of(found)


def sentences(text: str) -> tuple[tuple[str, Saying], ...]:
    """`hollin more than brisk more than nimbus` → every pair of it, for all stood side by side. Raises NotThat.

    A whole order goes one way; its neighbours stand as they are told, and the others are less or more without a degree.
    """
    said = re.sub(r"\s+", " ", text).strip().rstrip(".")
    first, rest = sentence(said)
    steps = [rest]
    while (further := _SENTENCE.fullmatch(steps[-1].other)) is not None:
        steps[-1] = replace(steps[-1], other=further["subject"])
        steps.append(_of(further))
    ways = {s.way for s in steps} - {"alike"}
    if len(ways) > 1:
        do = "Tell a whole order from one end to the other, or in several sentences."
        raise NotThat(f"“{said}” goes up and down", do)
    names = [first, *(s.other for s in steps)]
    pairs = [(names[i], s) for i, s in enumerate(steps)]
    for i in range(len(steps)):
        for j in range(i + 1, len(steps)):
            between: set[Way] = {s.way for s in steps[i : j + 1]}
            way: Way = next(iter(between - {"alike"}), "alike")
            pairs.append((names[i], Saying(way, "", names[j + 1])))
    return tuple(pairs)


def _saying(piece: str) -> Saying:
    found = _SAYING.fullmatch(piece)
    if found is not None:
        return _of(found)
    said = piece.strip()
    words = said.split(" ")
    for n in range(len(words) - 1, 0, -1):
        near = difflib.get_close_matches(" ".join(words[:n]).lower(), WAYS, n=1, cutoff=0.6)
        if near:
            do = f"Did you mean “{near[0]}”? There is: {', '.join(WAYS)}."
            raise NotThat(f"“{said}” has no word for an order", do)
    raise NotThat(f"“{said}” doesn't say how it stood to another contender", f"Write it like this: {_like('')}.")


def _of(found: re.Match[str]) -> Saying:
    if found["alike"]:
        return Saying("alike", "", found["other"])
    degree = found["degree"].lower() if found["degree"] else ""
    return Saying(
        "less" if found["way"].lower() == "less" else "more",
        "a little" if degree == "a little" else "much" if degree else "",
        found["other"],
    )


def _like(subject: str) -> str:
    return f"{subject}less than ostler · {subject}a little more than ostler · {subject}about like ostler"
