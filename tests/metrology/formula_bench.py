"""A bench for formulas: names with values, over passes and parts where a test gives them."""

from collections.abc import Mapping, Sequence

from reportgen.metrology.errors import did_you_mean
from reportgen.metrology.uncertain import Source, Uncertain
from reportgen.metrology.unit import parse_unit


def value(number: float | None, unit: str = "", limit: str | None = None, **sources: float) -> Uncertain:
    """`value(5.0, "g", scale=0.1)`: 5 g with 0.1 g from the source named scale."""
    contributions = {Source("constant", name): size for name, size in sources.items()}
    return Uncertain(number, parse_unit(unit), contributions, limit)  # type: ignore[arg-type]  # a slip fails the test


class Bench:
    """A lookup made of plain names."""

    def __init__(
        self,
        passes: Mapping[str, Sequence[Uncertain]] | None = None,
        parts: Mapping[str, Sequence[Uncertain]] | None = None,
        others: Mapping[tuple[str, str], Uncertain] | None = None,
        **names: Uncertain,
    ) -> None:
        self.passes, self.parts, self.others, self.names = passes or {}, parts or {}, others or {}, names

    def value(self, name: str) -> Uncertain:
        if name not in self.names:
            raise KeyError(f"nothing here is called {name}; {did_you_mean(name, self.names)}")
        return self.names[name]

    def over_passes(self, name: str) -> Sequence[Uncertain]:
        return self.passes[name]

    def over_parts(self, name: str) -> Sequence[Uncertain]:
        return self.parts[name]

    def of(self, contender: str, name: str) -> Uncertain:
        return self.others[contender, name]
