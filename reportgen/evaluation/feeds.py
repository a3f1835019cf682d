"""Which readings and quantities feed which quantity, seen through the formulas."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from reportgen.addresses import as_id, in_formula
from reportgen.campaign.declared import Campaign


@dataclass(frozen=True)
class Feeds:
    """`names` maps a quantity id to the names its formula uses, `tests` to its test, `columns` a test to its readings.

    All names are spelled as formulas spell them.
    """

    names: Mapping[str, frozenset[str]]
    tests: Mapping[str, str]
    columns: Mapping[str, frozenset[str]]

    def upstream(self, quantity: str) -> frozenset[str]:
        """The quantity itself and every quantity it is worked out from."""
        seen: set[str] = set()
        waiting = [quantity]
        while waiting:
            one = waiting.pop()
            if one in seen or one not in self.names:
                continue
            seen.add(one)
            own = self.columns[self.tests[one]]
            waiting += [as_id(n) for n in self.names[one] if n not in own]
        return frozenset(seen)

    def readings_of(self, quantity: str) -> frozenset[tuple[str, str]]:
        """(test, reading name) of everything the quantity is worked out from."""
        return frozenset(
            (self.tests[q], n)
            for q in self.upstream(quantity)
            for n in self.names[q]
            if n in self.columns[self.tests[q]]
        )


def feeds_of(campaign: Campaign, names_in: Mapping[str, frozenset[str]]) -> Feeds:
    """`names_in` maps each quantity id to the names in its formula."""
    return Feeds(
        names={q: frozenset(in_formula(n) for n in names) for q, names in names_in.items()},
        tests={q.id: t.id for t in campaign.tests for q in t.quantities},
        columns={t.id: frozenset(c.name for c in t.columns) for t in campaign.tests},
    )
