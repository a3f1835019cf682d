"""What was in the box, item by item, and the claims that looking into it answers."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.addresses import as_id
from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.look_up import error
from reportgen.campaign.written.contender import WrittenBox
from reportgen.finding import Finding

THERE = "there"


def box_of(written: WrittenBox | None, told: list[Finding]) -> dict[str, str]:
    """Item as typed → `there`, `missing` or the author's words. An item that stands alone was there."""
    found: dict[str, str] = {}
    seen: dict[str, Given[str]] = {}
    for item, said in _items(written):
        first = seen.setdefault(as_id(item.value) or item.value, item)
        if first is not item:
            says = f"“{item.value}” stands here twice (first in line {first.at.line})"
            why = "Which of the two is right can't be known."
            error(told, "duplicate-name", item.at, says, why, "Take one of them out.")
            continue
        found[item.value] = said
    return found


def _items(written: WrittenBox | None) -> list[tuple[Given[str], str]]:
    items: list[tuple[Given[str], str]] = []
    for one in written or ():
        if isinstance(one, Given):
            items.append((one, THERE))
        elif isinstance(one, Entry):
            items.append((one.name, one.value.value))
        else:
            items += [(entry.name, entry.value.value) for entry in one]
    return items


def item_called(given: Given[str] | None, box: Mapping[str, str], told: list[Finding]) -> str:
    """The item of the box that a claim's `included:` names, as typed there; "" where there is none, which is told."""
    if given is None or not given.value:
        return ""
    by_id = {as_id(item): item for item in box}
    if as_id(given.value) in by_id:
        return by_id[as_id(given.value)]
    if box:
        says, do = f"nothing in the box is called “{given.value}”", did_you_mean(as_id(given.value), by_id)
    else:
        says, do = "nothing says what was in this contender's box", f"Add `in the box: [{given.value}]`."
    why = "A claim that something is included is answered by what was found in the box."
    error(told, "unknown-item", given.at, says, why, do)
    return ""
