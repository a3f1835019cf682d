"""Moments in films: `main 4m20s`, or `4m20s` where there is one film."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated

from reportgen.addresses import as_id
from reportgen.campaign.declared import Film, Moment
from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.campaign.given import Given
from reportgen.campaign.shape import NotThat, Scalar
from reportgen.wording.moment import as_typed, in_seconds, whole_seconds

_SECONDS = r"(?:\.[0-9]{1,3})?s"
TIME = (
    rf"(?:[0-9]{{1,3}}h(?:\s?[0-5]?[0-9]m)?(?:\s?[0-5]?[0-9]{_SECONDS})?"
    rf"|[0-9]{{1,4}}m(?:\s?[0-5]?[0-9]{_SECONDS})?|[0-9]{{1,5}}{_SECONDS})"
)
_LIKE_THIS = "Write hours, minutes and seconds with their letters: 4m20s, 45s, 1h02m."


@dataclass(frozen=True)
class Said:
    """A moment as written: the film's name ("" where none is named) and seconds from its beginning."""

    film: str
    seconds: Decimal


def moment(text: str) -> Said:
    """`main 4m20s`, `4m20s`. Raises NotThat."""
    said = text.strip()
    if re.fullmatch(TIME, said):
        return Said("", length(said))
    found = re.fullmatch(rf"(.*?\S)\s+({TIME})", said)
    if found is None or not as_id(found[1]):
        raise NotThat(f"“{said}” is no moment in a film", _why(said))
    return Said(found[1], length(found[2]))


def length(text: str) -> Decimal:
    """`12m30s`, `45.5s`, `1h02m` in seconds. Raises NotThat."""
    said = text.strip()
    if not re.fullmatch(TIME, said):
        raise NotThat(f"“{said}” is no length of time", _why(said))
    worth = {"h": 3600, "m": 60, "s": 1}
    return sum((Decimal(n) * worth[letter] for n, letter in re.findall(r"([0-9.]+)([hms])", said)), Decimal(0))


def moment_in(films: Mapping[str, Film], text: str) -> Moment:
    """The moment of a film that `text` means. Raises NotThat: unreadable, no such film, beyond its end."""
    said = moment(text)
    if not films:
        raise NotThat(
            f"“{text.strip()}” is a moment, and the campaign lists no film",
            "Add it to campaign.yaml: `films:` and below it `main: https://…`.",
        )
    if not said.film and len(films) > 1:
        raise NotThat(
            f"“{text.strip()}” doesn't say in which film",
            f"Write its name first: {next(iter(films))} {text.strip()}. There is: {', '.join(films)}.",
        )
    film = films.get(as_id(said.film) if said.film else next(iter(films)))
    if film is None:
        raise NotThat(f"there is no film “{said.film}”", did_you_mean(as_id(said.film), films))
    if film.seconds is not None and said.seconds > film.seconds:
        raise NotThat(
            f"“{text.strip()}” lies beyond the end of the film “{film.id}”, which lasts {as_typed(film.seconds)}",
            "Correct the moment, or the film's `length:`.",
        )
    return Moment(film.id, said.seconds, text.strip())


def address_of(film: Film, moment: Moment) -> str:
    """Where a moment opens: the host's own address for it, else a media fragment (Media Fragments URI 1.0, 4.2.1)."""
    if film.moment:
        return film.moment.replace("{seconds}", whole_seconds(moment.seconds))
    joint = "&" if "#" in film.address else "#"
    return f"{film.address}{joint}t={in_seconds(moment.seconds)}"


def _why(said: str) -> str:
    if re.search(r"[0-9]\s*:\s*[0-9]", said):
        return f"Spreadsheets and YAML make other things of a colon. {_LIKE_THIS}"
    if re.fullmatch(r".*?[0-9]+\s*(?:min|sec|hours?|minutes?|seconds?).*", said):
        return f"The letters are h, m and s. {_LIKE_THIS}"
    return _LIKE_THIS


MomentOf = Annotated[
    Given[Said],
    Scalar("a moment in a film", moment, rf"^\s*(?:.*[A-Za-z0-9].*\s)?{TIME}\s*$", Said("", Decimal(0)),
           ("main 4m20s", "4m20s"), types=("string",)),
]  # fmt: skip
LengthOf = Annotated[
    Given[Decimal],
    Scalar("a length of time", length, rf"^\s*{TIME}\s*$", Decimal(0), ("12m30s", "1h02m", "45s"), types=("string",)),
]
