"""One reading as the workings show it: what was written, what was taken, and every way back to where it stood."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from reportgen.addresses import from_to, instrument_page, result_anchor, test_page
from reportgen.campaign.declared.remarks import NOT_KNOWN
from reportgen.evaluation.as_shown import correction_of
from reportgen.evaluation.evaluated import PassValue, Result
from reportgen.intake.reading import Reading, ReadingKey, Series
from reportgen.pages.photos import FilmShown, PhotoShown, film_shown, photos_shown
from reportgen.pages.reading_ways import ways
from reportgen.pages.struck import is_struck, says_of_slip, why_put_right
from reportgen.pages.told import Told
from reportgen.pages.traces import LineLink
from reportgen.pages.words import words
from reportgen.theme import Link
from reportgen.wording import number
from reportgen.wording.count import whole
from reportgen.wording.day import at_time
from reportgen.wording.frame_rate import frames_a_second
from reportgen.wording.listing import and_list, labelled, semicolons
from reportgen.wording.sentence import sentence
from reportgen.wording.traces import since, time_of
from reportgen.wording.unit import joined, spelled

GAPS = 3  # stretches without samples named one by one


@dataclass(frozen=True)
class Said:
    """Something to know about a reading, and what it leads to, if anything."""

    text: str
    link: Link | None = None


@dataclass(frozen=True)
class ReadingShown:
    """`was` is what the file says where a slip was put right, else ""; `text` is what was meant.

    `ways` lead to the row or cell, and to a report's page where the value stands in one. `facts` are when it was taken
    and what was so then, "" where the pass says it. `photos` are of the display it
    was read off, `film` the moment it was taken.
    """

    anchor: str
    name: str
    was: str
    text: str
    unit: str
    instrument: str
    instrument_href: str
    ways: tuple[LineLink, ...]
    says: tuple[Said, ...]
    facts: str
    photos: tuple[PhotoShown, ...]
    film: FilmShown | None


def rows_of(told: Told, p: PassValue) -> list[Reading]:
    """The readings behind one pass, as they stand in their files."""
    read = [told.readings.readings[k] for k in p.keys if k in told.readings.readings]
    return sorted(dict.fromkeys(read), key=lambda r: (r.at.file, r.at.sheet, r.at.line, r.at.column, r.order))


def anchors_of(told: Told, result: Result) -> Mapping[tuple[int, ReadingKey], str]:
    """The anchor of each reading's row in the working of `result`, by the place of its pass there and its key."""
    working = result_anchor(result.quantity, result.contender, result.part)
    rows = [(n, r.key) for n, p in enumerate(result.by_pass) for r in rows_of(told, p)]
    return {row: f"{working}-r{n}" for n, row in enumerate(rows, 1)}


def shown(told: Told, page: str, result: Result, r: Reading, anchor: str) -> ReadingShown:
    """One reading on `page`, in the working of `result`."""
    instrument = told.campaign.instruments.get(r.instrument)
    return ReadingShown(
        anchor=anchor,
        name=_name(told, result, r),
        was=_was(told, r),
        text=_written(r),
        unit="" if r.series is not None or _needs_no_unit(r) else spelled(r.unit),
        instrument=instrument.title if instrument else "",
        instrument_href=from_to(page, instrument_page(instrument.id)) if instrument else "",
        ways=tuple(ways(told, page, result, r)),
        says=tuple(_says(told, page, result, r)),
        facts=sentence(semicolons([*_facts(r)])),
        photos=photos_shown(told.campaign, page, r.photos),
        film=film_shown(told.campaign, page, r.film, r.photos),
    )


def pictured_once(rows: Sequence[ReadingShown]) -> tuple[ReadingShown, ...]:
    """What readings of one table's row have in common to be seen stands with the last of them."""
    alike = [(row.photos, row.film) for row in rows]
    after = [*alike[1:], ((), None)][: len(alike)]  # a count of nought rests on no reading at all
    again = [now == then for now, then in zip(alike, after, strict=True)]
    return tuple(replace(row, photos=(), film=None) if same else row for row, same in zip(rows, again, strict=True))


def told_once(rows: Sequence[ReadingShown]) -> tuple[str, tuple[ReadingShown, ...]]:
    """What all readings of a pass say of when they were taken, and the rows without it; "" where they differ."""
    facts = {row.facts for row in rows}
    if len(facts) != 1:
        return "", tuple(rows)
    return facts.pop(), tuple(replace(row, facts="") for row in rows)


def _written(r: Reading) -> str:
    if r.series is not None:
        return words("reading.trace")
    return r.text or words("reading.none-yet" if r.running else "empty")


def _needs_no_unit(r: Reading) -> bool:
    """Whether what was written has the unit in it (`4.74 lbf`, `frames 12 to 40`) or is no number (`nothing`)."""
    if not any(c.isdigit() for c in r.text):
        return True
    spelt = re.search(rf"(?<=[\d\s]){re.escape(r.unit)}(?=$|\s)", r.text) is not None
    return bool(r.unit) and (spelt or r.text.lower().startswith("frame"))


