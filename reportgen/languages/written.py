"""A language file as it is written."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal, cast

from reportgen.campaign.given import Entry, Given
from reportgen.campaign.scalar import Term, Words, choice
from reportgen.campaign.shape import Scalar, key, many
from reportgen.campaign.written.publication import Language as Tag
from reportgen.finding import Place

Inside = Literal["as they stand", "without their capital"]
AS_THEY_STAND, WITHOUT_CAPITAL = cast("tuple[Inside, ...]", ("as they stand", "without their capital"))


InsideChoice = Annotated[Given[str], choice("how titles stand inside a sentence", AS_THEY_STAND, WITHOUT_CAPITAL)]
Phrase = Annotated[Given[str], Scalar("the words of a phrase", str, types=("string",), may_be_empty=True)]


@dataclass(frozen=True, kw_only=True)
class WrittenLanguage:
    """One language: what the program says in it."""

    at: Place
    language: Tag = key("Its tag, as the file is named", required=True)
    name: Words = key("What it is called by those who speak it", required=True)
    based_on: Tag | None = key("The language whose phrases stand where this file has none")
    small_numbers: tuple[Term, ...] = many("Words for small numbers, from none on, as they stand before a noun")
    titles_inside_a_sentence: InsideChoice | None = key("Whether a title loses its capital inside a sentence")
    phrases: tuple[Entry[Phrase | tuple[Entry[Phrase], ...]], ...] = many(
        "What is said, by key; a mapping by plural category where a number decides", any_names=True
    )
