"""Quantities as later stages know them: the formula the kind wrote, the readings it expects."""

from __future__ import annotations

import dataclasses
from typing import Literal

from reportgen.addresses import as_id, in_formula
from reportgen.campaign.channels import channels_of
from reportgen.campaign.columns import Known, Placed, names_in, sorted_out
from reportgen.campaign.counting import check_counting
from reportgen.campaign.declared import Column, Kind, Quantity
from reportgen.campaign.former_names import former
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.independent import check_independent
from reportgen.campaign.kinds import KINDS
from reportgen.campaign.look_up import error
from reportgen.campaign.until import formula_until
from reportgen.campaign.written.measure import WrittenQuantity
from reportgen.finding import Finding, Place

LOG_COLUMNS = frozenset(
    {
        "time", "contender", "specimen", "what", "value", "unit", "instrument", "pass", "part", "round", "session",
        "note", "photo", "film",
    }
)  # fmt: skip


def quantity_of(
    entry: Entry[WrittenQuantity], test: str, columns: dict[str, Placed], known: Known, told: list[Finding]
) -> Quantity:
    """One quantity of a test. The columns its kind expects join `columns` where nobody declared them."""
    label, w, at = entry.name.value, entry.value, entry.name.at
    if as_id(label) in LOG_COLUMNS:
        why = "A bench log has a column of that name, and its cells would be taken for readings."
        error(told, "name-of-a-log-column", at, f"no quantity can be called “{label}”", why, "Give it a longer name.")
    kind = _kind(label, w, at, columns, told)
    unit, instrument = sorted_out(w.unit, w.instrument, known)
    check_counting(label, w, w.kind.value if w.kind else None, told)
    check_independent(label, w, kind, told)
    if kind:
        _check_kind(kind, label, w, unit, at, told)
    quantity = Quantity(
        id=as_id(label),
        test=test,
        title=w.title.value if w.title else label.replace("_", " "),
        kind=kind,
        formula=w.formula.value if w.formula else _of_kind(kind, label, w, columns, told),
        unit=unit.value if unit else "",
        better=w.better.value if w.better else "neither",
        matters=w.matters.value if w.matters else None,
        instrument=known.instrument(instrument) if instrument else "",
        over_parts=w.over_parts.value if w.over_parts else "",
        over_passes=w.over_passes.value if w.over_passes else "",
        until=w.until.value if w.until else None,
        grades=tuple(g.value for g in w.grades),
        count_of=as_id(w.count_of.value) if w.count_of else "",
        independent=w.independent.value if w.independent else False,
        says=w.says.value if w.says else "",
        decided=w.decided.value if w.decided else None,
        formerly=former(w.formerly),
    )
    if quantity.count_of:
        return quantity  # it reads no column
    return dataclasses.replace(quantity, reads=_reads(quantity, label, at, columns, known))


def _reads(quantity: Quantity, label: str, at: Place, columns: dict[str, Placed], known: Known) -> tuple[str, ...]:
    """The readings the formula names; its kind's own take the quantity's unit and instrument where they have none."""
    typed = {in_formula(h): h for h in KINDS[quantity.kind].headings(label)} if quantity.kind else {}
    logged = {name: name.replace("_", " ") for name in channels_of(quantity.formula)}  # their files may tell the unit
    typed = {name: heading for name, heading in typed.items() if name not in logged}
    of_kind = {**logged, **typed}
    alike = not quantity.kind or KINDS[quantity.kind].read_alike
    unit = quantity.unit if alike else known.read_in(quantity.instrument)
    names = names_in(quantity.formula)
    in_order = dict.fromkeys((*(n for n in typed if n in names), *names))  # a start before its end
    reads = tuple(n for n in in_order if n in columns or n in of_kind)
    for name in reads:
        placed = columns.get(name) or Placed(Column(name, of_kind[name]), at)
        column = dataclasses.replace(
            placed.column,
            unit=placed.column.unit or (unit if name in typed else ""),
            instrument=placed.column.instrument or quantity.instrument,
        )
        columns[name] = Placed(column, placed.at)
    return reads


