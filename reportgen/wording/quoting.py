"""What an author typed, quoted in a sentence, with what it is taken to mean."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from decimal import Decimal

from reportgen.wording.language import say, say_of
from reportgen.wording.listing import and_list, commas
from reportgen.wording.number import as_written
from reportgen.wording.sentence import inside
from reportgen.wording.unit import joined

MOST = 3  # texts quoted in one sentence before the rest are only counted


def quoted(text: str) -> str:
    """“about 250”."""
    return say("quoted", text=text)


def in_sentence(title: str) -> str:
    """A title inside a sentence: its capital falls, and one with a comma of its own stands in quotes."""
    said = inside(title)
    return quoted(said) if "," in said else said


def taken(text: str, value: Decimal, half: Decimal, unit: str) -> str:
    """ "“about 250” counts as 250 g ± 10 g"."""
    return say("quoted.taken", text=text, value=joined(as_written(value), unit), half=joined(as_written(half), unit))


def of_whom(text: str, who: str) -> str:
    """ "“ostler + 72” (Corvane Sol)"."""
    return say("quoted.of", text=text, who=who)


def of_whom_against(text: str, who: str, pass_: str) -> str:
    """ "“ostler + 72” (Corvane Sol, against pass 2)"."""
    return say("quoted.of.pass", text=text, who=who, n=pass_)


def whose(who: str, pass_: str = "", part: str = "") -> str:
    """ "Corvane Sol, pass 2, second evening"; no pass or part where there is nothing to tell it from."""
    where = [who, *([say("lost.pass", n=pass_)] if pass_ else []), *([part] if part else [])]
    return commas(where)


def taken_of_whom(taken: str, where: str) -> str:
    """ "“about 250” counts as 250 g ± 10 g (Corvane Sol, pass 2)"."""
    return say("quoted.whose", taken=taken, where=where)


def lost_of_whom(who: str, pass_: str, part: str, why: str) -> str:
    """ "Corvane Sol, pass 2 (spilled)"."""
    return say("lost.of", where=whose(who, pass_, part), why=why)


def first_few(items: Iterable[str]) -> str:
    """The items, each once; beyond the first few only how many there are."""
    each: Sequence[str] = list(dict.fromkeys(items))
    if len(each) <= MOST + 1:
        return and_list(each)
    rest = len(each) - MOST
    return say_of(rest, "quoted.more", texts=commas(each[:MOST]), count=str(rest))
