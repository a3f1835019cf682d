"""What a formula names besides readings and quantities: constants and assumptions, and where a page tells of each."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from reportgen.addresses import from_to, in_formula, quantity_anchor, test_page
from reportgen.campaign.declared import Constant, Quantity
from reportgen.pages.laboratory import report_address
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.prose.amounts import typed
from reportgen.wording.number import as_written


@dataclass(frozen=True)
class ConstantShown:
    """A constant of the formula: its name there, its value, and where that comes from; `anchor` is its place."""

    anchor: str
    name: str
    value: str
    source: str


def constants_of(told: Told, quantity: Quantity, address: str) -> tuple[ConstantShown, ...]:
    """What the formula names besides readings and quantities: constants, and what is only assumed."""
    named = _named(quantity.formula)
    constants = constants_in(told, quantity.formula, address)
    assumed = [
        ConstantShown(
            anchor(address, a.id),
            in_formula(a.id),
            words("assumed.value", value=typed(a.value), within=typed(a.within)),
            words("assumed.alike" if a.alike else "assumed.own", because=a.because),
        )
        for a in told.campaign.test(quantity.test).assumed
        if in_formula(a.id) in named
    ]
    return (*_until(quantity, address), *constants, *assumed)


def constants_in(told: Told, formula: str, address: str) -> tuple[ConstantShown, ...]:
    """The constants that a formula names, each with its value and source."""
    named = _named(formula)
    return tuple(
        ConstantShown(anchor(address, c.id), in_formula(c.id), _as_known(c), c.source)
        for c in told.campaign.constants.values()
        if in_formula(c.id) in named
    )


def _named(formula: str) -> frozenset[str]:
    """Every word in it, names of functions and units among them."""
    return frozenset(re.findall(r"\w+", formula))


def _as_known(constant: Constant) -> str:
    """Its value with what its source says of the uncertainty; the value alone where it is taken as exact."""
    value = typed(constant.value)
    if constant.within:
        return words("constant.within", value=value, within=typed(constant.within))
    if constant.u and constant.k != 1:
        key = "constant.expanded.two" if constant.k == 2 else "constant.expanded"
        return words(key, value=value, u=typed(constant.u), k=as_written(constant.k))
    return words("constant.u", value=value, u=typed(constant.u)) if constant.u else value


def _until(quantity: Quantity, address: str) -> tuple[ConstantShown, ...]:
    """The limit of a run timed by hand: no formula names it."""
    limit = quantity.until
    if limit is None or quantity.kind == "logged":
        return ()
    key = f"until.{limit.side}" if limit.side else "until.of-time" if limit.value_at else "until"
    told = words(key, limit=typed(limit.limit), at=typed(limit.value_at) if limit.value_at else "")
    return (ConstantShown(anchor(address, "until"), "until", told, ""),)


def anchor(address: str, name: str) -> str:
    """Where a constant of a quantity stands on its page; `address` is the quantity's own anchor."""
    return f"{address}-{in_formula(name)}"


def scatter_anchor(address: str) -> str:
    """Where a page says which scatter a quantity was judged with."""
    return f"{address}-scatter"


def causes_led(told: Told, page: str, quantity: Quantity, part: str) -> Mapping[str, str]:
    """Where a budget's lines lead: `constant/…` and `assumption/…` by id, `laboratory/…` by name to its report,
    and `scatter`."""
    led = {"scatter": f"#{scatter_anchor(quantity_anchor(quantity.id, part))}"}
    for of, address in _told_of(told, quantity, part):
        target = f"{test_page(told.campaign.id, of.test)}#"
        laboratory = told.campaign.test(of.test).laboratory
        if laboratory is not None:
            led.setdefault(f"laboratory/{laboratory.name}", report_address(told, page, laboratory.report))
        for c in constants_of(told, of, address):
            for sort, id in _ids(told, of, c.name):
                led.setdefault(f"{sort}/{id}", from_to(page, target + c.anchor))
    return led


def _told_of(told: Told, quantity: Quantity, part: str) -> Iterator[tuple[Quantity, str]]:
    """The quantity and those that feed it, with their anchors; one told part by part has none of its own."""
    yield quantity, quantity_anchor(quantity.id, part)
    for id in sorted(told.evaluation.upstream.get(quantity.id, frozenset()) - {quantity.id}):
        if {r.part for r in told.evaluation.results if r.quantity == id} == {""}:
            yield told.campaign.quantity(id), id


def _ids(told: Told, quantity: Quantity, name: str) -> Iterator[tuple[str, str]]:
    yield from (("constant", id) for id in told.campaign.constants if in_formula(id) == name)
    assumed = told.campaign.test(quantity.test).assumed
    yield from (("assumption", a.id) for a in assumed if in_formula(a.id) == name)
