"""What the campaign says is not yet tested: contenders in every test, whole tests, or some contenders of one test."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from reportgen.addresses import as_id
from reportgen.campaign.declared import Contender
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.look_up import look_up, unknown
from reportgen.campaign.remarks import Scope
from reportgen.campaign.written.campaign import WrittenCampaign
from reportgen.finding import Finding, Place


def still_to_come(
    w: WrittenCampaign, test: str, scope: Scope, contenders: Sequence[Contender], told: list[Finding]
) -> dict[str, Place]:
    """Contenders that are still to come in a test, each with the place that says so."""
    found: dict[str, Place] = {}
    for given in w.not_yet_tested or ():
        if isinstance(given, Entry):
            found |= dict(_pairs(given, test, scope, told))
            continue
        name = as_id(given.value)
        if name == test:
            found |= dict.fromkeys((c.id for c in contenders), given.at)
        elif name in scope.contenders:
            found[scope.contenders[name]] = given.at
        elif name not in scope.tests:
            told.append(unknown(given, [*scope.contenders, *scope.tests], "contender or test"))
    return found


def _pairs(
    entry: Entry[tuple[Given[str], ...]], test: str, scope: Scope, told: list[Finding]
) -> Iterator[tuple[str, Place]]:
    """`noise: [tamsin]` and `tamsin: [noise]` say the same: this contender in this test."""
    name = as_id(entry.name.value)
    if name in scope.tests:
        if name == test:
            yield from ((id, g.at) for g in entry.value if (id := look_up(g, scope.contenders, "contender", told)))
    elif name in scope.contenders:
        tests = {id: id for id in scope.tests}
        yield from ((scope.contenders[name], g.at) for g in entry.value if look_up(g, tests, "test", told) == test)
    else:
        told.append(unknown(entry.name, [*scope.contenders, *scope.tests], "contender or test"))
