"""The records of one campaign → `Declared`: names looked up, remarks and shared things joined, places noted."""

from __future__ import annotations

import dataclasses
import posixpath
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from reportgen.addresses import as_id
from reportgen.campaign.accidents import amendments, assumptions, two_records, with_assumed
from reportgen.campaign.columns import Known, columns_of, names_in
from reportgen.campaign.contenders import contender_of, names_of, places_of
from reportgen.campaign.declared import Campaign, Contender, Declared, Publication, Test
from reportgen.campaign.folder import Folder
from reportgen.campaign.former_names import check_former, check_former_campaign, former
from reportgen.campaign.given import Given
from reportgen.campaign.in_reach import Reach, reach_of
from reportgen.campaign.join_tests import build_tests, check_former_names, check_readings, titles_of, with_remarks
from reportgen.campaign.laboratories_of import with_laboratory
from reportgen.campaign.members import Member
from reportgen.campaign.remarks import Scope, remarks
from reportgen.campaign.seeing import Seeing, shown_by
from reportgen.campaign.seen_of import seeing_of, tell_of_loose_pictures, with_instruments_shown
from reportgen.campaign.sources_of import sources_of
from reportgen.campaign.until import limits_of
from reportgen.campaign.verdict_of import verdict_of, verdict_places
from reportgen.campaign.written.campaign import WrittenCampaign
from reportgen.campaign.written.contender import WrittenContender
from reportgen.campaign.written.test import WrittenTest
from reportgen.campaign.written.verdict import WrittenVerdict
from reportgen.finding import Finding, Place
from reportgen.sources import Workspace
from reportgen.sources.workspace import ARCHIVE, CAMPAIGN


@dataclass(frozen=True)
class Records:
    """Everything read of one campaign, before any name is looked up."""

    id: str
    inside: Folder
    campaign: WrittenCampaign
    contenders: Sequence[Member[WrittenContender | Given[str]]]
    tests: Sequence[Member[WrittenTest]]
    verdict: WrittenVerdict | None


def assemble(ws: Workspace, records: Records, publication: Publication, told: list[Finding]) -> Declared:
    """The campaign put together; what doesn't fit is told, and the caller refuses it."""
    w, inside = records.campaign, records.inside
    path = posixpath.join(inside.path, CAMPAIGN)
    reach = reach_of(ws, inside.path, path, w, told)
    built = build_tests(w, records.tests, _known(w, inside, reach, told), told)
    quantities = {q.id: q.id for b in built for q in b.test.quantities}
    seeing = seeing_of(ws, inside.path, w.photos, w.films, told)
    places = {"": w.at if w.at.line else Place(path), **_campaign_places(w), **_prose_places(inside)}
    contenders = _with_arrivals(_contenders(records, quantities, places, told), records, seeing, told)
    places |= _former_names(ws, records, told) | check_former_names(built, told)
    names = names_of(contenders, places, told)
    scope = Scope("", tuple(quantities), {b.test.id: tuple(q.id for q in b.test.quantities) for b in built}, names)
    counted = frozenset(q.count_of for b in built for q in b.test.quantities if q.count_of)
    scope = dataclasses.replace(scope, seeing=seeing, events=counted, titles=titles_of(built))
    own = remarks(scope, w.exclude, w.incidents, w.caveats, w.accept, told)
    places |= own.places
    tests, accepts = [], list(own.accepts)
    amended = list(amendments("", w.amend, places, told))
    disagreeing = list(two_records("", w.two_records, "", scope.tests, names, places, told))
    assumed = assumptions((w.assumed,), "", places, told)
    for b in built:
        test, its = with_remarks(b, w, scope, contenders, told)
        test, of_laboratory = with_laboratory(test, b.written.laboratory, w.laboratory, names, told)
        places |= of_laboratory
        places |= {**b.places, **its.places}
        accepts += its.accepts
        amended += its.amendments
        disagreeing += its.two_records
        tests.append(test)
    tests = list(with_assumed(tests, assumed, places, told))
    check_readings(ws, inside.path, tests, contenders, places, told)
    _check_prose(inside, names, told)
    if records.verdict:
        places |= verdict_places(records.verdict)
    campaign = dataclasses.replace(
        _described(records, contenders, tests, publication),
        verdict=verdict_of(records.verdict, quantities, names, told) if records.verdict else None,
        exclusions=own.exclusions,
        incidents=own.incidents,
        caveats=own.caveats,
        accepts=tuple(accepts),
        amendments=tuple(amended),
        two_records=tuple(disagreeing),
        films=tuple(seeing.films.values()),
        photos=tuple(seeing.photos.values()),
    )
    campaign = with_instruments_shown(ws, _with_shared(campaign, reach, places, told), places, told)
    tell_of_loose_pictures(ws, campaign, told)
    return Declared(campaign, places)


def _former_names(ws: Workspace, records: Records, told: list[Finding]) -> dict[str, Place]:
    """Where the campaign and its contenders say what they were called before."""
    others = {as_id(posixpath.basename(folder)): folder for folder in ws.campaigns}
    written = [(m.id, m.written.formerly) for m in records.contenders if isinstance(m.written, WrittenContender)]
    everyone = {m.id: () for m in records.contenders} | dict(written)
    places = check_former_campaign(records.id, records.campaign.formerly, others, told)
    return places | check_former("contender", everyone.items(), told)


def _known(w: WrittenCampaign, inside: Folder, reach: Reach, told: list[Finding]) -> Known:
    known = Known(
        inside.path, reach.use_instrument, reach.is_instrument, reach.read_in, reach.by_unit, reach.use_method
    )
    return dataclasses.replace(
        known,
        readings=sources_of(w.readings, told),
        columns=columns_of((s.columns for s in w.readings), known, told),
    )


