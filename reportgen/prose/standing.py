"""All that was found about one quantity, gathered for the sentences that speak of it."""

from __future__ import annotations

from dataclasses import dataclass
from unicodedata import bidirectional

from reportgen.addresses import pair_anchor, pairs_anchor, test_page
from reportgen.campaign.declared import Campaign, Quantity
from reportgen.evaluation.evaluated import Comparison, Evaluation, FirstPlace, Result
from reportgen.judgement.measured import ScatterFound
from reportgen.wording.lead import led
from reportgen.wording.listing import and_list


@dataclass(frozen=True)
class Standing:
    """One quantity (and part) of a campaign: its results in the campaign's order, comparisons, first place, scatter."""

    campaign: Campaign
    quantity: Quantity
    part: str
    results: tuple[Result, ...]
    comparisons: tuple[Comparison, ...]
    first: FirstPlace | None
    scatter: ScatterFound | None

    @property
    def ranked(self) -> tuple[Result, ...]:
        """Those with a rank, in the campaign's order."""
        return tuple(r for r in self.results if r.rank is not None)

    def result(self, contender: str) -> Result:
        return next(r for r in self.results if r.contender == contender)

    def of_pair(self, pair: Comparison) -> tuple[Result, Result]:
        """The two results that a comparison compares."""
        return self.result(pair.first), self.result(pair.second)

    def pair(self, one: str, other: str) -> Comparison | None:
        """The comparison of two contenders, whichever stands first in it."""
        return next((c for c in self.comparisons if {c.first, c.second} == {one, other}), None)

    @property
    def reasons(self) -> str:
        """The address of the table that holds each against each; "" where nothing was compared."""
        page = test_page(self.campaign.id, self.quantity.test)
        return f"{page}#{pairs_anchor(self.quantity.id, self.part)}" if self.comparisons else ""

    def reason(self, one: str, other: str) -> str:
        """The address of the row of that table about two contenders; "" where they weren't compared."""
        pair = self.pair(one, other)
        page = test_page(self.campaign.id, self.quantity.test)
        return f"{page}#{pair_anchor(self.quantity.id, pair.first, pair.second, self.part)}" if pair else ""

    def led(self, text: str) -> str:
        """Words that say who is ahead, leading to the table of pairs."""
        return led(text, self.reasons)

    def led_to(self, text: str, one: str, other: str) -> str:
        """The same of two contenders, leading to their row."""
        return led(text, self.reason(one, other))


def standing(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> Standing:
    """Gathers what was found about one quantity. Raises StopIteration for a quantity the campaign lacks."""
    places = {c.id: n for n, c in enumerate(campaign.contenders)}
    results = [r for r in evaluation.results if (r.quantity, r.part) == (quantity, part)]
    return Standing(
        campaign,
        campaign.quantity(quantity),
        part,
        tuple(sorted(results, key=lambda r: places.get(r.contender, len(places)))),
        tuple(c for c in evaluation.comparisons if (c.quantity, c.part) == (quantity, part)),
        next((f for f in evaluation.firsts if (f.quantity, f.part) == (quantity, part)), None),
        next((s.found for s in evaluation.scatters if (s.quantity, s.part) == (quantity, part)), None),
    )


def name(campaign: Campaign, contender: str) -> str:
    """A contender as the campaign calls it; a name that runs from right to left keeps its neighbours in their order."""
    title = next((c.title for c in campaign.contenders if c.id == contender), contender)
    return f"\u2068{title}\u2069" if any(bidirectional(sign) in ("R", "AL") for sign in title) else title


def names(campaign: Campaign, contenders: tuple[str, ...] | list[str]) -> str:
    """Several contenders as a list in a sentence."""
    return and_list([name(campaign, c) for c in contenders])
