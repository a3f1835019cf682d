"""A reference in prose: `[14.2 g](value:gas-burned/corvane)`, and what it is answered with."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from urllib.parse import unquote

from reportgen.finding import Finding, Place

SCHEMES = (
    "value",
    "figure",
    "method",
    "test",
    "contender",
    "claim",
    "instrument",
    "page",
    "comparison",
    "first",
    "photo",
    "film",
)
ASKS = "?"  # `[?](value:…)` asks for the value


@dataclass(frozen=True)
class Reference:
    """What the author wrote: the scheme, what it names, the text in brackets, and where it stands.

    `scheme` is "" for a link or picture that names a file of the campaign's.
    """

    scheme: str
    target: str
    text: str
    place: Place
    picture: bool = False

    @property
    def asks(self) -> bool:
        """Whether the author left the words to the program: `[?]`, `[]`, or the bare address in angle brackets."""
        return self.text.strip() in (ASKS, "", f"{self.scheme}:{self.target}")


@dataclass(frozen=True)
class Answer:
    """Where a reference leads (from the page it stands on, "" for nowhere) and what is printed in its place.

    `figure` is the quantity whose chart is to stand there, for a `figure:` picture. `finding` is what the author has to
    be told; an error where the reference names nothing.
    """

    address: str
    printed: str
    figure: str = ""
    photo: str = ""  # the id of the photograph that is to stand there, for a `photo:` picture
    finding: Finding | None = None


Resolve = Callable[[Reference], Answer]


def split(address: str) -> tuple[str, str]:
    """Scheme and target of one of our references; an empty scheme for any other address."""
    scheme, colon, target = address.partition(":")
    return (scheme, unquote(target)) if colon and scheme in SCHEMES else ("", address)