def _contenders(
    records: Records, quantities: Mapping[str, str], places: dict[str, Place], told: list[Finding]
) -> tuple[Contender, ...]:
    prose = {p.id: p.text for p in records.inside.prose}
    contenders = tuple(contender_of(m, quantities, prose, told) for m in records.contenders)
    for contender, member in zip(contenders, records.contenders, strict=True):
        places |= places_of(contender, member)
    return contenders


def _with_arrivals(
    contenders: tuple[Contender, ...], records: Records, seeing: Seeing, told: list[Finding]
) -> tuple[Contender, ...]:
    """Each with what photographs and film show of its arrival."""
    made = []
    for contender, member in zip(contenders, records.contenders, strict=True):
        if isinstance(member.written, WrittenContender):
            shown = shown_by(member.written, seeing, told)
            contender = dataclasses.replace(contender, photos=shown.photos, film=shown.film)
        made.append(contender)
    return tuple(made)


def _described(
    records: Records, contenders: tuple[Contender, ...], tests: Sequence[Test], publication: Publication
) -> Campaign:
    """The campaign's own description; what it leaves open about the site, the publication says."""
    w, inside = records.campaign, records.inside
    return Campaign(
        id=records.id,
        folder=inside.path,
        title=w.title.value,
        question=w.question.value if w.question else "",
        contenders=contenders,
        tests=tuple(tests),
        instruments={},
        methods={},
        constants={},
        tested=w.tested.value if w.tested else None,
        published=w.published.value if w.published else None,
        place=w.place.value if w.place else "",
        doi=w.doi.value if w.doi else "",
        who_pays=w.who_pays.value if w.who_pays else publication.who_pays,
        affiliate_links=w.affiliate_links.value if w.affiliate_links else publication.affiliate_links,
        samples=w.samples.value if w.samples else publication.samples,
        held_the_same=tuple(h.value for h in w.held_the_same),
        cautions=tuple(c.value for c in w.cautions),
        cannot_tell=tuple(c.value for c in w.cannot_tell),
        prose=tuple(p for p in inside.prose if not p.id.startswith("contenders/")),
        show=tuple(u.value for u in w.show) or publication.show,
        invented=w.invented.value if w.invented else publication.invented,
        archived=inside.path.startswith(ARCHIVE + "/"),
        kind_of_product=w.kind_of_product.value if w.kind_of_product else "",
        formerly=former(w.formerly),
    )


def _campaign_places(w: WrittenCampaign) -> dict[str, Place]:
    single = (
        *("title", "question", "tested", "published", "place", "who_pays", "invented", "affiliate_links", "samples"),
        "kind_of_product",
    )
    places = {name.replace("_", "-"): given.at for name in single if (given := getattr(w, name)) is not None}
    several = ("held_the_same", "cautions", "cannot_tell", "show", "conditions")
    places |= {name.replace("_", "-"): given[0].at for name in several if (given := getattr(w, name))}
    places |= {f"film/{as_id(f.name.value)}": f.name.at for f in w.films}
    places |= {f"photo/{as_id(p.name.value)}": p.name.at for p in w.photos}
    return places


def _prose_places(inside: Folder) -> dict[str, Place]:
    return {f"prose/{p.id}": Place(p.path) for p in inside.prose}


def _check_prose(inside: Folder, names: Mapping[str, str], told: list[Finding]) -> None:
    for p in inside.prose:
        if p.id.startswith("contenders/") and as_id(p.id.removeprefix("contenders/")) not in names.values():
            says = f"{p.path} belongs to no contender and is left out"
            told.append(Finding("warning", "unlisted-file", Place(p.path), says, do="Name it after a contender's id."))


def _taken(at: Place, id: str) -> Finding:
    says = f"the constant {id} has the name that the limit under `until:` goes by"
    return Finding("error", "name-twice", at, says, "Which of the two was meant can't be known.", "Rename it.")


def _with_shared(campaign: Campaign, reach: Reach, places: dict[str, Place], told: list[Finding]) -> Campaign:
    """The campaign with the instruments, methods and constants it uses."""
    formulas = [q.formula for t in campaign.tests for q in t.quantities]
    if campaign.verdict and campaign.verdict.use:
        formulas.append(campaign.verdict.use.cost)
    used = frozenset(name for formula in formulas for name in names_in(formula))
    constants = {f.value.id: f for f in reach.constants_in(used)}
    limits = limits_of(q for t in campaign.tests for q in t.quantities)
    told += [_taken(constants[id].at, id) for id in limits if id in constants]
    shelf = reach.shelf
    places |= {f"instrument/{id}": f.at for id, f in shelf.items()}
    places |= {f"instrument/{id}/{name}": at for id, f in shelf.items() for name, at in f.keys.items()}
    places |= {f"method/{id}": f.at for id, f in reach.methods.items()}
    places |= {f"method/{id}/{name}": at for id, f in reach.methods.items() for name, at in f.keys.items()}
    places |= {f"constant/{id}": f.at for id, f in constants.items()}
    places |= {f"constant/{id}/{name}": at for id, f in constants.items() for name, at in f.keys.items()}
    places |= {f"constant/{id}": places[f"quantity/{id.removesuffix('-limit')}/until"] for id in limits}
    return dataclasses.replace(
        campaign,
        instruments={id: f.value for id, f in sorted(reach.instruments.items())},
        shelf={id: f.value for id, f in sorted(shelf.items())},
        methods={id: f.value for id, f in sorted(reach.methods.items())},
        constants={**{id: f.value for id, f in sorted(constants.items())}, **limits},
        by_unit=dict(sorted(reach.by_unit.items())),
    )
