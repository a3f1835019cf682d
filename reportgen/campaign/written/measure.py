"""What a test measures: quantities, and where their readings stand."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, ClassVar, Literal

from reportgen.campaign import short
from reportgen.campaign.deciding import DecidedOf
from reportgen.campaign.declared import Better, Kind
from reportgen.campaign.encodings import ENCODINGS
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.kinds import KINDS
from reportgen.campaign.order_words import SENTENCE_PATTERN, Saying, sentences
from reportgen.campaign.scalar import AmountOf, Cell, FilePath, Name, SizeOf, Term, Words, YesNo, choice
from reportgen.campaign.shape import Scalar, Short, key, many
from reportgen.campaign.until import UntilOf
from reportgen.campaign.written.accidents import WrittenAssumption
from reportgen.finding import Place

OverParts = Literal["sum", "mean", "each", "energy mean", "energy sum"]
OverPasses = Literal["mean", "least", "most", "middle", "energy mean"]
KindOfIt = Annotated[Given[Kind], choice("a kind of measurement", *KINDS)]
Direction = Annotated[Given[Better], choice("a direction", *short.BETTER)]
JoinParts = Annotated[
    Given[OverParts], choice("a way to join parts", "sum", "mean", "each", "energy mean", "energy sum")
]
JoinPasses = Annotated[
    Given[OverPasses], choice("a way to join passes", "mean", "least", "most", "middle", "energy mean")
]
Sighting = Annotated[
    Given[tuple[tuple[str, Saying], ...]],
    Scalar("a sentence that tells an order", sentences, SENTENCE_PATTERN, (("", Saying("alike", "", "")),),
           ("corvane less than ostler", "ostler about like tamsin", "corvane less than ostler less than tamsin")),
]  # fmt: skip
Encoding = Annotated[Given[str], choice("an encoding", *ENCODINGS)]
TableText = Annotated[Given[str], Scalar("a table", str, r"\S", examples=("contender,boil time",))]


@dataclass(frozen=True, kw_only=True)
class WrittenColumn:
    """How one named reading is found in a table."""

    at: Place
    column: Term | None = key("The heading of its column, where that isn't its name")
    unit: Term | None = key("The unit its values are in")
    instrument: Name | None = key("The instrument they were read from")
    SHORT: ClassVar[Short] = Short(short.column, short.COLUMN_PATTERN, ("canister before, g, bench-scale",))


@dataclass(frozen=True, kw_only=True)
class WrittenSource:
    """Where readings stand: a file of the campaign's, or a table in place, and what its headings mean."""

    at: Place
    file: FilePath | None = key("The file, from the campaign's folder")
    sheet: Term | None = key("The sheet of a spreadsheet, where several hold cells")
    encoding: Encoding | None = key("The old code page a text table is in, such as windows-1252")
    logger: FilePath | tuple[Entry[tuple[FilePath, ...]], ...] | None = key(
        "The files of a logger: a name with {contender} and {pass} in it, or for each contender its files, a pass each"
    )
    rate: AmountOf | None = key("How often a logger took samples (10 Hz), for files without times")
    table: tuple[tuple[Cell, ...], ...] | TableText | None = key("The table itself: text after |, or a list of rows")
    contender: Term | None = key("The heading of the column that names the contender")
    pass_: Term | None = key("The heading of the column that numbers the passes")
    part: Term | None = key("The heading of the column that names the part of a run")
    specimen: Term | None = key("The heading of the column that names the specimen")
    session: Term | None = key("The heading of the column that names the session")
    round: Term | None = key("The heading of the column that numbers the rounds")
    unit: Term | None = key("The heading of the column that holds units")
    instrument: Term | None = key("The heading of the column that names instruments")
    time: Term | None = key("The heading of the column that holds times of day; of a logger, with its unit: Elapsed, s")
    note: Term | None = key("The heading of the column that holds notes")
    photo: Term | None = key("The heading of the column that names photographs")
    film: Term | None = key("The heading of the column that holds moments in a film")
    page: Term | None = key("The heading of the column that names the page of a laboratory's report")
    what: Term | None = key("The heading of the column that names the reading, in a bench log")
    value: Term | None = key("The heading of the column that holds the values, in a bench log")
    leave_out: tuple[Term, ...] = many("What rows that hold no readings are called, such as Mean or Total")
    columns: tuple[Entry[WrittenColumn | None], ...] | tuple[Name, ...] | None = key("The readings in it, by name")
    SHORT: ClassVar[Short] = Short(short.source, r"\S", ("readings.csv", "raw/day.xlsx, sheet Bench"))
    LATER: ClassVar[tuple[str, ...]] = ()


@dataclass(frozen=True, kw_only=True)
class WrittenQuantity:
    """One quantity that is measured."""

    at: Place
    title: Words | None = key("How pages name it, where the name as typed won't do")
    kind: KindOfIt | None = key("The ready-made measurement it is: it writes the formula and expects the columns")
    formula: Term | None = key("How it is worked out from readings, in place of what the kind wrote")
    unit: Term | None = key("Its unit, as people write it: g, °F, lbf, dB")
    better: Direction | None = key(
        "Which way is better: higher is more of it, more yes or a later grade; without it nothing is ranked"
    )
    instrument: Name | None = key("The instrument its readings were taken with")
    matters: SizeOf | None = key("The smallest difference that matters in use, fixed before the test")
    over_parts: JoinParts | None = key("How the parts of a run are joined")
    over_passes: JoinPasses | None = key("How passes are joined; least, most and middle are shown and never ranked")
    until: UntilOf | None = key("The limit a run goes to: 10 %, under 5 °C")
    grades: tuple[Term, ...] = many("The grades, worst first")
    seen: tuple[Sighting, ...] = many("An order as it was seen, in sentences, where no table is wanted")
    count_of: Term | None = key("The event it counts among the incidents, such as relight")
    independent: YesNo | None = key("Of counts: whether each event comes by itself, whatever came before it")
    counted_over: Name | None = key("The quantity, such as a time, over which a count's events came; else a run is one")
    in_: tuple[Name, ...] = many("The tests in which they are counted; a contender they have seen counts, from 0 on")
    assumed: tuple[Entry[WrittenAssumption], ...] = many("Names in formulas that nobody measured")
    says: Words | None = key("What to know about it, in a sentence or two")
    formerly: tuple[Name, ...] = many("Ids it had before; places at the old addresses lead here")
    decided: DecidedOf | None = key("When it was decided to measure it, and what matters: before the test, or after")
    SHORT: ClassVar[Short] = Short(
        short.measure,
        short.MEASURE_PATTERN,
        ("weighed before and after, g, lower, bench-scale", "yes/no", "count of relight"),
    )
    LATER: ClassVar[tuple[str, ...]] = ("background",)
