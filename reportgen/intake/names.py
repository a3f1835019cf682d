"""Contenders as tables call them: by id, title, any name they also go by, or an id they had before."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reportgen.addresses import as_id
from reportgen.campaign.declared import Campaign
from reportgen.finding import Finding, Place
from reportgen.intake.table import did_you_mean, spelt

EVERYONE = "all"
TOTALS = frozenset({"mean", "means", "average", "avg", "total", "totals", "sum", "median", "min", "max", "sd", "stdev"})
Names = Mapping[str, tuple[str, ...]]


def names_of(campaign: Campaign) -> Names:
    """Every name of every contender, as an id, with the contenders that bear it (more than one: unclear)."""
    bearers: dict[str, list[str]] = {}
    for contender in campaign.contenders:
        for name in (contender.id, contender.title, *contender.also_called):
            held = bearers.setdefault(as_id(name) or name.casefold(), [])
            if contender.id not in held:
                held.append(contender.id)
    for contender in campaign.contenders:
        for old in contender.formerly:  # raw files stay as they are when a contender is renamed
            bearers.setdefault(old, [contender.id])
    for contender in campaign.contenders:  # an id is its own contender's, whoever else is called so
        bearers[contender.id] = [contender.id]
    return {name: tuple(ids) for name, ids in bearers.items()}


def spellings(campaign: Campaign) -> tuple[str, ...]:
    """The names as written, for messages and for telling what a heading is."""
    return tuple(n for c in campaign.contenders for n in dict.fromkeys((c.id, c.title, *c.also_called, *c.formerly)))


def find_contender(text: str, names: Names) -> str | None:
    """The one contender of that name, or None."""
    ids = names.get(as_id(text) or text.casefold(), ())
    return ids[0] if len(ids) == 1 else None


def contenders_in(column: Iterable[str], campaign: Campaign) -> Mapping[str, str | None]:
    """Each different text of a column with the contender it names, EVERYONE for `all`, or None."""
    names = names_of(campaign)
    return {
        text: EVERYONE if as_id(text) == EVERYONE else find_contender(text, names) for text in dict.fromkeys(column)
    }


def unknown_contender(text: str, campaign: Campaign, at: Place) -> Finding:
    """Why a name names no contender, and which was perhaps meant."""
    rule, do = "unknown-contender", "Write the contender's id, its title, or add the name to its `also called:`."
    if as_id(text) in TOTALS:
        file = at.file.removeprefix(campaign.folder).lstrip("/")
        do = f"If it is a row of the sheet's own, name it beside the file: `{{file: {file}, leave out: [{text}]}}`."
    if not text:
        return Finding(
            "error",
            rule,
            at,
            "This row doesn't say which contender it is of.",
            "A reading of nobody can't be used.",
            "Fill the cell in.",
        )
    ids = names_of(campaign).get(as_id(text) or text.casefold(), ())
    if len(ids) > 1:
        return Finding(
            "error",
            rule,
            at,
            f"“{text}” could be {' or '.join(ids)}.",
            "A reading belongs to one contender.",
            "Write the contender's id.",
        )
    near = did_you_mean(text, spellings(campaign))
    known = spelt([c.id for c in campaign.contenders])
    return Finding(
        "error",
        rule,
        at,
        f"There is no contender “{text}”; there are {known}.",
        "A reading of nobody can't be used.",
        f"Did you mean “{near}”? {do}" if near else do,
    )
