"""Exclusions, incidents, caveats and answers to warnings, with the names in them looked up."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from reportgen.addresses import as_id, part_id
from reportgen.campaign.declared import (
    Acceptance,
    Amendment,
    DeclaredCaveat,
    Exclusion,
    Incident,
    Narrowing,
    TwoRecords,
)
from reportgen.campaign.look_up import error, look_up, unknown
from reportgen.campaign.one_line import spread
from reportgen.campaign.seeing import Seeing, Shown, shown_by
from reportgen.campaign.written.remarks import (
    WrittenAcceptance,
    WrittenCaveat,
    WrittenExclusion,
    WrittenIncident,
    WrittenNarrowing,
)
from reportgen.finding import Finding, Place


@dataclass(frozen=True)
class Scope:
    """What remarks of one test, or of the campaign, may name.

    `prefix` begins their ids; `quantities` are ids in reach; `tests` maps a test in reach to its quantities;
    `contenders` maps every name a contender goes by to its id; `whole` are the quantities of a remark that names none;
    `titles` maps the titles of tests and quantities, as ids, to the quantities they stand for.
    `seeing`: photographs and films; `events`: those that some quantity counts.
    """

    prefix: str
    quantities: Sequence[str]
    tests: Mapping[str, tuple[str, ...]]
    contenders: Mapping[str, str]
    whole: tuple[str, ...] = ()
    seeing: Seeing = field(default_factory=Seeing)
    events: frozenset[str] = frozenset()
    titles: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


@dataclass(frozen=True)
class Remarks:
    exclusions: tuple[Exclusion, ...]
    incidents: tuple[Incident, ...]
    caveats: tuple[DeclaredCaveat, ...]
    accepts: tuple[Acceptance, ...]
    places: Mapping[str, Place]
    amendments: tuple[Amendment, ...] = ()
    two_records: tuple[TwoRecords, ...] = ()


def remarks(
    scope: Scope,
    exclude: Sequence[WrittenExclusion],
    incidents: Sequence[WrittenIncident],
    caveats: Sequence[WrittenCaveat],
    accept: Sequence[WrittenAcceptance],
    told: list[Finding],
) -> Remarks:
    """All remarks of one test or of the campaign."""
    for x in exclude:
        if not (x.contender or x.pass_ or x.specimen or x.part):
            says = "this exclusion names no pass and no contender, and would leave out everything"
            error(told, "exclusion-of-everything", x.at, says, do="Add `contender:` and `pass:`.")
    incidents = [spread(x, scope.contenders, told) for x in incidents]
    places = {
        f"{sort}/{scope.prefix}{i}": written.at
        for sort, several in (
            ("exclusion", exclude), ("incident", incidents), ("caveat", caveats), ("acceptance", accept)
        )
        for i, written in enumerate(several, 1)
    }  # fmt: skip
    events = scope.events
    return Remarks(
        tuple(_exclusion(f"{scope.prefix}{i}", x, *_of(scope, x, told)) for i, x in enumerate(exclude, 1)),
        tuple(_incident(f"{scope.prefix}{i}", x, *_of(scope, x, told), events) for i, x in enumerate(incidents, 1)),
        tuple(_caveat(f"{scope.prefix}{i}", x, *_of(scope, x, told)) for i, x in enumerate(caveats, 1)),
        tuple(
            Acceptance(f"{scope.prefix}{i}", x.rule.value, x.because.value, _in_test(scope, about(scope, x, told)))
            for i, x in enumerate(accept, 1)
        ),
        places,
    )


def _of(
    scope: Scope, x: WrittenExclusion | WrittenIncident | WrittenCaveat, told: list[Finding]
) -> tuple[str, Narrowing, Shown]:
    narrowing = about(scope, x, told)
    return _name(scope, x, narrowing), narrowing, shown_by(x, scope.seeing, told)


def _name(scope: Scope, x: WrittenExclusion | WrittenIncident | WrittenCaveat, narrowing: Narrowing) -> str:
    """What its address ends with: the id it was given, else what it is about. Never its words or place."""
    if x.id is not None and (given := as_id(x.id.value)):
        return given
    named = [as_id(n.value) for n in (*x.about, *x.affects)]
    pass_ = f"pass-{narrowing.pass_}" if narrowing.pass_ else ""
    about = (*(named or [scope.prefix]), narrowing.contender, narrowing.specimen, pass_, part_id(narrowing.part))
    return "-".join(filter(None, (as_id(part) for part in about))) or "all"


def _exclusion(id: str, x: WrittenExclusion, name: str, narrowing: Narrowing, shown: Shown) -> Exclusion:
    decided = x.decided.value if x.decided else "not noted"
    return Exclusion(id, narrowing, x.because.value, decided, shown.photos, shown.film, name)


def _incident(
    id: str, x: WrittenIncident, name: str, narrowing: Narrowing, shown: Shown, events: frozenset[str]
) -> Incident:
    """Words that are just the name of a counted event make it one, as in the log (`ostler, pass 3: relight`)."""
    said = as_id(x.what.value) if x.what else ""
    event = as_id(x.event.value) if x.event else said if said in events else ""
    return Incident(
        id, narrowing, x.what.value if x.what else "", x.pushes.value if x.pushes else "", _blocks(x),
        event=event, times=x.times.value if x.times else 1,
        when=x.at_.value if x.at_ else "", photos=shown.photos, film=shown.film, name=name,
    )  # fmt: skip


def _caveat(id: str, x: WrittenCaveat, name: str, narrowing: Narrowing, shown: Shown) -> DeclaredCaveat:
    push = x.pushes.value if x.pushes else ""
    return DeclaredCaveat(id, narrowing, x.says.value, push, _blocks(x), shown.photos, shown.film, name)


def _blocks(x: WrittenIncident | WrittenCaveat) -> bool:
    return x.so is not None and x.so.value == "do not rank"


def about(scope: Scope, written: WrittenNarrowing, told: list[Finding]) -> Narrowing:
    """What a remark is about, in ids."""
    quantities: list[str] = []
    for given in (*written.about, *written.affects):
        id = as_id(given.value)
        if id in scope.quantities:
            quantities.append(id)
        elif id in scope.tests:
            quantities.extend(scope.tests[id])
        elif reached := [q for q in scope.titles.get(id, ()) if q in scope.quantities]:
            quantities.extend(reached)
        else:
            here = "quantity or test" if not scope.prefix else "quantity of this test"
            told.append(unknown(given, [*scope.quantities, *scope.tests], here))
    return Narrowing(
        tuple(dict.fromkeys(quantities)),
        look_up(written.contender, scope.contenders, "contender", told),
        written.specimen.value if written.specimen else "",
        written.pass_.value if written.pass_ else "",
        written.part.value if written.part else "",
    )


def _in_test(scope: Scope, narrowing: Narrowing) -> Narrowing:
    """An answer given in a test's file is about that test, though it then stands beside the campaign's own."""
    if narrowing.quantities or not scope.whole:
        return narrowing
    return Narrowing(scope.whole, narrowing.contender, narrowing.specimen, narrowing.pass_, narrowing.part)
