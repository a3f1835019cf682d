"""What stands below a table of results: what its intervals hold and leave out, who was run once, who has no result."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation, Result
from reportgen.evaluation.found_between import found_between
from reportgen.evaluation.no_value import nothing_read, without_a_value
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.prose.amounts import also
from reportgen.prose.counting import counting, yes_no
from reportgen.prose.once import single_reading
from reportgen.prose.standing import name, standing
from reportgen.prose.unranked import missing
from reportgen.prose.yardstick import several_specimens
from reportgen.wording.decision import covers
from reportgen.wording.language import say, say_of
from reportgen.wording.listing import and_list, commas
from reportgen.wording.quoting import quoted
from reportgen.wording.reason import why_absent
from reportgen.wording.sentence import inside, paragraph, sentence

ASSUMED = ("constant", "assumption")  # sorts of cause that no instrument has


def covers_line(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """What the intervals of a quantity hold; empty where it has none."""
    s = standing(campaign, evaluation, quantity, part)
    within = [r for r in s.results if r.low is not None and r.high is not None]  # a bound has no interval
    apart = several_specimens(s)
    stated = s.scatter is not None and s.scatter.origin == "declared"
    past = stated and s.scatter is not None and s.scatter.declared_by == "past campaigns"
    between = "specimens" if apart else "scatter-past" if past else "scatter-stated" if stated else "scatter"
    kinds = dict.fromkeys((_covered(r), r.at_least, _allowed_for(r, between)) for r in within)
    several = say("covers.specimens") if within and apart else ""
    return paragraph(*(covers(code, at_least, what) for code, at_least, what in kinds), several)


def _allowed_for(r: Result, between: str) -> tuple[str, ...]:
    """What an interval with scatter in it allows for, in the order it is told; `between` says which scatter."""
    if r.covers != "instrument and scatter" or r.estimate is None:
        return ()
    sorts = {c.source.sort for c in r.estimate.contributions}
    assumed = [sort for sort in ASSUMED if sort in sorts]
    read = ["instrument"] if sorts - {*ASSUMED, "scatter", "bend"} else []
    return (*read, *assumed, between)


def _covered(r: Result) -> str:
    """What its interval holds; of a laboratory's value, what the laboratory says of it, or its report's rounding."""
    if r.covers == "instrument" and read_roughly(r):
        return "reading"
    if r.laboratory is None or r.covers != "instrument":
        return r.covers
    return "laboratory" if r.laboratory.uncertainty or found_between(r) else "rounding"


def read_roughly(r: Result) -> bool:
    """Whether how roughly it was read is part of its interval: `about 250`, `250 ±10`."""
    return r.estimate is not None and any(c.source.sort == "rough" for c in r.estimate.contributions)


def instrument_line(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """What isn't known of the instruments behind a quantity; empty where everything is."""
    estimates = [r.estimate for r in standing(campaign, evaluation, quantity, part).results if r.estimate]
    unknown = dict.fromkeys(i for e in estimates for i in e.unknown_accuracy)
    titles = [_named(inside(campaign.instruments[i].title)) for i in unknown]
    return paragraph(
        say_of(len(titles), "note.unknown-accuracy", instruments=and_list(titles)) if titles else "",
        say("note.assumed-step") if any(e.assumed_step for e in estimates) else "",
    )


def _named(title: str) -> str:
    """A title inside a sentence, in quotes where a comma of its own would break the sentence up."""
    return quoted(title) if "," in title else title


def also_line(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """The results in the other units their author shows: "Also: Corvane 0.511 oz, Ostler 0.518 oz."; "" without any."""
    results = [r for r in standing(campaign, evaluation, quantity, part).results if r.also]
    values = [say("value-of", name=name(campaign, r.contender), value=also(r)) for r in results]
    return sentence(say("note.also", values=commas(values))) if values else ""


def single_line(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """Which contenders were run once; empty where none was."""
    return sentence(single_reading(standing(campaign, evaluation, quantity, part)))


def missing_line(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """Who has no result and why; empty where everyone has one."""
    return paragraph(*missing(standing(campaign, evaluation, quantity, part)))


def lost_line(campaign: Campaign, results: Sequence[Result], readings: Mapping[ReadingKey, Reading]) -> str:
    """Which passes were read and gave no value, and why; empty where every one did."""
    said = []
    for r in results:
        for one in without_a_value(r, readings):
            zero, why = nothing_read(one, readings), why_absent(one.absent_because)
            why = say("no-value.nothing-read", why=why, text=quoted(zero.text)) if zero else why
            said.append(say("no-value.pass", n=one.pass_, name=name(campaign, r.contender), why=why))
    return paragraph(*said)


def counting_line(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """A yes/no, count or grade quantity as one sentence."""
    return sentence(counting(standing(campaign, evaluation, quantity, part)))


def yes_no_line(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """A yes/no quantity as one sentence, with what so few tries leave open."""
    s = standing(campaign, evaluation, quantity, part)
    return sentence(yes_no(s, [r for r in s.results if not r.missing]))
