"""Who leads at which weights, in words: the finding, the text alternative, the table."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.campaign.declared import Campaign
from reportgen.charts import weights
from reportgen.charts.figure import Figure
from reportgen.charts.telling import alternative
from reportgen.charts.weight_space import counts, drawn
from reportgen.charts.weights import Wish
from reportgen.charts.words import sentence, words
from reportgen.evaluation.evaluated import Evaluation
from reportgen.judgement.verdict.overall import Cell, Overall, WeightMap
from reportgen.prose.leads import firmness, strength
from reportgen.prose.weights import group_titles
from reportgen.wording.count import whole
from reportgen.wording.interval import percent
from reportgen.wording.listing import commas, semicolons
from reportgen.wording.sentence import capital

ADDRESS = "overall-weights"
_ROWS = {2: 10, 3: 5}  # steps from 0 to 1 in the table: 11 rows for two groups, 21 for three


def figure(campaign: Campaign, evaluation: Evaluation) -> Figure | None:
    """The picture of the weights; None where nothing is weighed over two groups or three."""
    overall = evaluation.verdict.overall if evaluation.verdict else None
    of = overall.map if overall else None
    if (
        overall is None
        or of is None
        or len(of.groups) not in _ROWS
        or all(strength(c.lead) == "none" for c in of.cells)
    ):
        return None
    title, found = words("weights.title"), _found(campaign, of)
    titles = group_titles(campaign, of.groups)
    rows = [c for c in of.cells if _in_table(c, of)]
    table = tuple((*(percent(w) for w in c.weights), *_led(campaign, c)) for c in rows)
    headings = (*(capital(t) for t in titles), words("weights.leads"), words("weights.firmness"))
    alt = alternative(title, found, ())
    wishes = wishes_of(overall)
    svg = weights.drawing(campaign, overall, of, wishes, alt).svg
    return Figure(ADDRESS, svg, alt, title, found, table, headings, _key(overall, of, wishes))


def wishes_of(overall: Overall) -> tuple[Wish, ...]:
    """The author's own weights and those of each reader, with the sign each bears in picture and table."""
    ours = [Wish(words("weights.ours"), overall.given)] if overall.given else []
    return (*ours, *(Wish(whole(n), r.weights) for n, r in enumerate(overall.readers, start=1)))


def _led(campaign: Campaign, cell: Cell) -> tuple[str, str]:
    how = strength(cell.lead)
    leader = "" if how in ("level", "none") or cell.lead.leader is None else campaign.contender(cell.lead.leader).title
    return leader, firmness(cell.lead)


def _in_table(cell: Cell, of: WeightMap) -> bool:
    """Whether the table has a row for a cell: it holds round weights, or all where the steps fit no round ones."""
    wanted = _ROWS[len(of.groups)]
    every = of.steps // wanted if of.steps % wanted == 0 else 1
    return all(n % every == 0 for n in counts(cell.weights, of.steps))


def _found(campaign: Campaign, of: WeightMap) -> str:
    """How many of the weightings tried each contender leads at, and at how many firmly."""
    tried = len(of.cells)
    said = []
    for c in campaign.contenders:
        mine = [cell for cell in of.cells if cell.lead.leader == c.id and strength(cell.lead) != "level"]
        firm = sum(strength(cell.lead) == "firm" for cell in mine)
        if len(mine) == tried:
            key = (
                "weights.found.all.firm" if firm == tried else "weights.found.all" if firm else "weights.found.all.open"
            )
            return words(key, name=c.title, tried=whole(tried), firm=whole(firm))
        if mine:
            key = "weights.found.firm" if firm else "weights.found.open"
            said.append(words(key, name=c.title, n=whole(len(mine)), firm=whole(firm)))
    level = sum(strength(cell.lead) == "level" for cell in of.cells)
    if level == tried:
        return words("weights.found.nobody", tried=whole(tried))
    said += [words("weights.found.level", n=whole(level))] if level else []
    return words("weights.found", tried=whole(tried), said=semicolons(said))


def _key(overall: Overall, of: WeightMap, wishes: Sequence[Wish]) -> str:
    marks = sum(drawn(cell.weights, of.steps) for cell in of.cells)
    how = {strength(cell.lead) for cell in of.cells}
    named = [words("weights.our-own")] if overall.given else []
    named += [r.name for r in overall.readers]
    names = [words("weights.wish", sign=w.sign, name=n) for w, n in zip(wishes, named, strict=True)]
    return sentence([
        words("key.weights.line" if len(of.groups) == 2 else "key.weights"),
        words("key.weights.some", n=whole(marks), tried=whole(len(of.cells))) if marks < len(of.cells) else "",
        words("key.weights.firm") if "firm" in how else "",
        words("key.weights.open") if how & {"nearly", "mostly", "often", "slightly"} else "",
        words("key.weights.level") if "level" in how else "",
        words("key.weights.wishes", names=commas(names)) if names else "",
    ])  # fmt: skip
