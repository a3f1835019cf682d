"""content/publication.yaml: the settings of the whole site."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Annotated, ClassVar

from reportgen.campaign.given import Given
from reportgen.campaign.scalar import Name, Term, WebAddress, Words
from reportgen.campaign.shape import NotThat, Scalar, key, many
from reportgen.finding import Place

TAG = r"[A-Za-z]{2,3}(?:-[A-Za-z0-9]{1,8})*"


def language(text: str) -> str:
    """A language tag (BCP 47: RFC 5646, 2.1), such as `de` or `pt-BR`. Raises NotThat."""
    said = text.strip()
    if not re.fullmatch(TAG, said):
        do = "Write two or three letters, and a region if it matters: de, pt-BR."
        raise NotThat(f"“{said}” is not a language tag", do)
    return said


Language = Annotated[Given[str], Scalar("a language tag", language, rf"^\s*{TAG}\s*$", "en", ("en", "de", "pt-BR"))]


@dataclass(frozen=True, kw_only=True)
class WrittenPublication:
    """The settings of the whole site."""

    at: Place
    title: Words = key("What the site is called", required=True)
    address: WebAddress | None = key("Where it will stand on the web")
    language: Language | None = key("The language of its pages")
    show: tuple[Term, ...] = many("Units to show values in, besides or in place of the ones they were taken in")
    who_pays: Words | None = key("Who paid for the products and the work")
    affiliate_links: Words | None = key("Whether links earn money, and for whom; no where none do")
    samples: Words | None = key("Whether makers gave samples, and what became of what was tested")
    author: Words | None = key("Who is behind it")
    contact: Words | None = key("How to reach them")
    licence: Words | None = key("What others may do with text and data")
    theme: Name | None = key("The theme its pages are set in")
    invented: Words | None = key("Says on every page that products and readings are invented: yes, or your words")
    LATER: ClassVar[tuple[str, ...]] = ("languages", "feed", "search", "logo")
