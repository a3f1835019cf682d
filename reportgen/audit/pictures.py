"""Rules on photographs: what is declared and shown nowhere."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from reportgen.addresses import as_id
from reportgen.audit.case import Case, Seen
from reportgen.campaign.declared import Campaign
from reportgen.prose.reference import split
from reportgen.prose.written import link_places, picture_places


def photos_not_shown(case: Case) -> Iterable[Seen]:
    """Photographs that nothing names."""
    named = {*_named(case.declared.campaign), *(id for r in case.readings.readings.values() for id in r.photos)}
    named |= {id for c in case.evaluation.caveats for id in c.photos}
    for photo in case.declared.campaign.photos:
        if photo.id not in named:
            yield Seen(case.declared.at(f"photo/{photo.id}"), f"No page shows the photograph “{photo.id}”.")


def _named(campaign: Campaign) -> Iterator[str]:
    for arrival in campaign.contenders:
        yield from arrival.photos
    for test in campaign.tests:
        yield from test.photos
    for film in campaign.films:
        yield from film.stills.values()
    for instrument in campaign.instruments.values():
        if instrument.photo:
            yield instrument.photo.id
    for text in campaign.prose:
        targets = [*(target for _, target in link_places(text)), *(target for _, target, _ in picture_places(text))]
        yield from (as_id(name) for scheme, name in map(split, targets) if scheme == "photo")
