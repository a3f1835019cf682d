"""What formulas assume, made ready: a value with a source of its own, one variable a contender or one for all."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from reportgen.addresses import in_formula
from reportgen.campaign.declared import Assumption, Declared
from reportgen.finding import Finding
from reportgen.metrology.errors import UnitError
from reportgen.metrology.uncertain import Source, Uncertain
from reportgen.metrology.unit import convert, parse_unit

ALL = "all"  # in place of a contender, where one error serves all; no contender can be called so

By = Mapping[tuple[str, str], "Assumed"]  # (test, name as formulas spell it)


@dataclass(frozen=True)
class Assumed:
    """An assumption in its value's unit; its half-width is that of a uniform distribution (JCGM 100, 4.3.7)."""

    id: str
    value: Uncertain
    alike: bool

    def of(self, contender: str) -> Uncertain:
        """The value for one contender: its own error, or the one all share."""
        if self.alike:
            return self.value
        own = {replace(s, where=s.where.replace(ALL, contender, 1)): u for s, u in self.value.contributions.items()}
        return replace(self.value, contributions=own)


def assumed_of(declared: Declared, findings: list[Finding]) -> By:
    """The assumptions of every test; a width in another unit than its value is told."""
    found: dict[tuple[str, str], Assumed] = {}
    for test in declared.campaign.tests:
        for a in test.assumed:
            path = f"assumption/{test.id}/{a.id}"
            place = declared.at(path if path in declared.places else f"assumption/{a.id}")
            where = test.id if path in declared.places else ""
            try:
                found[test.id, in_formula(a.id)] = _assumed(a, where)
            except UnitError as wrong:
                says = f"The assumption {a.id}: {wrong.says}"
                findings.append(Finding("error", "unit", place, says, do=wrong.do))
    return found


def _assumed(a: Assumption, test: str) -> Assumed:
    unit = parse_unit(a.value.unit)
    if a.unsaid and unit.kind in ("absolute", "level"):
        unit = replace(unit, offset=Fraction(0), kind="difference")
    half = convert(float(a.within.value), parse_unit(a.within.unit), unit, difference=True)
    source = Source("assumption", a.id, f"{ALL}, {test}" if test else ALL, "uniform")
    return Assumed(a.id, Uncertain(float(a.value.value), unit, {source: half / 3**0.5}), a.alike)


def is_shared(source: Source) -> bool:
    """Whether it is one error for all contenders."""
    return source.sort == "assumption" and source.where.partition(",")[0] == ALL


def called(assumed: By, test: str, name: str) -> Iterable[str]:
    """What an assumed name is called where it clashes with another."""
    if (test, name) in assumed:
        yield f"the assumption {assumed[test, name].id}"
