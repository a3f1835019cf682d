"""The laboratory of a test: what the test says of it, and for the rest what the campaign says."""

from __future__ import annotations

import dataclasses
import posixpath
from collections.abc import Mapping
from typing import TypeVar

from reportgen.campaign.declared import Laboratory, Test
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.look_up import error, look_up
from reportgen.campaign.written.laboratory import WrittenLaboratory
from reportgen.finding import Finding, Place

T = TypeVar("T")

KEYS = (
    "name", "report", "number", "date", "accredited", "page", "detection_limit", "report_limit", "uncertainty", "k",
)  # fmt: skip


def with_laboratory(
    test: Test,
    own: WrittenLaboratory | None,
    of_campaign: WrittenLaboratory | None,
    names: Mapping[str, str],
    told: list[Finding],
) -> tuple[Test, Mapping[str, Place]]:
    """The test with its laboratory, and where each key of that stands (`laboratory/<test>/report`).

    A test without a quantity of kind laboratory has none; where there is one, it needs a name and a report.
    """
    ours = [q for q in test.quantities if q.kind == "laboratory"]
    if not ours:
        if own is not None:
            says = f"the test “{test.id}” names a laboratory, and none of its quantities is of kind laboratory"
            error(told, "laboratory-unused", own.at, says, do="Write `kind: laboratory`, or take `laboratory:` out.")
        return test, {}
    where = own.at if own else of_campaign.at if of_campaign else None
    if where is None:
        return test, {}  # told when there is a value
    given = {
        k: value for k in KEYS for w in (of_campaign, own) if w is not None and (value := getattr(w, k)) is not None
    }
    for needed, what in (("name", "`name:`"), ("report", "`report: attachments/….pdf`")):
        if needed not in given:
            says = f"“{ours[0].id}” is a laboratory's value, and nothing says its {needed}"
            why = "A value without its report can't be looked up by anyone."
            error(told, "laboratory-missing", where, says, why, f"Add {what} under `laboratory:`.")
    value = {k: g.value for k, g in given.items()}
    written = [w for w in (own, of_campaign) if w is not None]
    laboratory = Laboratory(
        name=value.get("name", ""),
        report=value.get("report", ""),
        number=value.get("number", ""),
        accredited=value.get("accredited", ""),
        date=value.get("date"),
        detection_limit=value.get("detection_limit"),
        report_limit=value.get("report_limit"),
        uncertainty=value.get("uncertainty"),
        coverage_factor=value.get("k"),
        page=value.get("page"),
        taken=_of_each(next((w.taken for w in written if w.taken), None), names, told),
        diluted=_of_each(next((w.diluted for w in written if w.diluted), None), names, told),
    )
    places = {f"laboratory/{test.id}": where}
    places |= {f"laboratory/{test.id}/{k.replace('_', '-')}": g.at for k, g in given.items()}
    _check(laboratory, test.id, places, told)
    return dataclasses.replace(test, laboratory=laboratory), places


def _of_each(
    given: Given[T] | tuple[Entry[Given[T]], ...] | None, names: Mapping[str, str], told: list[Finding]
) -> dict[str, T]:
    """What was said of each contender's sample, or under "" of all."""
    if given is None:
        return {}
    if isinstance(given, Given):
        return {"": given.value}
    each = {look_up(e.name, names, "contender", told): e.value.value for e in given}
    return {contender: said for contender, said in each.items() if contender}


def _check(laboratory: Laboratory, test: str, places: Mapping[str, Place], told: list[Finding]) -> None:
    """What can be seen without knowing units: limits in order, an uncertainty with its factor."""
    if laboratory.report and not posixpath.normpath(laboratory.report).startswith("attachments/"):
        says = f"“{laboratory.report}” doesn't lie in attachments/"
        why = "What lies there goes onto the site, so that readers can open it."
        do = f"Move it there and write `report: attachments/{posixpath.basename(laboratory.report)}`."
        error(told, "report-elsewhere", places[f"laboratory/{test}/report"], says, why, do)
    low, high = laboratory.detection_limit, laboratory.report_limit
    if low and high and low.unit == high.unit and low.value > high.value:
        says = f"the detection limit ({low.text}) lies above the limit from which values are stated ({high.text})"
        do = "Exchange the two, or correct one."
        error(told, "limits-upside-down", places[f"laboratory/{test}/detection-limit"], says, do=do)
    k = laboratory.coverage_factor
    if laboratory.uncertainty and not k:
        at = places.get(f"laboratory/{test}/k", places[f"laboratory/{test}/uncertainty"])
        why = "The standard uncertainty is the stated one divided by k (JCGM 100, 4.3.3); k is never guessed."
        do = "Write `k: 2` where the report says so, `k: 1` where it states a standard uncertainty."
        error(told, "uncertainty-without-k", at, "this uncertainty has no coverage factor above 0", why, do)
    if k and not laboratory.uncertainty:
        says = "a coverage factor without an uncertainty says nothing"
        error(told, "uncertainty-without-k", places[f"laboratory/{test}/k"], says, do="Add `uncertainty: 10 %`.")
