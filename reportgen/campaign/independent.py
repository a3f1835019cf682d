"""Counts whose events come independently of each other: what may be said of them, and over what they were counted."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.addresses import as_id
from reportgen.campaign.declared import Kind
from reportgen.campaign.given import Given
from reportgen.campaign.look_up import error, unknown
from reportgen.campaign.written.measure import WrittenQuantity
from reportgen.finding import Finding


def check_independent(label: str, w: WrittenQuantity, kind: Kind | str, told: list[Finding]) -> None:
    """`independent:` and `counted over:` belong to counts, and the second to the first."""
    for given, name in ((w.independent, "independent"), (w.counted_over, "counted over")):
        if given is not None and kind != "count":
            says = f"“{label}” is of kind {kind or 'formula'}, and only counts have `{name}:`"
            error(told, "independent-of-another-kind", given.at, says, do="Write `kind: count`, or take it out.")
    independent = w.independent is not None and w.independent.value
    if w.counted_over is not None and not independent and kind == "count":
        says = f"“{label}” says over what it is counted, and not that each event comes by itself"
        why = "Only events that come independently of each other have a rate with known limits."
        error(told, "counted-over-alone", w.counted_over.at, says, why, "Add `independent: yes`, or take it out.")
    if independent and w.count_of is not None and w.counted_over is None and not w.in_:
        assert w.independent is not None
        says = f"“{label}” doesn't say over what its events are counted"
        why = "Whoever was watched for longer has more of them."
        do = "Add `in:` with the tests (each run counts as one), or `counted over:` with a quantity such as a time."
        error(told, "counted-over-nothing", w.independent.at, says, why, do)


def over_quantity(given: Given[str] | None, tests: Mapping[str, tuple[str, ...]], told: list[Finding]) -> str:
    """The id of the quantity that `counted over:` names; "" where none is named or known.

    `tests`: the ids of the quantities of every test.
    """
    if given is None:
        return ""
    known = [q for quantities in tests.values() for q in quantities]
    if as_id(given.value) in known:
        return as_id(given.value)
    told.append(unknown(given, known, "quantity"))
    return ""
