"""Everything an inspection looks for, in one table: on disk, in every page that is opened, in one page of each kind."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from reportgen.browser import forwarding, links, looks, machine, once_a_kind, outline, watch, weight
from reportgen.browser.fault import Check, Fault
from reportgen.browser.standing import Standing

OF_FILES: tuple[Callable[[Standing], Iterator[Fault]], ...] = (
    links.links,
    forwarding.forwarding,
    outline.outline,
    machine.machine_read,
    weight.weight,
)
CHECKS: Mapping[str, Check] = {
    check.sort: check
    for check in (
        *(links.DEAD, links.TWICE, forwarding.FORWARDING),
        *(outline.SAYS, outline.HEADINGS, outline.TEXTLESS, outline.UNSIZED),
        *(machine.FEED, machine.MAP, machine.LINKED),
        weight.WEIGHT,
        *(watch.ERROR, watch.FAILED, watch.LEAVES),
        *(one.check for one in looks.LOOKS),
        *(looks.ACCESSIBILITY, looks.PAPER.check, looks.WALK, looks.IDLE.check),
        *(once_a_kind.SHIFT, once_a_kind.LOAD),
    )
}
