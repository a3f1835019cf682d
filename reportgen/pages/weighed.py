"""The verdict over weighed criteria, as the campaign's page shows it: pairs, shares, readers, what would change it."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.charts.figure import Figure
from reportgen.charts.weights_told import ADDRESS, wishes_of
from reportgen.judgement.verdict.overall import Lead, Overall, PairIndex
from reportgen.pages.criteria import CriteriaShown, criteria_of
from reportgen.pages.named import Named, named
from reportgen.pages.pointing import Pointing, pointing_of
from reportgen.pages.titles import heading
from reportgen.pages.told import Told
from reportgen.prose import overall as prose
from reportgen.prose.leads import firmness, strength
from reportgen.prose.turning import turn_intro, turn_lines, without_line
from reportgen.prose.weights import group_titles, weights_in_words
from reportgen.wording.of_hundred import of_hundred
from reportgen.wording.sentence import capital

_SHOWN = 6  # pairs; of more, only those of who leads stand open


@dataclass(frozen=True)
class PairRow:
    """`ahead` is worth more than `behind` in so many draws; `firmness` in a word or two."""

    ahead: Named
    behind: Named
    draws: str
    firmness: str


@dataclass(frozen=True)
class ShareRow:
    """How often one comes first."""

    contender: Named
    first: str


@dataclass(frozen=True)
class LeadRow:
    """Who leads under one condition: a reader's weights, or a criterion left out. `sign` is its disc in the picture."""

    sign: str
    what: str
    weights: str
    leader: Named | None
    firmness: str


@dataclass(frozen=True)
class WeighedShown:
    """All of it. `pointing` is what a script is told; without scripts everything else stands by itself."""

    how: str
    pairs: tuple[PairRow, ...]
    more_pairs: tuple[PairRow, ...]
    shares: tuple[ShareRow, ...]
    shares_note: str
    criteria: CriteriaShown
    figure: Figure | None
    pointing: Pointing | None
    turns_intro: str
    turns: tuple[str, ...]
    without_says: str
    without: tuple[LeadRow, ...]
    readers: tuple[LeadRow, ...]


def weighed_of(told: Told, overall: Overall, page: str) -> WeighedShown:
    """The view of what was weighed."""
    pairs = tuple(_pair(told, overall, p, page) for p in _in_order(overall))
    leading = overall.lead.leader
    open_ = pairs if len(pairs) <= _SHOWN else tuple(p for p in pairs if leading in (p.ahead.id, p.behind.id))
    figure = told.figures.get(ADDRESS)
    return WeighedShown(
        how=prose.how_weighed(told.campaign, overall),
        pairs=open_,
        more_pairs=tuple(p for p in pairs if p not in open_),
        shares=tuple(_share(told, overall, c, page) for c in _by_share(overall)),
        shares_note=prose.how_shared(overall),
        criteria=criteria_of(told, page),
        figure=figure,
        pointing=pointing_of(told.campaign, overall) if figure else None,
        turns_intro=turn_intro(overall),
        turns=turn_lines(told.campaign, overall),
        without_says=without_line(told.campaign, overall),
        without=tuple(
            _lead(told, page, w.lead, heading(told.campaign.quantity(w.quantity))) for w in overall.without
        ) if len(overall.without) > 1 else (),
        readers=_readers(told, overall, page),
    )  # fmt: skip


def _by_share(overall: Overall) -> list[str]:
    return sorted(overall.contenders, key=lambda c: -overall.places[c][0] if overall.places.get(c) else 0.0)


def _in_order(overall: Overall) -> list[PairIndex]:
    """Pairs with whoever is ahead first, by who comes first most often."""
    place = {c: n for n, c in enumerate(_by_share(overall))}
    turned = [p if p.index >= 0.5 else PairIndex(p.second, p.first, 1.0 - p.index) for p in overall.index]
    return sorted(turned, key=lambda p: (min(place[p.first], place[p.second]), max(place[p.first], place[p.second])))


def _pair(told: Told, overall: Overall, pair: PairIndex, page: str) -> PairRow:
    ahead, behind = named(told.campaign, pair.first, page), named(told.campaign, pair.second, page)
    return PairRow(ahead, behind, of_hundred(pair.index), prose.pair_firmness(overall, pair))


def _share(told: Told, overall: Overall, contender: str, page: str) -> ShareRow:
    return ShareRow(named(told.campaign, contender, page), of_hundred(overall.places[contender][0]))


def _lead(told: Told, page: str, lead: Lead, what: str, weights: str = "", sign: str = "") -> LeadRow:
    leads = lead.leader is not None and strength(lead) != "level"
    leader = named(told.campaign, lead.leader, page) if lead.leader and leads else None
    return LeadRow(sign, what, weights, leader, firmness(lead))


def _readers(told: Told, overall: Overall, page: str) -> tuple[LeadRow, ...]:
    titles = group_titles(told.campaign, overall.groups)
    signs = [w.sign for w in wishes_of(overall)][-len(overall.readers) :] if overall.readers else []
    return tuple(
        _lead(told, page, r.lead, capital(r.name), weights_in_words(titles, r.weights), sign)
        for r, sign in zip(overall.readers, signs, strict=True)
    )
