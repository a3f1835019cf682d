"""Names that things had before: ids, each of which leads to one thing alone."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reportgen.addresses import SITE_PAGES, as_id
from reportgen.campaign.given import Given
from reportgen.campaign.look_up import error
from reportgen.finding import Finding, Place

WHY = "A page at the old address leads to the new one, and can lead to one place alone."


def former(given: Iterable[Given[str]]) -> tuple[str, ...]:
    """The ids of names as typed, each once, in their order."""
    return tuple(dict.fromkeys(as_id(g.value) for g in given))


def check_former(
    what: str, things: Iterable[tuple[str, Iterable[Given[str]]]], told: list[Finding]
) -> dict[str, Place]:
    """Where each thing says what it was called before, by ``former/<what>/<id>/<old id>``.

    `things` are those of one kind, each with its id and its former names. A name that is in use, or that two things had
    before, is an error.
    """
    listed = [(id, tuple(given)) for id, given in things]
    now = {id for id, _ in listed}
    had: dict[str, tuple[str, Place]] = {}
    for id, names in listed:
        for name in names:
            old = as_id(name.value)
            first = had.get(old)
            if old == id:
                says = f"“{name.value}” is what this {what} is called now"
                error(told, "former-name-in-use", name.at, says, WHY, "Take it out of `formerly:`.")
            elif old in now:
                says = f"“{name.value}” is the name of another {what} now"
                error(told, "former-name-in-use", name.at, says, WHY, "Take it out, or rename the other.")
            elif first is not None:
                says = f"“{name.value}” was the name of “{first[0]}” before, says {first[1]}"
                error(told, "former-name-twice", name.at, says, WHY, "Take one of them out.")
            else:
                had[old] = (id, name.at)
    return {f"former/{what}/{id}/{old}": at for old, (id, at) in had.items()}


def check_former_campaign(
    id: str, given: Iterable[Given[str]], others: Mapping[str, str], told: list[Finding]
) -> dict[str, Place]:
    """The same for the campaign itself. `others` maps the ids of the workspace's campaigns to their folders."""
    names = tuple(given)
    for name in names:
        old = as_id(name.value)
        if old in SITE_PAGES:
            says = f"“{name.value}” is the name of a page that the site has"
            error(told, "former-name-in-use", name.at, says, WHY, "Take it out of `formerly:`.")
        elif old in others and old != id:
            says = f"“{name.value}” is the name of another campaign now, in {others[old]}"
            error(told, "former-name-in-use", name.at, says, WHY, "Take it out, or rename the other folder.")
    return check_former("campaign", [(id, names)], told)