def _was(told: Told, r: Reading) -> str:
    """What the file says, where that isn't what is meant: a slip put right, or the record that isn't used."""
    if any(two.id == r.records and two.used == NOT_KNOWN for two in told.campaign.two_records):
        return ""  # both stand
    slips = [a for a in told.campaign.amendments if a.id == r.amendment and is_struck(r, a)]
    return r.was or (words("empty") if slips else "")


def _heading(told: Told, r: Reading) -> str:
    """A reading's name as the author's table has it."""
    columns = told.campaign.test(r.key.test).columns
    return next((c.heading for c in columns if c.name == r.key.name), r.key.name)


def _name(told: Told, result: Result, r: Reading) -> str:
    """Its heading, its part where the pass is of several, and whose it is where it isn't this contender's."""
    whose = next((c.title for c in told.campaign.contenders if c.id == r.key.contender), "")
    own = r.for_all or r.key.contender == result.contender or not whose
    name = _heading(told, r)
    if r.key.part and not result.part:
        name = words("pass.part", pass_=name, part=r.key.part)
    return name if own else words("reading.of", name=name, who=whose)


def _says(told: Told, page: str, result: Result, r: Reading) -> Iterator[Said]:
    if r.width is not None and r.value is not None:
        low, high = (number.as_written(end.normalize()) for end in (r.value - r.width, r.value + r.width))
        key = "reading.taken.difference" if r.beside else "reading.taken"
        yield Said(words(key, range=joined(words("interval", low=low, high=high), r.unit)))
    added = correction_of(told.campaign.instruments.get(r.instrument), r)
    if added is not None and r.value is not None:
        places = max(r.decimals or 0, number.decimals_of(added) + 1)
        by, to = number.fixed(added, places, sign=True), number.fixed(float(r.value) + added, places)
        yield Said(words("reading.corrected", by=joined(by, r.unit), to=joined(to, r.unit)))
    if r.unweighed:
        yield Said(words("reading.some" if r.limit else "reading.nothing"))
    if r.unfinished:
        yield Said(words("reading.unfinished"))
    if r.beside:
        yield Said(words("reading.beside"), _other(told, page, result, r))
    if r.for_all:
        yield Said(words("reading.for-all"))
    for amendment in told.campaign.amendments:
        if amendment.id == r.amendment:
            yield Said(why_put_right(amendment) if is_struck(r, amendment) else says_of_slip(amendment))
    for two in told.campaign.two_records:
        if two.id == r.records:
            said = and_list(two.said)
            key = "reading.records.open" if two.used == NOT_KNOWN else "reading.records"
            yield Said(words(key, said=said, used=two.used, because=two.because.rstrip(".")))
    rate = told.campaign.instruments[r.instrument].frame_rate if r.instrument in told.campaign.instruments else None
    if r.frames is not None and rate is not None:
        frames, each = whole(r.frames[1] - r.frames[0]), frames_a_second(rate)
        yield Said(words("reading.frames", frames=frames, rate=each))
    if r.series is not None:
        yield Said(_trace(r.series))


def _trace(s: Series) -> str:
    """How long a trace is, how often it was sampled, and where samples are missing."""
    lasted, every = time_of(s.ends - s.begins), time_of(s.interval)
    key = "reading.series.every" if s.interval else "reading.series"
    said = words(key, channel=s.heading, samples=whole(s.samples), lasted=lasted, every=every)
    stretches = [words("interval", low=since(a, s.clock), high=since(b, s.clock)) for a, b in s.gaps[:GAPS]]
    gaps = ", ".join(stretches)
    key = "reading.gaps.more" if len(s.gaps) > GAPS else "reading.gaps"
    return f"{said} {words(key, gaps=gaps, n=whole(len(s.gaps) - GAPS))}" if gaps else said


def _facts(r: Reading) -> Iterator[str]:
    """When it was taken, and what was so then."""
    if r.time:
        yield at_time(r.time)
    if r.session:
        yield words("reading.session", session=r.session)
    if r.round_:
        yield words("reading.round", round_=r.round_)
    yield from (labelled(name, said) for name, said in r.conditions)
    if r.note:
        yield r.note


def _other(told: Told, page: str, result: Result, r: Reading) -> Link:
    """The contender it was read against, and the way to that one's own reading: of this pass, else of any."""
    who = told.campaign.contender(r.beside)
    theirs = [o for o in told.evaluation.results if (o.quantity, o.contender) == (result.quantity, r.beside)]
    same = [(a, k) for o in theirs for (_, k), a in anchors_of(told, o).items() if k.name == r.key.name]
    same.sort(key=lambda found: (found[1].pass_, found[1].part) != (r.key.pass_, r.key.part))
    anchor = same[0][0] if same else result_anchor(result.quantity, r.beside, result.part)
    return Link(who.title, from_to(page, f"{test_page(told.campaign.id, result.test)}#{anchor}"))
