"""The tests of a campaign together: built, told apart, each with its remarks and the campaign's."""

from __future__ import annotations

import dataclasses
import posixpath
from collections.abc import Mapping, Sequence

from reportgen.addresses import as_id
from reportgen.campaign.accidents import amendments, two_records
from reportgen.campaign.columns import Known
from reportgen.campaign.counting import counts_alone, with_tests_counted_in
from reportgen.campaign.declared import Contender, Day, Source, Test
from reportgen.campaign.former_names import check_former
from reportgen.campaign.look_up import error, is_misshapen, look_up, look_up_all
from reportgen.campaign.members import Member
from reportgen.campaign.remarks import Remarks, Scope, remarks
from reportgen.campaign.seeing import shown_by
from reportgen.campaign.still_to_come import still_to_come
from reportgen.campaign.tests_of import BuiltTest, from_file, from_measure
from reportgen.campaign.written.campaign import WrittenCampaign
from reportgen.campaign.written.remarks import WrittenRunning
from reportgen.campaign.written.test import WrittenTest
from reportgen.finding import Finding, Place, Refused
from reportgen.sources import Workspace, exists, read_bytes


def build_tests(
    w: WrittenCampaign, listed: Sequence[Member[WrittenTest]], known: Known, told: list[Finding]
) -> list[BuiltTest]:
    """Tests in files of their own, in the order listed, then those of `measure:`."""
    built = [from_file(m.id, m.written, m.at, known, told) for m in listed if m.written is not None]
    built += [from_measure(entry, known, told) for entry in w.measure]
    if not built and not listed and not is_misshapen(told, w.at.file):
        error(told, "no-tests", w.at, "this campaign measures nothing",
              do="Add `measure:` and below it a line such as `boil time: timed, s, lower`.")  # fmt: skip
    seen: dict[str, Place] = {}
    for b in built:
        _check_names(b, seen, told)
    return built


def check_former_names(built: Sequence[BuiltTest], told: list[Finding]) -> dict[str, Place]:
    """Where tests and quantities say what they were called before; an entry of `measure:` says it for both at once."""
    entries = [(as_id(e.name.value), e.value.formerly) for b in built for e in b.entries]
    places = check_former("test", ((b.test.id, b.written.formerly) for b in built), told)
    told_of_tests = {(f.rule, f.place) for f in told}
    of_quantities: list[Finding] = []
    places |= check_former("quantity", entries, of_quantities)
    told += [f for f in of_quantities if (f.rule, f.place) not in told_of_tests]
    return places


def titles_of(built: Sequence[BuiltTest]) -> dict[str, tuple[str, ...]]:
    """What titles of tests and quantities stand for, where a remark names one: a test's is all its quantities."""
    titles = {as_id(b.test.title): tuple(q.id for q in b.test.quantities) for b in reversed(built)}
    return {**{as_id(q.title): (q.id,) for b in built for q in b.test.quantities}, **titles}


def _check_names(b: BuiltTest, seen: dict[str, Place], told: list[Finding]) -> None:
    for path in (f"test/{b.test.id}", *(f"quantity/{q.id}" for q in b.test.quantities)):
        sort, _, id = path.partition("/")
        first = seen.setdefault(path, b.places[path])
        if first != b.places[path]:
            why = "Names of quantities are unique in a campaign." if sort == "quantity" else ""
            says = f"there is a {sort} “{id}” already, in {first}"
            error(told, f"duplicate-{sort}", b.places[path], says, why, "Rename one.")


def with_remarks(
    b: BuiltTest, w: WrittenCampaign, scope: Scope, contenders: Sequence[Contender], told: list[Finding]
) -> tuple[Test, Remarks]:
    """The test with its remarks, and with what the campaign says of all tests."""
    t, test = b.written, with_tests_counted_in(b.test, b.entries, scope.tests, told)
    ids = tuple(q.id for q in test.quantities)
    own = dataclasses.replace(scope, prefix=f"{test.id}-", quantities=ids, tests={test.id: ()}, whole=ids)
    shown = shown_by(t, scope.seeing, told)
    its = remarks(own, t.exclude, t.incidents, t.caveats, t.accept, told)
    later = look_up_all(t.not_yet_tested, scope.contenders, "contender", told)
    running = (*t.running, *_running_here(w, test.id, scope, told))
    places = dict(its.places)
    to_come = still_to_come(w, test.id, scope, contenders, told)
    here = {id: g.at for g in t.not_yet_tested if (id := scope.contenders.get(as_id(g.value), ""))}
    places |= {f"to-come/{test.id}/{id}": at for id, at in {**to_come, **here}.items()}
    later = tuple(dict.fromkeys((*later, *to_come)))
    for r in running:
        contender = scope.contenders.get(as_id(r.contender.value), "")
        places.setdefault(f"running/{test.id}/{contender}", r.at)
        if contender in later:
            says = f"{contender} is not yet tested and still running, both at once"
            error(told, "said-twice", r.at, says, do="Take it out of `not yet tested:`, or out of `running:`.")
    its = dataclasses.replace(
        its,
        amendments=amendments(f"{test.id}-", t.amend, places, told),
        two_records=two_records(f"{test.id}-", t.two_records, test.id, scope.tests, scope.contenders, places, told),
        places=places,
    )
    joined = dataclasses.replace(
        test,
        exclusions=its.exclusions,
        incidents=its.incidents,
        caveats=its.caveats,
        conditions=tuple(dict.fromkeys((*test.conditions, *(c.value for c in w.conditions)))),
        not_yet_tested=later,
        running=_since(running, scope, told),
        running_as_of={
            id: r.as_of.value for r in running if r.as_of and (id := scope.contenders.get(as_id(r.contender.value), ""))
        },
        photos=shown.photos,
        film=shown.film,
    )
    return joined, its


def _running_here(w: WrittenCampaign, test: str, scope: Scope, told: list[Finding]) -> list[WrittenRunning]:
    found = []
    for r in w.running:
        if r.test is None and len(scope.tests) > 1:
            error(told, "running-without-test", r.at, "this doesn't say which test still runs",
                  do=f"Add `test:`, one of {', '.join(scope.tests)}.")  # fmt: skip
        elif r.test is None or look_up(r.test, {t: t for t in scope.tests}, "test", told) == test:
            found.append(r)
    return found


def _since(written: Sequence[WrittenRunning], scope: Scope, told: list[Finding]) -> dict[str, Day]:
    return {id: r.since.value for r in written if (id := look_up(r.contender, scope.contenders, "contender", told))}


def _named(source: Source) -> tuple[str, ...]:
    """The files it names; a name with braces is looked for when it is read."""
    if source.logger is not None and (source.logger.files or "{" in source.file):
        return tuple(file for files in source.logger.files.values() for file in files)
    return (source.file,) if source.file else ()


def check_readings(
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
        files |= dict.fromkeys((f, s.place) for s in test.sources for f in _named(s))
        if not test.sources and not counts_alone(test.quantities) and len(test.not_yet_tested) < len(contenders):
            says = f"the test “{test.id}” has no readings"
            error(told, "no-readings", places[f"test/{test.id}"], says, do="Add `readings: readings.csv`.")
    for file, place in files:
        path = posixpath.join(folder, file)
        if not exists(ws, path):
            try:
                read_bytes(ws, path)
            except Refused as refused:
                told.extend(dataclasses.replace(f, place=place) for f in refused.findings)
