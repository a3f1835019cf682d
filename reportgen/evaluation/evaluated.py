"""What was computed and decided about a campaign, frozen. Pages, record, audit, charts and kit read this.

Every float is in the unit named beside it. What is computed carries `rests_on`; a caveat shows where the readings
it `touches` and those meet, and nowhere else decides it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from reportgen.campaign.declared import Laboratory
from reportgen.evaluation.behind import Behind as Behind
from reportgen.evaluation.caveat import Caveat as Caveat
from reportgen.evaluation.caveat import CaveatSort as CaveatSort
from reportgen.evaluation.caveat import Keys as Keys
from reportgen.evaluation.caveat import Otherwise as Otherwise
from reportgen.evaluation.claimed import ClaimOutcome as ClaimOutcome
from reportgen.evaluation.claimed import MustOutcome as MustOutcome
from reportgen.evaluation.hanging import HangsOn as HangsOn
from reportgen.evaluation.history import LookedBack as LookedBack
from reportgen.evaluation.history import PastScatter as PastScatter
from reportgen.evaluation.priced import Beaten as Beaten
from reportgen.evaluation.priced import CostOfUse as CostOfUse
from reportgen.evaluation.priced import PriceOtherwise as PriceOtherwise
from reportgen.evaluation.priced import ValueForMoney as ValueForMoney
from reportgen.finding import Finding
from reportgen.intake.reading import ReadingKey
from reportgen.judgement.drawn.draws import ByDraws
from reportgen.judgement.measured import Decision, Limit, Percent, Reason, ScatterFound, Settle, Within
from reportgen.judgement.orders.looks import Degree
from reportgen.judgement.orders.partial_order import Between, Told
from reportgen.judgement.passes.seen import PassesSeen
from reportgen.judgement.verdict.overall import Overall
from reportgen.metrology.uncertain import Source

ResultKind = Literal["measured", "yes/no", "count", "grade", "order"]


@dataclass(frozen=True)
class Contribution:
    """One line of a budget. `size` is signed, one standard uncertainty in the result's unit.

    `degrees` is None for a type B part (taken as known); `share` is its part of the variance, 0 to 1.
    `shared` says that other results of the session hold the same error.
    """

    source: Source
    size: float
    share: float
    shared: bool
    degrees: float | None = None
    behind: Behind | None = None  # where it is known what it comes from


@dataclass(frozen=True)
class Step:
    """One step of the working for a pass: a name, its value and unit, the readings behind it."""

    name: str
    value: float | None
    unit: str
    limit: Limit | None = None
    keys: tuple[ReadingKey, ...] = ()


@dataclass(frozen=True)
class Crossing:
    """Where a trace first passed `level` (in its unit), `at` seconds from its first sample; `past`: it never did.

    `times` counts how often it passed it that way.
    """

    key: ReadingKey
    quantity: str
    side: Literal["over", "under"]
    level: float
    at: float
    past: bool = False
    times: int = 1


@dataclass(frozen=True)
class Marked:
    """A line of a logger's file where its trace was highest, lowest, or had just passed a limit of `quantity`."""

    what: Literal["highest", "lowest", "passed"]
    line: int
    quantity: str = ""


@dataclass(frozen=True)
class TraceShown:
    """A trace thinned for a picture: stretches of (seconds, value), parted by its gaps. `over`, `under`: highest and
    lowest are only bounds. `apart` samples stand apart from those around them: (seconds, value, how far off) of the
    first few, and how many there are."""

    key: ReadingKey
    unit: str
    stretches: tuple[tuple[tuple[float, float], ...], ...]
    samples: int
    ends: float
    highest: float | None
    lowest: float | None
    over: bool = False
    under: bool = False
    gaps: tuple[tuple[float, float], ...] = ()
    crossings: tuple[Crossing, ...] = ()
    marks: tuple[Marked, ...] = ()
    clock: float | None = None  # seconds after midnight of its first sample, where its file has clock times
    apart: tuple[tuple[float, float, float], ...] = ()
    apart_in_all: int = 0