def _of_kind(
    kind: Kind | Literal[""], label: str, w: WrittenQuantity, columns: dict[str, Placed], told: list[Finding]
) -> str:
    """The formula that the kind writes; that of a run logged until a limit names the test's channel."""
    if kind != "logged" or w.until is None:
        return KINDS[kind].writes(label) if kind else in_formula(label)
    channel = in_formula(label) if in_formula(label) in columns else next(iter(columns), "")
    written = formula_until(w.until.value, channel or in_formula(label), label)
    if not written:
        says = f"“{w.until.text}” doesn't say which way the trace passes it, or of what it is a part"
        do = "Write `until: under 5 °C`, `until: over 60 dB`, or `until: 10 %` (of its highest)."
        error(told, "until-unclear", w.until.at, says, do=do)
    elif channel not in columns or (len(columns) > 1 and channel != in_formula(label)):
        says = f"“{label}” runs until a channel passes a limit, and which channel isn't clear"
        do = "Name one channel under `columns:`, or write `formula: when(light, under, 0.1 * highest(light))`."
        error(told, "until-unclear", w.until.at, says, do=do)
    return written


def _kind(
    label: str, w: WrittenQuantity, at: Place, columns: dict[str, Placed], told: list[Finding]
) -> Kind | Literal[""]:
    """The kind written, or the one that plainly is meant; "" for a quantity that is only a formula."""
    if w.count_of is not None:
        return "count"
    if w.kind is not None:
        return w.kind.value
    if w.grades:
        return "grade"
    if w.seen:
        return "order"
    if w.formula is not None:
        return ""
    if in_formula(label) in columns:
        return "one reading"
    if not any(f.place.file == at.file and f.place.line == at.line and f.severity == "error" for f in told):
        do = f"Add `kind:` ({', '.join(KINDS)}) or `formula:`."
        error(told, "quantity-without-formula", at, f"“{label}” has neither a kind nor a formula", do=do)
    return ""


def _check_kind(
    kind: Kind, label: str, w: WrittenQuantity, unit: Given[str] | None, at: Place, told: list[Finding]
) -> None:
    of = KINDS[kind]
    if of.needs_unit and unit is None:
        do = f"Add it, for instance `unit: {of.usual_unit}`"
        do += "; `unit: times` where it is counted." if kind == "run to a limit" else "."
        error(told, "quantity-without-unit", at, f"“{label}” has no unit", do=do)
    if not of.numeric and unit is not None:
        says = f"the kind {kind} has no unit, and “{unit.value}” is no instrument"
        error(told, "unit-of-words", unit.at, says, do="Take it out.")
    if kind == "grade" and len(w.grades) < 2:
        do = "Add `grades: [poor, fair, good]`, worst first."
        error(told, "grade-without-grades", at, f"“{label}” doesn't say which grades there are", do=do)
    names = [g.value for g in w.grades]
    for i, grade in enumerate(w.grades):
        if grade.value in names[:i]:
            says = f"“{label}” lists the grade “{grade.value}” twice"
            error(told, "grade-twice", grade.at, says, "One grade has one place in the order.", "Take one out.")
    if w.grades and kind != "grade":
        error(told, "grades-of-numbers", at, f"“{label}” lists grades and is of kind {kind}", do="Write `kind: grade`.")
    joins = w.over_passes or (w.over_parts if w.over_parts and w.over_parts.value != "each" else None)
    if kind == "order" and joins:
        says = f"“{label}” is an order, and orders have no {joins.value}"
        error(told, "order-joined", joins.at, says, "Parts and passes are looks of their own.", "Take it out.")
    joins = w.over_passes or (w.over_parts if w.over_parts and w.over_parts.value != "each" else None)
    if kind == "order" and joins:
        says = f"“{label}” is an order, and orders have no {joins.value}"
        error(told, "order-joined", joins.at, says, "Parts and passes are looks of their own.", "Take it out.")
    if w.seen and kind != "order":
        says = f"“{label}” tells an order that was seen and is of kind {kind}"
        error(told, "order-of-another-kind", w.seen[0].at, says, do="Write `kind: order`.")
    if w.until and kind not in ("run to a limit", "logged"):
        says = f"“{label}” runs to a limit and is of kind {kind}"
        error(told, "limit-of-another-kind", w.until.at, says, do="Write `kind: run to a limit`.")


def quantity_places(entry: Entry[WrittenQuantity]) -> dict[str, Place]:
    """Where the quantity and its keys stand."""
    id = as_id(entry.name.value)
    places = {f"quantity/{id}": entry.name.at}
    for name in ("formula", "unit", "matters", "until", "better", "instrument", "kind", "over_parts", "over_passes"):
        given = getattr(entry.value, name)
        if given is not None:
            places[f"quantity/{id}/{name.replace('_', '-')}"] = given.at
    return places
