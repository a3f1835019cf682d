"""Formulas, units and constants made ready before any reading is looked at; every mistake in them found in one go."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from contextlib import suppress
from dataclasses import dataclass
from functools import partial

from reportgen.addresses import as_id, in_formula
from reportgen.campaign.declared import Amount, Declared, Quantity
from reportgen.evaluation.assumed import Assumed, assumed_of, called
from reportgen.finding import Finding, Place, Refused
from reportgen.metrology.errors import FormulaError, UnitError
from reportgen.metrology.formulas.grammar import Expression
from reportgen.metrology.formulas.names import names_in
from reportgen.metrology.formulas.parse import parse
from reportgen.metrology.input_quantity import input_quantity
from reportgen.metrology.type_b import StandardUncertainty, from_expanded, rectangular
from reportgen.metrology.uncertain import Uncertain
from reportgen.metrology.unit import Unit, convert, named, parse_unit


@dataclass(frozen=True)
class Prepared:
    """By quantity id: the parsed formula, the names in it, the unit. Constants by name as formulas spell it."""

    expressions: Mapping[str, Expression]
    names: Mapping[str, frozenset[str]]
    units: Mapping[str, Unit]
    constants: Mapping[str, Uncertain]
    assumed: Mapping[tuple[str, str], Assumed]  # (test, name as formulas spell it)


def prepare(declared: Declared) -> Prepared:
    """Parse every formula and unit of the campaign. Raises `Refused` with all that can't be used."""
    findings: list[Finding] = []
    expressions: dict[str, Expression] = {}
    units: dict[str, Unit] = {}
    for quantity in (q for t in declared.campaign.tests for q in t.quantities):
        at = f"quantity/{quantity.id}"
        try:
            units[quantity.id] = parse_unit(quantity.unit)
        except UnitError as wrong:
            findings.append(_unit_finding(wrong, declared.at(f"{at}/unit"), quantity))
        if quantity.count_of:
            continue  # it counts incidents, and has no formula
        try:
            expressions[quantity.id] = parse(quantity.formula)
        except FormulaError as wrong:
            findings.append(formula_finding(wrong, declared, quantity))
    findings += _units_of_columns(declared)
    findings += _units_to_show(declared)
    constants = dict(_constants(declared, findings))
    assumed = assumed_of(declared, findings)
    findings += _clashes(declared, expressions, constants, assumed)
    findings += _circles(declared, expressions)
    if findings:
        raise Refused(findings)
    names = {q: names_in(expressions[q]) if q in expressions else frozenset() for q in units}
    return Prepared(expressions, names, units, constants, assumed)


def known_units(declared: Declared) -> dict[str, Unit]:
    """The unit of every quantity that has one we know, by id."""
    known: dict[str, Unit] = {}
    for quantity in (q for t in declared.campaign.tests for q in t.quantities):
        with suppress(UnitError):
            known[quantity.id] = parse_unit(quantity.unit)
    return known


def formula_finding(wrong: FormulaError, declared: Declared, quantity: Quantity) -> Finding:
    """A formula's mistake at its character in the author's file (or in the kind's own formula, at the quantity)."""
    at = declared.at(f"quantity/{quantity.id}/formula")
    written = f"quantity/{quantity.id}/formula" in declared.places
    place = Place(at.file, at.line, at.column + wrong.column - 1) if written and at.column else at
    says = f"In the formula of {quantity.id}, `{quantity.formula}`: {wrong.says}"
    return Finding("error", "formula", place, says, do=wrong.do, subject=f"quantity/{quantity.id}")


def _unit_finding(wrong: UnitError, place: Place, quantity: Quantity) -> Finding:
    return Finding("error", "unit", place, wrong.says, do=wrong.do, subject=f"quantity/{quantity.id}")


def _units_of_columns(declared: Declared) -> Iterable[Finding]:
    """Units given to a column itself; one that it has from its quantity is told there."""
    for test in declared.campaign.tests:
        of_quantities = {q.unit for q in test.quantities}
        for column in test.columns:
            try:
                parse_unit(column.unit)
            except UnitError as wrong:
                if column.unit not in of_quantities:
                    place = declared.at(f"column/{test.id}/{column.name}")
                    yield Finding("error", "unit", place, wrong.says, do=wrong.do, subject=f"test/{test.id}")


def _units_to_show(declared: Declared) -> Iterable[Finding]:
    for unit in declared.campaign.show:
        try:
            parse_unit(unit)
        except UnitError as wrong:
            yield Finding("error", "unit", declared.at("show"), f"show: {wrong.says}", do=wrong.do)