@dataclass(frozen=True)
class PassValue:
    """The quantity for one pass (and part): its value, the readings it came from, whether it is left out."""

    specimen: str
    pass_: str
    part: str
    value: float | None
    limit: Limit | None
    keys: tuple[ReadingKey, ...]
    excluded: str = ""  # the exclusion's id
    word: str = ""  # yes, no or the grade
    absent_because: str = ""
    steps: tuple[Step, ...] = ()
    together: bool = False  # worked out from whole quantities, whose passes aren't the same: not one pass of its own
    of_parts: tuple[PassValue, ...] = ()  # the parts it was joined from, each worked out by itself


@dataclass(frozen=True)
class Estimate:
    """Value and uncertainty of a measured result. `scatter` is the standard deviation between its own passes."""

    value: float | None
    unit: str
    scatter: float | None
    degrees: float | None
    contributions: tuple[Contribution, ...]
    steps: tuple[float, ...]  # c·δ of the readings behind one pass
    limit: Limit | None = None
    unknown_accuracy: tuple[str, ...] = ()  # instruments whose accuracy is unknown
    assumed_step: bool = False  # the step was read off the written decimals: no instrument named
    decimals: int | None = None  # the most its readings were written with, where they are in its own unit
    effective_degrees: int | None = None  # after JCGM 100, G.4.1, to be shown; None for infinite
    step: bool = False  # its unit counts steps on a scale: a rise in temperature, a difference of two levels


@dataclass(frozen=True)
class Stands:
    """How one contender stood to another, where only an order was seen. `follows`: through others, not side by side."""

    other: str
    title: str
    told: Told
    degree: Degree
    follows: bool


@dataclass(frozen=True)
class InUnit:
    """A result put in another unit that the author wants shown; each is rounded for itself."""

    unit: str
    value: float | None
    u: float | None
    low: float | None
    high: float | None


@dataclass(frozen=True)
class Result:
    test: str
    quantity: str
    contender: str
    part: str
    kind: ResultKind
    estimate: Estimate | None  # None for yes/no and grade, and where nothing was read
    u: float | None
    low: float | None
    high: float | None
    covers: Literal["instrument and scatter", "instrument", "tries", "events"]
    at_least: bool
    why_no_u: str
    by_pass: tuple[PassValue, ...]
    passes: int  # used
    excluded: int
    without: float | None  # the value with every excluded pass put back, None where none was left out
    rank: tuple[int, int] | None
    blocked: str
    yes: int | None
    of: int | None
    grade: str
    grades: Mapping[str, int]
    missing: str  # why there is no result: "not yet tested", "not read", the reasons given
    rests_on: Keys
    without_limit: Limit | None = None  # `without` is then only a bound
    also: tuple[InUnit, ...] = ()  # the same in the other units the author shows
    running: str = ""  # the day since when its run goes on, as typed: all of it is only so far
    stands: tuple[Stands, ...] = ()  # kind order: to each it was compared with, in the campaign's order
    level: int | None = None  # kind order: how many stand below it on the longest chain
    laboratory: Laboratory | None = None
    draws: ByDraws | None = None  # what joint draws said, where first order might not do; used where they were needed
    by_specimens: bool = False  # what scatters are specimens, one value each: some contender was bought more than once


@dataclass(frozen=True)
class Comparison:
    test: str
    quantity: str
    part: str
    first: str
    second: str
    difference: float | None
    u: float | None
    low: float | None
    high: float | None
    unit: str
    decision: Decision
    resolved: bool
    differed: bool | None
    differed_low: float | None
    differed_high: float | None
    favours: str | None
    beyond: bool | None
    reason: Reason
    settle: Settle | None
    rests_on: Keys
    within: Within = ""  # taken within rounds or sessions, so not the difference of the two values shown
    seen: Between | None = None  # kind order: what all looks say of the pair
    percent: Percent | None = None  # the difference in percent of `second`'s result
    draws: ByDraws | None = None


@dataclass(frozen=True)
class PairWithout:
    """What a pair would come to with the excluded passes put back."""

    first: str
    second: str
    decision: Decision
    favours: str | None


