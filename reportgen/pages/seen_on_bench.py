"""What was photographed and filmed of a test: pass by pass, with what was read there."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from reportgen.campaign.declared import Test
from reportgen.intake.reading import Reading
from reportgen.pages.named import Named, named
from reportgen.pages.photos import FilmShown, PhotoShown, film_shown, photos_shown
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.wording.language import say
from reportgen.wording.listing import semicolons
from reportgen.wording.sentence import inside
from reportgen.wording.unit import joined


@dataclass(frozen=True)
class PassSeen:
    """One pass of a contender as it was seen; `read` is what was read where it was photographed."""

    contender: Named
    title: str
    read: str
    photos: tuple[PhotoShown, ...]
    films: tuple[FilmShown, ...]


def seen_on_bench(told: Told, test: Test, page: str) -> tuple[PassSeen, ...]:
    """Every pass of the test that was photographed or filmed, in the order of the campaign and of the passes."""
    order = [c.id for c in told.campaign.contenders]
    runs: dict[tuple[str, str, str, str], list[Reading]] = {}
    for r in told.readings.of_test(test.id):
        if (r.photos or r.film) and r.key.contender in order:
            runs.setdefault((r.key.contender, r.key.specimen, r.key.pass_, r.key.part), []).append(r)
    return tuple(_seen(told, test, page, runs[run]) for run in sorted(runs, key=lambda run: order.index(run[0])))


def _seen(told: Told, test: Test, page: str, readings: list[Reading]) -> PassSeen:
    key = readings[0].key
    title = words("pass", n=key.pass_)
    title = words("pass.part", pass_=title, part=key.part) if key.part else title
    specimens = len({r.key.specimen for r in told.readings.of_test(test.id) if r.key.contender == key.contender}) > 1
    photos = dict.fromkeys(id for r in readings for id in r.photos)
    moments = {(r.film.film, r.film.seconds): r.film for r in readings if r.film}
    films = (film_shown(told.campaign, page, m, photos) for m in moments.values())
    return PassSeen(
        named(told.campaign, key.contender, page),
        words("pass.specimen", specimen=say("specimen", id=key.specimen), pass_=inside(title)) if specimens else title,
        semicolons([*_read(test, readings)]),
        photos_shown(told.campaign, page, photos),
        tuple(f for f in films if f is not None),
    )


def _read(test: Test, readings: list[Reading]) -> Iterator[str]:
    headings = {c.name: c.heading for c in test.columns}
    for r in readings:
        said = not r.unit or r.text.endswith(r.unit) or r.text.startswith(r.unit)  # `frames 1204 to 1262` says it first
        text = r.text if said else joined(r.text, r.unit)
        yield words("seen.read", name=headings.get(r.key.name, r.key.name), text=text or words("empty"))
