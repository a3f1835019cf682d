"""The campaign put together, and the publication it stands in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from reportgen.campaign.declared.amounts import Day
from reportgen.campaign.declared.contenders import Contender
from reportgen.campaign.declared.instruments import Constant, Instrument, Method
from reportgen.campaign.declared.pictures import Film, Photo
from reportgen.campaign.declared.remarks import Acceptance, Amendment, DeclaredCaveat, Exclusion, Incident, TwoRecords
from reportgen.campaign.declared.tests import Quantity, Test
from reportgen.campaign.declared.verdicts import VerdictPlan
from reportgen.finding import Finding, Place
from reportgen.wording.language import ENGLISH, Language


@dataclass(frozen=True)
class ProseFile:
    """A Markdown file of the author's: `path` from the workspace; `text` as it stands."""

    id: str
    path: str
    text: str


@dataclass(frozen=True)
class Campaign:
    """One comparison, put together. Tuples keep the campaign's order; ids are unique in each."""

    id: str
    folder: str  # from the workspace, "" where the campaign is the workspace
    title: str
    question: str
    contenders: tuple[Contender, ...]
    tests: tuple[Test, ...]
    instruments: Mapping[str, Instrument]  # those used here, wherever they were found
    methods: Mapping[str, Method]  # "id.version" → method, those used here
    constants: Mapping[str, Constant]
    shelf: Mapping[str, Instrument] = field(default_factory=dict)  # every instrument in reach, for tables that name one
    by_unit: Mapping[str, str] = field(default_factory=dict)  # unit as typed → instrument, where no column names one
    verdict: VerdictPlan | None = None
    tested: Day | None = None
    published: Day | None = None
    place: str = ""
    doi: str = ""  # under which an archive keeps it, without the resolver
    who_pays: str = ""
    held_the_same: tuple[str, ...] = ()
    exclusions: tuple[Exclusion, ...] = ()
    incidents: tuple[Incident, ...] = ()
    caveats: tuple[DeclaredCaveat, ...] = ()
    cautions: tuple[str, ...] = ()
    cannot_tell: tuple[str, ...] = ()
    accepts: tuple[Acceptance, ...] = ()  # the campaign's and its tests'
    films: tuple[Film, ...] = ()
    photos: tuple[Photo, ...] = ()
    amendments: tuple[Amendment, ...] = ()
    two_records: tuple[TwoRecords, ...] = ()
    prose: tuple[ProseFile, ...] = ()
    show: tuple[str, ...] = ()
    invented: str = ""  # says so on every page, where products and readings are made up
    archived: bool = False
    affiliate_links: str = ""  # whether links earn money, and for whom
    samples: str = ""  # whether makers gave samples, and what became of what was tested
    kind_of_product: str = ""
    formerly: tuple[str, ...] = ()  # ids it had before

    @property
    def dated(self) -> Day | None:
        """When it was published, else tested; None where neither day is known."""
        return next((day for day in (self.published, self.tested) if day and day.last), None)

    def contender(self, id: str) -> Contender:
        return next(c for c in self.contenders if c.id == id)

    def test(self, id: str) -> Test:
        return next(t for t in self.tests if t.id == id)

    def quantity(self, id: str) -> Quantity:
        return next(q for t in self.tests for q in t.quantities if q.id == id)

    @property
    def of_products(self) -> bool:
        """Whether every test's method declares how far specimens differ, so that results speak of products."""
        methods = [self.methods.get(f"{t.method}.{t.method_version}") for t in self.tests]
        return bool(methods) and all(m is not None and m.between_specimens for m in methods)

    def photo(self, id: str) -> Photo:
        return next(p for p in self.photos if p.id == id)

    def film(self, id: str) -> Film:
        return next(f for f in self.films if f.id == id)


@dataclass(frozen=True)
class Publication:
    """`language` is the tag the author wrote, `speaks` the language with its table (English until it is loaded)."""

    title: str = "Test reports"
    address: str = ""
    language: str = "en"
    show: tuple[str, ...] = ()
    who_pays: str = ""
    author: str = ""
    contact: str = ""
    licence: str = ""
    theme: str = "reading-room"
    invented: str = ""
    affiliate_links: str = ""
    samples: str = ""
    speaks: Language = ENGLISH


@dataclass(frozen=True)
class Declared:
    """A campaign and where each piece of it was written.

    `places` maps a path such as ``test/gas-burned``, ``quantity/gas-burned/formula``, ``contender/ostler``,
    ``claim/ostler/c1``, ``exclusion/<id>``, ``caveat/<id>``, ``verdict``, ``title`` to its place.
    `findings` are warnings and notes met while reading; errors are raised as `Refused` instead.
    """

    campaign: Campaign
    places: Mapping[str, Place]
    findings: tuple[Finding, ...] = ()

    def at(self, path: str) -> Place:
        """The place of a path, or of the nearest one above it that has a place, or the campaign's file."""
        while path:
            if path in self.places:
                return self.places[path]
            path = path.rpartition("/")[0]
        return self.places.get("", Place("campaign.yaml"))
