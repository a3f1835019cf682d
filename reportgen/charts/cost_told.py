"""Lines of cost in words: who is cheapest where, and each contender's line."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign
from reportgen.charts import cost
from reportgen.charts.figure import Figure
from reportgen.charts.telling import alternative
from reportgen.charts.words import sentence, words
from reportgen.evaluation.evaluated import Evaluation
from reportgen.evaluation.money import price_of
from reportgen.judgement.money.break_even import CostLine
from reportgen.prose.cost import cheapest_line, in_all, of_one_use
from reportgen.prose.money import price_noted
from reportgen.prose.out import name_or_out, out_by
from reportgen.prose.standing import name
from reportgen.wording.count import whole
from reportgen.wording.language import say, say_of
from reportgen.wording.listing import commas

ADDRESS = "cost-of-use"


def figure(campaign: Campaign, evaluation: Evaluation) -> Figure | None:
    """The chart of what using costs; None where there aren't two lines."""
    found = evaluation.verdict.cost if evaluation.verdict else None
    if found is None or len(cost.lines_of_cost(campaign, found)) < 2:
        return None
    title, cheapest = say("cost.chart"), cheapest_line(campaign, evaluation, found)
    prices = {c.id: price_noted(price) for c in campaign.contenders if (price := price_of(c))}
    rows = tuple(
        (
            name_or_out(campaign, evaluation, line.name),
            prices.get(line.name, ""),
            of_one_use(line, found.currency),
            in_all(line, found.high, found.currency),
        )
        for line in found.lines
    )
    alt = alternative(title, cheapest, [(row[0], commas(row[1:4])) for row in rows])
    headings = (words("contender"), words("price"), say("cost.chart.one"),
                say("cost.in-all", uses=whole(round(found.high))))  # fmt: skip
    out = {line.name: out_by(campaign, evaluation, line.name) for line in found.lines}
    gone = [say("cost.chart.key.out", name=name(campaign, c), out=why) for c, why in out.items() if why]

    def met(line: CostLine, uses: float) -> str:
        who, total = name_or_out(campaign, evaluation, line.name), in_all(line, uses, found.currency)
        return say_of(round(uses), "chart.met.uses", name=who, uses=whole(round(uses)), said=total)

    picture = cost.drawing(campaign, found, alt, {c for c, why in out.items() if why}, met)
    key = sentence([say("cost.chart.key"), *gone])
    return Figure(
        ADDRESS,
        picture.svg,
        alt,
        title,
        cheapest,
        rows,
        headings,
        key,
        explored=picture.explored,
    )