@dataclass(frozen=True)
class FirstPlace:
    test: str
    quantity: str
    part: str
    winner: str | None
    may_be_first: tuple[str, ...]
    unranked: tuple[str, ...]
    reason: Reason
    rests_on: Keys
    order_changes_without: bool | None = None  # would putting the excluded passes back change the ranks
    ranks_without: Mapping[str, tuple[int, int]] = field(default_factory=dict)  # those that would then change
    pairs_without: tuple[PairWithout, ...] = ()  # those that would then be decided otherwise
    hangs_on: HangsOn | None = None  # None too where draws decided, or passes are very many


@dataclass(frozen=True)
class CriterionUse:
    quantity: str
    group: str
    weight: float | None
    known_scatter: bool


@dataclass(frozen=True)
class Verdict:
    """The first, plain verdict: conditions, who beat whom on what, value frontier, the author's own words weighed."""

    conditions: tuple[MustOutcome, ...]
    criteria: tuple[CriterionUse, ...]
    value: tuple[ValueForMoney, ...]
    value_quantities: tuple[str, ...]  # what "better" is judged on in the frontier
    winner: str | None
    rests_on: Keys
    overall: Overall | None = None  # where the author set value functions, and two contenders can be weighed
    cost: CostOfUse | None = None  # where the author states a use
    prices_otherwise: tuple[PriceOtherwise, ...] = ()  # further prices that would change what is said of money


@dataclass(frozen=True)
class ScatterUsed:
    """The scatter a quantity was judged with, and what its passes show by themselves.

    `seen` is None where nothing was judged by it. `winner_if_own`: where the passes contradict one scatter for all, who
    would be alone in first place, had each been taken by its own. `past`: the campaigns whose passes it rests on too.
    """

    quantity: str
    part: str
    found: ScatterFound
    seen: PassesSeen | None = None
    winner_if_own: str | None = None
    past: tuple[PastScatter, ...] = ()


@dataclass(frozen=True)
class Evaluation:
    """Everything worked out about one campaign. `of` finds one result."""

    campaign: str
    results: tuple[Result, ...]
    comparisons: tuple[Comparison, ...]
    firsts: tuple[FirstPlace, ...]
    claims: tuple[ClaimOutcome, ...]
    verdict: Verdict | None
    caveats: tuple[Caveat, ...]
    scatters: tuple[ScatterUsed, ...]
    findings: tuple[Finding, ...] = ()
    upstream: Mapping[str, frozenset[str]] = field(default_factory=dict)  # quantity → itself and what feeds it
    traces: tuple[TraceShown, ...] = ()
    looked_back: tuple[LookedBack, ...] = ()  # of each quantity whose method asks for past campaigns

    def of(self, quantity: str, contender: str, part: str = "") -> Result | None:
        found = (r for r in self.results if (r.quantity, r.contender, r.part) == (quantity, contender, part))
        return next(found, None)

    def caveats_on(self, quantity: str, rests_on: Keys) -> tuple[Caveat, ...]:
        """The caveats that limit what `quantity`, resting on these readings, means; in their numbers' order."""
        fed_by = self.upstream.get(quantity, frozenset({quantity}))
        return tuple(c for c in self.caveats if bears_on(c, fed_by, rests_on))


def caveats_on_cost(evaluation: Evaluation, cost: CostOfUse) -> tuple[Caveat, ...]:
    """The caveats that limit what the cost of a use means; in their numbers' order."""
    return tuple(c for c in evaluation.caveats if bears_on(c, cost.stands_on, cost.rests_on))


def bears_on(caveat: Caveat, fed_by: frozenset[str], rests_on: Keys) -> bool:
    """The one rule by which a caveat reaches what is computed.

    It must touch a reading the thing rests on, and where the caveat is narrowed to quantities, one of them must be the
    thing's own quantity or one that feeds it (`fed_by`).
    """
    return bool(caveat.touches & rests_on) and (not caveat.quantities or bool(fed_by & set(caveat.quantities)))