def _constants(declared: Declared, findings: list[Finding]) -> Iterable[tuple[str, Uncertain]]:
    for constant in declared.campaign.constants.values():
        key = "value"
        try:
            unit = parse_unit(constant.value.unit)
            size = partial(_size, constant.value, unit)
            key = "within" if constant.within else "u" if constant.k == 1 else "uncertainty"
            degrees = math.inf if constant.degrees is None else constant.degrees
            u: StandardUncertainty | None = None
            if constant.u:
                u = from_expanded(size(constant.u), float(constant.k), degrees)
            elif constant.within:
                u = rectangular(size(constant.within), degrees)
            yield in_formula(constant.id), input_quantity(float(constant.value.value), unit, u, name=constant.id)
        except UnitError as wrong:
            stated = constant.value if key == "value" else constant.within or constant.u or constant.value
            place = declared.at(f"constant/{constant.id}/{key}")
            says = f"Constant {constant.id}, `{key}: {stated.text}`: {wrong.says}"
            findings.append(Finding("error", "unit", place, says, do=wrong.do, subject=f"constant/{constant.id}"))


def _size(value: Amount, unit: Unit, stated: Amount) -> float:
    """An uncertainty of a constant in the constant's unit; so many percent are of the value, unless that is in percent
    itself. Raises UnitError."""
    if stated.unit == "%" and value.unit and "%" not in value.unit:
        if unit.kind in ("absolute", "level"):
            raise UnitError(f"so many percent of {named(unit)} are no error", f"write it in {named(unit)}")
        return abs(float(value.value)) * float(stated.value) / 100
    if unit.symbol and not stated.unit:
        raise UnitError("it has no unit", f"write {stated.text} {value.unit}, if that is meant, or a percentage")
    return convert(float(stated.value), parse_unit(stated.unit), unit, difference=True)


def _clashes(
    declared: Declared,
    expressions: Mapping[str, Expression],
    constants: Mapping[str, Uncertain],
    assumed: Mapping[tuple[str, str], Assumed],
) -> Iterable[Finding]:
    """A name that could mean two things: a reading, a quantity that isn't that reading, a constant, an assumption."""
    quantities = {in_formula(q.id): q for t in declared.campaign.tests for q in t.quantities}
    for test in declared.campaign.tests:
        columns = {c.name for c in test.columns}
        for quantity in test.quantities:
            if quantity.id not in expressions:
                continue
            for name in sorted(names_in(expressions[quantity.id])):
                meanings = []
                other = quantities.get(name)
                if name in columns:
                    meanings.append(f"a reading of {test.id}")
                if other and other.id != quantity.id and not (name in columns and other.formula.strip() == name):
                    meanings.append(f"the quantity {other.id}")
                if name in constants:
                    meanings.append(f"the constant {as_id(name)}")
                meanings += called(assumed, test.id, name)
                if len(meanings) > 1:
                    yield Finding(
                        "error", "formula", declared.at(f"quantity/{quantity.id}/formula"),
                        f"In the formula of {quantity.id}, `{name}` is {' and '.join(meanings)}.",
                        "A reader could not tell which was meant.", "Rename one of them.", f"quantity/{quantity.id}",
                    )  # fmt: skip


def _circles(declared: Declared, expressions: Mapping[str, Expression]) -> Iterable[Finding]:
    """Quantities that need each other could never be worked out."""
    columns = {q.id: {c.name for c in t.columns} for t in declared.campaign.tests for q in t.quantities}
    needs = {
        q: [as_id(n) for n in sorted(names_in(e)) if n not in columns[q] and as_id(n) in expressions]
        for q, e in expressions.items()
    }
    told: set[str] = set()
    for quantity in needs:
        circle = _way_back(quantity, needs)
        if circle and not told & set(circle):
            told |= set(circle)
            names = " → ".join([*circle, circle[0]])
            place = declared.at(f"quantity/{quantity}/formula")
            says = f"These quantities need each other: {names}."
            yield Finding("error", "formula", place, says, do="Write one of them from readings.", subject=quantity)


def _way_back(start: str, needs: Mapping[str, list[str]]) -> list[str]:
    """The shortest way from a quantity through what it needs back to itself; empty where there is none."""
    ways = [[start]]
    seen: set[str] = set()
    for way in ways:  # grows while it is walked: breadth first
        for needed in needs[way[-1]]:
            if needed == start:
                return way
            if needed not in seen:
                seen.add(needed)
                ways.append([*way, needed])
    return []
