"""The units of one contender, where several were bought: what tells them apart."""

from __future__ import annotations

from reportgen.campaign.declared import Contender, Day, Specimen
from reportgen.wording.day import day
from reportgen.wording.language import say
from reportgen.wording.listing import commas
from reportgen.wording.sentence import capital, paragraph, sentence

NOT_NOTED = "not noted"  # as an author says of anything that nobody wrote it down


def specimen_name(contender: Contender, id: str) -> str:
    """ "Specimen A (serial C-20431)"; without the serial where none is given."""
    found = next((s for s in contender.specimens if s.id == id), None)
    plain = say("specimen", id=id)
    return (
        say("box.item", item=plain, said=say("specimen.serial", serial=found.serial))
        if found and found.serial and found.serial != NOT_NOTED
        else plain
    )


def day_of(found: Day | None) -> str:
    """A day, or from which to which, in words; "" where none was written."""
    return day(found.first, found.last, found.text) if found else ""


def as_noted(text: str) -> str:
    """What an author typed; in words that nobody noted it, where that was typed."""
    return say("page.not-noted") if text == NOT_NOTED else text


def noted(text: str) -> str:
    """What an author typed, "" where that says that nobody noted it."""
    return "" if text == NOT_NOTED else text


def where_and_when(where: str, on: Day | None) -> str:
    """A shop and a day; that neither was noted is said once."""
    return commas([*dict.fromkeys(filter(None, (as_noted(where), day_of(on))))])


def specimen_told(specimen: Specimen) -> str:
    """Its serial, where and when it was bought, how it came."""
    bought = where_and_when(specimen.bought_where, specimen.bought_on)
    serial = as_noted(specimen.serial)
    facts = [say("specimen.serial", serial=serial)] if serial else []
    facts += [say("specimen.bought", where=bought)] if bought else []
    mended = [sentence(say("put-right", done=specimen.put_right))] if specimen.put_right else []
    return paragraph(capital(commas(facts)), *specimen.as_received, *mended)
