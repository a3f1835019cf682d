"""The preview picture of a campaign: its question, its answer, and the first thing that was measured of several."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign, Quantity
from reportgen.charts.order import in_order
from reportgen.evaluation import evaluated
from reportgen.evaluation.evaluated import Evaluation
from reportgen.marks import mark_of
from reportgen.pages.preview.sheet import Result, Told, sheet_of
from reportgen.pages.titles import heading
from reportgen.pages.told import Told as ToldOfPages
from reportgen.pages.words import words
from reportgen.prose.amounts import short
from reportgen.prose.sentences import campaign_answer
from reportgen.prose.specimens import day_of
from reportgen.theme import render
from reportgen.theme.colours import light_colours
from reportgen.wording.count import whole
from reportgen.wording.decision import direction
from reportgen.wording.invented import invented


def preview_of(told: ToldOfPages) -> str:
    """The drawing, an SVG."""
    campaign, evaluation, publication = told.campaign, told.evaluation, told.publication
    leading = _leading(campaign, evaluation)
    quantity, results = leading or (None, ())
    said = Told(
        publication=publication.title,
        date=words("preview.tested", day=day_of(campaign.tested)) if campaign.tested else "",
        title=campaign.title,
        answer=campaign_answer(campaign, evaluation),
        invented=invented(campaign.invented or publication.invented),
        measured=heading(quantity) if quantity else "",
        way=direction(quantity.better) if quantity and quantity.better != "neither" else "",
        results=results,
        more=words("preview.more", n=whole(len(results))) if results else "",
    )
    return render(
        told.theme,
        "preview.svg",
        sheet_of(said, light_colours(told.theme), publication.speaks.right_to_left),
        "preview.svg",
    )


def leading_quantity(campaign: Campaign, evaluation: Evaluation) -> Quantity | None:
    """What the picture shows results of: the first headline quantity that two contenders have a number in."""
    found = _leading(campaign, evaluation)
    return found[0] if found else None


def _leading(campaign: Campaign, evaluation: Evaluation) -> tuple[Quantity, tuple[Result, ...]] | None:
    place = {c.id: n for n, c in enumerate(campaign.contenders)}
    for test in campaign.tests:
        quantity = campaign.quantity(test.headline)
        of = [r for r in evaluation.results if r.quantity == quantity.id and r.kind == "measured" and not r.part]
        results = [made for r in in_order(quantity, of) if (made := _result(campaign, place, r)) is not None]
        if len([r for r in results if not r.limit]) > 1:
            return quantity, tuple(results)
    return None


def _result(campaign: Campaign, place: dict[str, int], r: evaluated.Result) -> Result | None:
    e = r.estimate
    if e is None or e.value is None:
        return None
    low, high = (None, None) if e.limit else (r.low, r.high)
    title = campaign.contender(r.contender).title
    return Result(title, mark_of(place[r.contender]), short(r), e.value, low, high, e.limit)
