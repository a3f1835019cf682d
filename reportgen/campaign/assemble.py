"""The records of one campaign → `Declared`: names looked up, readings and instruments spread, places noted."""

from __future__ import annotations

import dataclasses
import posixpath
from collections.abc import Mapping, Sequence

from reportgen.addresses import as_id
from reportgen.campaign.columns import names_in, source_of
from reportgen.campaign.contenders import contender_of, names_of, places_of
from reportgen.campaign.declared import (
    Campaign,
    Contender,
    Day,
    Declared,
    Film,
    Publication,
    Test,
    VerdictPlan,
)
from reportgen.campaign.folder import Folder
from reportgen.campaign.given import Given
from reportgen.campaign.in_reach import Reach, reach_of
from reportgen.campaign.look_up import error, is_misshapen, look_up, look_up_all, unknown
from reportgen.campaign.members import Member
from reportgen.campaign.remarks import Remarks, Scope, remarks
from reportgen.campaign.tests_of import BuiltTest, Known, measured_of, test_of
from reportgen.campaign.verdict_of import verdict_of
from reportgen.campaign.written.campaign import WrittenCampaign
from reportgen.campaign.written.contender import WrittenContender
from reportgen.campaign.written.remarks import WrittenRunning
from reportgen.campaign.written.test import WrittenTest
from reportgen.campaign.written.verdict import WrittenVerdict
from reportgen.finding import Finding, Place, Refused
from reportgen.sources import Workspace, exists, read_bytes
from reportgen.sources.workspace import ARCHIVE, CAMPAIGN


def assemble(
    ws: Workspace,
    id: str,
    inside: Folder,
    written: WrittenCampaign,
    contender_members: Sequence[Member[WrittenContender | Given[str]]],
    test_members: Sequence[Member[WrittenTest]],
    verdict: WrittenVerdict | None,
    publication: Publication,
    told: list[Finding],
) -> Declared:
    """The campaign put together; what doesn't fit is told, and the caller refuses it."""
    w, path = written, posixpath.join(inside.path, CAMPAIGN)
    reach = reach_of(ws, inside.path, path, written, told)
    readings = tuple(source_of(s, inside.path, told) for s in w.readings)
    known = Known(inside.path, reach.use_instrument, reach.is_instrument, reach.by_unit, reach.use_method, readings)
    built = _build_tests(w, test_members, known, told)
    quantities = {q.id: q.id for b in built for q in b.test.quantities}
    prose = {p.id: p.text for p in inside.prose}
    contenders = tuple(contender_of(m, quantities, prose, told) for m in contender_members)
    places = {"": w.at if w.at.line else Place(path), "title": w.title.at}
    for contender, member in zip(contenders, contender_members, strict=True):
        places |= places_of(contender, member)
    for b in built:
        places |= b.places
    names = names_of(contenders, places, told)
    scope = Scope("", tuple(quantities), {b.test.id: tuple(q.id for q in b.test.quantities) for b in built}, names)
    own = remarks(scope, w.exclude, w.incidents, w.caveats, w.accept, told)
    places |= own.places
    tests, accepts = [], list(own.accepts)
    for b in built:
        test, its = _with_remarks(b, w, scope, contenders, told)
        places |= its.places
        accepts += its.accepts
        tests.append(test)
    _check_readings(ws, inside.path, tests, contenders, places, told)
    plan = verdict_of(verdict, quantities, names, told) if verdict else None
    if verdict:
        places["verdict"] = verdict.at
        places |= {f"verdict/group/{as_id(g.name.value)}": g.name.at for g in verdict.groups}
        if verdict.we_say:
            places["verdict/we-say"] = verdict.we_say.at
    places |= {f"prose/{p.id}": Place(p.path) for p in inside.prose}
    for p in inside.prose:
        if p.id.startswith("contenders/") and as_id(p.id.removeprefix("contenders/")) not in names.values():
            says = f"{p.path} belongs to no contender and is left out"
            told.append(Finding("warning", "unlisted-file", Place(p.path), says, do="Name it after a contender's id."))
    campaign = Campaign(
        id=id,
        folder=inside.path,
        title=w.title.value,
        question=w.question.value if w.question else "",
        contenders=contenders,
        tests=tuple(tests),
        instruments={},
        methods={},
        constants={},
        verdict=plan,
        tested=w.tested.value if w.tested else None,
        published=w.published.value if w.published else None,
        place=w.place.value if w.place else "",
        who_pays=w.who_pays.value if w.who_pays else publication.who_pays,
        held_the_same=tuple(h.value for h in w.held_the_same),
        exclusions=own.exclusions,
        incidents=own.incidents,
        caveats=own.caveats,
        cautions=tuple(c.value for c in w.cautions),
        cannot_tell=tuple(c.value for c in w.cannot_tell),
        accepts=tuple(accepts),
        films=tuple(_film(f.name.value, f.value.title, f.value.address) for f in w.films),
        prose=tuple(p for p in inside.prose if not p.id.startswith("contenders/")),
        show=tuple(u.value for u in w.show) or publication.show,
        invented=w.invented.value if w.invented else publication.invented,
        archived=inside.path.startswith(ARCHIVE + "/"),
    )
    return Declared(_with_shared(campaign, reach, plan, places), places)


