"""One item of a report: whether it stands there, what is to be said, and the ways to it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from reportgen.addresses import campaign_page, contender_page, from_to, test_page
from reportgen.campaign.declared import Contender, Test
from reportgen.pages.titles import heading
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.theme import Link
from reportgen.wording.count import counted
from reportgen.wording.listing import and_list
from reportgen.wording.quoting import in_sentence

State = Literal["here", "part", "missing", "none"]
STATES: tuple[State, ...] = ("here", "part", "missing", "none")
NAMED_AT_MOST = 6


@dataclass(frozen=True)
class Found:
    """`state` as a code: here, in part, missing, or none (it doesn't arise); `sentences` as pages print them."""

    state: State
    sentences: tuple[str, ...]
    ways: tuple[Link, ...] = ()


def to(told: Told, page: str, name: Literal["answer", "method", "data", "changes"], anchor: str = "") -> Link:
    """The way to one of the campaign's own pages."""
    address = campaign_page(told.campaign.id, "index" if name == "answer" else name)
    return Link(words(f"items.to.{name}"), from_to(page, f"{address}#{anchor}" if anchor else address))


def to_sheets(told: Told, page: str, contenders: Sequence[Contender]) -> tuple[Link, ...]:
    """The ways to spec sheets."""
    return tuple(Link(c.title, from_to(page, contender_page(told.campaign.id, c.id))) for c in contenders)


def to_tests(told: Told, page: str, tests: Sequence[Test]) -> tuple[Link, ...]:
    """The ways to the pages of tests."""
    return tuple(Link(heading(t), from_to(page, test_page(told.campaign.id, t.id))) for t in tests)


def of_contenders(contenders: Sequence[Contender]) -> str:
    """Their names, or how many they are where names would make no sentence."""
    return and_list([c.title for c in contenders]) if few(contenders) else counted("contender", len(contenders))


def of_tests(tests: Sequence[Test]) -> str:
    """Likewise of tests."""
    return and_list([in_sentence(t.title) for t in tests]) if few(tests) else counted("test", len(tests))


def few(things: Sequence[object]) -> bool:
    """Whether they can be named one by one."""
    return len(things) <= NAMED_AT_MOST
