"""What a mark says of itself to whoever explores a chart: a result, or one of its passes."""

from __future__ import annotations

from reportgen.campaign.declared import Contender
from reportgen.charts.telling import printed
from reportgen.charts.words import words
from reportgen.evaluation.evaluated import PassValue, Result
from reportgen.prose.specimens import specimen_name
from reportgen.wording import interval


def of_result(contender: Contender, result: Result) -> str:
    """ "Corvane Sol: 14.20 g (13.60 to 14.80)", as the table of values has it."""
    return words("alt.row", name=contender.title, said=printed(result))


def of_pass(contender: Contender, result: Result, p: PassValue, value: str = "") -> str:
    """ "Corvane Sol, pass 2: 14.5 g", with its unit where there are several; `value` where it is no number."""
    unit = result.estimate.unit if result.estimate else ""
    name = contender.title
    if len({one.specimen for one in result.by_pass}) > 1:
        name = words("met.specimen", name=name, specimen=specimen_name(contender, p.specimen))
    said = value or interval.value_only(p.value, None, unit, p.limit)
    return words("met.left-out" if p.excluded else "met.pass", name=name, n=p.pass_, said=said)