def _film(name: str, title: Given[str] | None, address: Given[str]) -> Film:
    return Film(as_id(name), title.value if title else name, address.value)


def _build_tests(
    w: WrittenCampaign, test_members: Sequence[Member[WrittenTest]], known: Known, told: list[Finding]
) -> list[BuiltTest]:
    built = [test_of(m.id, m.written, m.at, known, told) for m in test_members if m.written is not None]
    built += [measured_of(entry, known, told) for entry in w.measure]
    if not built and not test_members and not is_misshapen(told, w.at.file):
        error(told, "no-tests", w.at, "this campaign measures nothing",
              do="Add `measure:` and below it a line such as `boil time: timed, s, lower`.")  # fmt: skip
    seen: dict[str, Place] = {}
    for b in built:
        for sort, id, at in (
            ("test", b.test.id, b.places[f"test/{b.test.id}"]),
            *(("quantity", q.id, b.places[f"quantity/{q.id}"]) for q in b.test.quantities),
        ):
            first = seen.setdefault(f"{sort}/{id}", at)
            if first != at:
                why = "Names of quantities are unique in a campaign." if sort == "quantity" else ""
                error(
                    told, f"duplicate-{sort}", at, f"there is a {sort} “{id}” already, in {first}", why, "Rename one."
                )
    return built


def _with_remarks(
    b: BuiltTest, w: WrittenCampaign, scope: Scope, contenders: Sequence[Contender], told: list[Finding]
) -> tuple[Test, Remarks]:
    """The test with its remarks, and with what the campaign says of all tests."""
    t, test = b.written, b.test
    ids = tuple(q.id for q in test.quantities)
    own = Scope(f"{test.id}-", ids, {test.id: ()}, scope.contenders, whole=ids)
    its = remarks(own, t.exclude, t.incidents, t.caveats, t.accept, told)
    later = [*look_up_all(t.not_yet_tested, scope.contenders, "contender", told)]
    for given in w.not_yet_tested:
        name = as_id(given.value)
        if name == test.id:
            later += [c.id for c in contenders]
        elif name in scope.contenders:
            later.append(scope.contenders[name])
        elif name not in scope.tests:
            told.append(unknown(given, [*scope.contenders, *scope.tests], "contender or test"))
    return dataclasses.replace(
        test,
        exclusions=its.exclusions,
        incidents=its.incidents,
        caveats=its.caveats,
        conditions=tuple(dict.fromkeys((*test.conditions, *(c.value for c in w.conditions)))),
        not_yet_tested=tuple(dict.fromkeys(later)),
        running=_running((*t.running, *_running_here(w, test.id, scope, told)), scope, told),
    ), its


def _running_here(w: WrittenCampaign, test: str, scope: Scope, told: list[Finding]) -> list[WrittenRunning]:
    found = []
    for r in w.running:
        if r.test is None and len(scope.tests) > 1:
            error(told, "running-without-test", r.at, "this doesn't say which test still runs",
                  do=f"Add `test:`, one of {', '.join(scope.tests)}.")  # fmt: skip
        elif r.test is None or look_up(r.test, {t: t for t in scope.tests}, "test", told) == test:
            found.append(r)
    return found


def _running(written: Sequence[WrittenRunning], scope: Scope, told: list[Finding]) -> dict[str, Day]:
    return {id: r.since.value for r in written if (id := look_up(r.contender, scope.contenders, "contender", told))}


def _check_readings(
    ws: Workspace,
    folder: str,
    tests: Sequence[Test],
    contenders: Sequence[Contender],
    places: Mapping[str, Place],
    told: list[Finding],
) -> None:
    """Files of readings are there and inside the workspace; every test has some, unless all of it is to come."""
    files: dict[tuple[str, Place], None] = {}
    for test in tests:
        files |= dict.fromkeys((s.file, s.place) for s in test.sources if s.file)
        if not test.sources and len(test.not_yet_tested) < len(contenders):
            error(told, "no-readings", places[f"test/{test.id}"],
                  f"the test “{test.id}” has no readings", do="Add `readings: readings.csv`.")  # fmt: skip
    for file, place in files:
        path = posixpath.join(folder, file)
        if not exists(ws, path):
            try:
                read_bytes(ws, path)
            except Refused as refused:
                told.extend(dataclasses.replace(f, place=place) for f in refused.findings)


def _with_shared(campaign: Campaign, reach: Reach, plan: VerdictPlan | None, places: dict[str, Place]) -> Campaign:
    formulas = [q.formula for t in campaign.tests for q in t.quantities]
    if plan and plan.use:
        formulas.append(plan.use.cost)
    used = frozenset(name for formula in formulas for name in names_in(formula))
    constants = {f.value.id: f for f in reach.constants_in(used)}
    places |= {f"instrument/{id}": f.at for id, f in reach.instruments.items()}
    places |= {f"method/{id}": f.at for id, f in reach.methods.items()}
    places |= {f"constant/{id}": f.at for id, f in constants.items()}
    return dataclasses.replace(
        campaign,
        instruments={id: f.value for id, f in sorted(reach.instruments.items())},
        methods={id: f.value for id, f in sorted(reach.methods.items())},
        constants={id: f.value for id, f in sorted(constants.items())},
        by_unit=dict(sorted(reach.by_unit.items())),
    )
