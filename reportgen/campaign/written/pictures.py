"""Photographs and films of the work, and what anything may say of them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from reportgen.campaign.dates import DayOf
from reportgen.campaign.given import Entry
from reportgen.campaign.moments import LengthOf, MomentOf
from reportgen.campaign.scalar import FilePath, Name, WebAddress, Words
from reportgen.campaign.shape import Short, key, many
from reportgen.finding import Place


@dataclass(frozen=True, kw_only=True)
class WrittenPhoto:
    """A photograph: what it shows, in words for those who can't see it, and its file."""

    at: Place
    shows: Words | None = key("What can be seen in it, for those who can't see it; no page shows it without")
    file: FilePath | None = key("The file, where it isn't attachments/ and its id")
    caption: Words | None = key("What stands below it on pages")
    by: Words | None = key("Who took it")
    taken: DayOf | None = key("When it was taken")
    SHORT: ClassVar[Short] = Short(lambda text: {"shows": text}, r"\S", ("The scale's display reads 217.1 g.",))


@dataclass(frozen=True, kw_only=True)
class WrittenFilm:
    """A film of the work."""

    at: Place
    address: WebAddress = key("Where it is shown", required=True)
    title: Words | None = key("What it is called")
    length: LengthOf | None = key("How long it is: 12m30s")
    moment: WebAddress | None = key("Its address at a moment, with {seconds} in it, where its host wants one")
    stills: tuple[Entry[Name], ...] = many("Photographs of its moments: 4m20s: the photo's id", any_names=True)
    SHORT: ClassVar[Short] = Short(lambda text: {"address": text}, r"^\s*https?://", ("https://example.org/film",))


@dataclass(frozen=True, kw_only=True)
class WrittenPictured:
    """What photographs and film show of it."""

    photo: tuple[Name, ...] = many("A photograph of it, by its id under `photos:` of the campaign")
    photos: tuple[Name, ...] = many("Photographs of it, by their ids under `photos:` of the campaign")
    film: MomentOf | None = key("The moment in a film that shows it: main 4m20s")
