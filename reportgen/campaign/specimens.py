"""The units of a contender, where several were bought."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from reportgen.addresses import as_id
from reportgen.campaign.declared import Specimen
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.look_up import error
from reportgen.campaign.written.contender import WrittenSpecimen
from reportgen.finding import Finding


def specimens_of(
    written: Iterable[Entry[WrittenSpecimen | None] | Given[str]], told: list[Finding]
) -> tuple[Specimen, ...]:
    """Each unit by the name that tables give it; a name alone stands for one of which nothing more is known."""
    found: dict[str, Specimen] = {}
    for one in written:
        name = one if isinstance(one, Given) else one.name
        if as_id(name.value) in found:
            says = f"there are two specimens “{name.value}” of this contender"
            error(told, "duplicate-name", name.at, says, "Readings couldn't be told apart.", "Give one another name.")
            continue
        found[as_id(name.value)] = _specimen(one)
    return tuple(found.values())


def usual_of(given: Given[str] | None, specimens: Sequence[Specimen], told: list[Finding]) -> str:
    """The specimen of rows that name none, as it was declared; "" where the author names none."""
    if given is None:
        return ""
    known = {as_id(s.id): s.id for s in specimens}
    if as_id(given.value) not in known:
        says = f"there is no specimen “{given.value}” of this contender"
        do = f"Write one of {', '.join(known.values())}." if known else "List the units bought under `specimens:`."
        error(told, "unknown-specimen", given.at, says, "Rows that name none would be of nothing.", do)
    return known.get(as_id(given.value), "")


def _specimen(one: Entry[WrittenSpecimen | None] | Given[str]) -> Specimen:
    if isinstance(one, Given):
        return Specimen(one.value)
    w = one.value
    if w is None:
        return Specimen(one.name.value)
    return Specimen(
        id=one.name.value,
        serial=w.serial.value if w.serial else "",
        bought_where=w.bought.where.value if w.bought and w.bought.where else "",
        bought_on=w.bought.date.value if w.bought and w.bought.date else None,
        as_received=tuple(a.value for a in w.as_received),
        put_right=w.put_right.value if w.put_right else "",
    )
