"""campaign.yaml: one comparison."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from reportgen.campaign.dates import DayOf
from reportgen.campaign.given import Entry
from reportgen.campaign.identifiers import DoiOf
from reportgen.campaign.scalar import FilePath, Name, Term, Words
from reportgen.campaign.shape import key, many
from reportgen.campaign.written.accidents import WrittenAmendment, WrittenAssumption, WrittenTwoRecords
from reportgen.campaign.written.contender import WrittenContender
from reportgen.campaign.written.laboratory import WrittenLaboratory
from reportgen.campaign.written.measure import WrittenSource
from reportgen.campaign.written.pictures import WrittenFilm, WrittenPhoto
from reportgen.campaign.written.remarks import (
    WrittenAcceptance,
    WrittenCaveat,
    WrittenExclusion,
    WrittenIncident,
    WrittenRunning,
)
from reportgen.campaign.written.shared import WrittenConstant, WrittenInstrument
from reportgen.campaign.written.test import WrittenMeasure, WrittenTest
from reportgen.campaign.written.verdict import WrittenVerdict
from reportgen.finding import Place


@dataclass(frozen=True, kw_only=True)
class WrittenCampaign:
    """One comparison: contenders, tests and what is said about them."""

    at: Place
    title: Words = key("What its page is headed with", required=True)
    question: Words | None = key("The question it answers, where the title is none")
    kind_of_product: Words | None = key("What is compared, as a reader would look for it: camping stoves")
    formerly: tuple[Name, ...] = many("What its folder was called before; pages at the old addresses lead here")
    contenders: tuple[Entry[Words | WrittenContender | None], ...] | tuple[Name, ...] | FilePath | None = key(
        "The products compared: id and title each, or a list of ids (a file each in contenders/), or contenders.csv"
    )
    tests: tuple[Entry[WrittenTest | None], ...] | tuple[Name, ...] | None = key(
        "The tests in their order, each in tests/<id>.yaml"
    )
    measure: tuple[Entry[WrittenMeasure], ...] = many("What is measured: each entry is a test with one quantity")
    readings: tuple[WrittenSource, ...] = many("Where readings stand, for every test that has none of its own")
    instruments: tuple[Entry[Term | WrittenInstrument], ...] = many(
        "For each unit the instrument used (g: bench-scale), or an instrument described here", any_names=True
    )
    constants: tuple[Entry[WrittenConstant], ...] = many("Values taken from elsewhere")
    tested: DayOf | None = key("When it was tested")
    published: DayOf | None = key("When it was published")
    place: Words | None = key("Where it was tested")
    doi: DoiOf | None = key("The DOI under which an archive keeps this issue")
    who_pays: Words | None = key("Who paid for the products and the work")
    affiliate_links: Words | None = key("Whether links earn money, and for whom; no where none do")
    samples: Words | None = key("Whether makers gave samples, and what became of what was tested")
    held_the_same: tuple[Words, ...] = many("What was the same for every contender")
    exclude: tuple[WrittenExclusion, ...] = many("Passes left out, each with its reason")
    incidents: tuple[WrittenIncident, ...] = many("What happened during the tests")
    caveats: tuple[WrittenCaveat, ...] = many("Limits on what results mean")
    cautions: tuple[Words, ...] = many("What could hurt someone who repeats this")
    cannot_tell: tuple[Words, ...] = many("What this comparison can't tell you")
    accept: tuple[WrittenAcceptance, ...] = many("Warnings answered")
    conditions: tuple[Term, ...] = many("Columns that hold facts of one pass, such as wind")
    not_yet_tested: tuple[Name, ...] | tuple[Entry[tuple[Name, ...]], ...] | None = key(
        "Contenders or tests that are still to come; of one test alone its contenders: {noise: [tamsin]}"
    )
    running: tuple[WrittenRunning, ...] = many("Contenders whose run still goes on")
    laboratory: WrittenLaboratory | None = key("The laboratory behind every laboratory value; a test adds what differs")
    amend: tuple[WrittenAmendment, ...] = many("Slips in raw files, put right; the files stay as they are")
    two_records: tuple[WrittenTwoRecords, ...] = many("Two records of one reading that disagree")
    assumed: tuple[Entry[WrittenAssumption], ...] = many("Names in formulas that nobody measured, for every test")
    films: tuple[Entry[WrittenFilm], ...] = many("Films of the work")
    photos: tuple[Entry[WrittenPhoto | None], ...] = many("Photographs: what each shows, by the name of its file")
    show: tuple[Term, ...] = many("Units to show values in")
    verdict: WrittenVerdict | None = key("What counts and how much, where that has no file of its own")
    invented: Words | None = key("Says on every page that products and readings are invented: yes, or your words")
    LATER: ClassVar[tuple[str, ...]] = (
        "specimens", "sessions", "follows", "issue",
    )  # fmt: skip
