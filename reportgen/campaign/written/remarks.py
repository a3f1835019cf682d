"""What authors remark on tests and results: exclusions, incidents, caveats, answers to warnings."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, ClassVar, get_args

from reportgen.campaign.dates import DayOf
from reportgen.campaign.declared import Decided, Pushes
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.scalar import Name, Term, Whole, Words, choice
from reportgen.campaign.shape import Short, key, many, rest
from reportgen.campaign.written.pictures import WrittenPictured
from reportgen.finding import Place

DecidedWhen = Annotated[Given[Decided], choice("a time of deciding", *get_args(Decided))]
PushesWhere = Annotated[Given[Pushes], choice("a direction of push", "up", "down", "unknown")]
SoWhat = Annotated[Given[str], choice("a consequence", "note", "do not rank")]


@dataclass(frozen=True, kw_only=True)
class WrittenNarrowing:
    """What a remark is about; what isn't narrowed is the whole test."""

    at: Place
    about: tuple[Name, ...] = many("The quantities it is about, or a test")
    affects: tuple[Name, ...] = many("The same as `about`")
    contender: Name | None = key("The one contender it is about")
    specimen: Term | None = key("The one specimen it is about")
    pass_: Term | None = key("The one pass it is about")
    part: Term | None = key("The one part it is about")


@dataclass(frozen=True, kw_only=True)
class WrittenExclusion(WrittenNarrowing, WrittenPictured):
    """A pass that is left out of the results."""

    because: Words = key("Why it is left out", required=True)
    decided: DecidedWhen | None = key("When that was decided; after seeing the value needs a good reason")
    id: Term | None = key("What its address on the site ends with; else what it is about")


@dataclass(frozen=True, kw_only=True)
class WrittenIncident(WrittenNarrowing, WrittenPictured):
    """Something that happened during a test; it shows on every result that rests on it."""

    what: Words | None = key("What happened, where that isn't said in one line (ostler, pass 3: blew out twice)")
    event: Term | None = key("What it is an instance of, where such are counted: relight, stall")
    times: Whole | None = key("How many times it happened; nothing written is once")
    at_: Term | None = key("When it happened: 14:32, or the fifth minute")
    pushes: PushesWhere | None = key("Which way it pushes the value")
    so: SoWhat | None = key("What follows: it travels as a note, or the result leaves the ranking")
    id: Term | None = key("What its address on the site ends with; else what it is about")
    in_one_line: tuple[Entry[Words], ...] = rest("Where it happened (ostler, pass 3), and after the colon what")
    SHORT: ClassVar[Short] = Short(
        lambda text: {"what": text}, r"\S", ("ostler, pass 3: blew out twice and was relit", "The power failed.")
    )


@dataclass(frozen=True, kw_only=True)
class WrittenCaveat(WrittenNarrowing, WrittenPictured):
    """A limit on what a result means; it follows the result wherever the result goes."""

    says: Words = key("What the reader must know", required=True)
    pushes: PushesWhere | None = key("Which way it pushes the value")
    so: SoWhat | None = key("What follows: it travels as a note, or the result leaves the ranking")
    id: Term | None = key("What its address on the site ends with; else what it is about")
    SHORT: ClassVar[Short] = Short(lambda text: {"says": text}, r"\S", ("The canisters were at room temperature.",))


@dataclass(frozen=True, kw_only=True)
class WrittenAcceptance(WrittenNarrowing):
    """The author's answer to a warning of the audit."""

    rule: Term = key("The name of the rule, as the warning gives it", required=True)
    because: Words = key("Why it is accepted; the page says so", required=True)


@dataclass(frozen=True, kw_only=True)
class WrittenRunning:
    """A test that still goes on for one contender."""

    at: Place
    contender: Name = key("Which contender still runs", required=True)
    since: DayOf = key("Since when; `not noted` where nobody wrote it down", required=True)
    as_of: DayOf | None = key("The day of what was read so far; without it, nothing is said of it")
    test: Name | None = key("Which test it is, where that isn't plain")
