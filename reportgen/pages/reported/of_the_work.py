"""Items that are about the work: where, by which methods, on what, when, and how that was picked."""

from __future__ import annotations

from collections.abc import Iterator

from reportgen.addresses import from_to, method_page
from reportgen.campaign.declared import Contender
from reportgen.pages.reported.item import Found, few, of_contenders, of_tests, to, to_sheets
from reportgen.pages.told import Told
from reportgen.pages.words import words, words_of
from reportgen.prose.specimens import day_of, noted
from reportgen.theme import Link
from reportgen.wording.count import in_words


def place(told: Told, page: str) -> Found:
    """c) Where the work was done."""
    where = noted(told.campaign.place)
    said = words("items.c.place", place=where) if where else words("items.c.nowhere")
    elsewhere = (words("items.c.laboratory", laboratory=name) for name in laboratories(told))
    return Found("here" if where else "missing", (said, *elsewhere), (to(told, page, "method"),))


def laboratories(told: Told) -> tuple[str, ...]:
    """The laboratories that analysed samples, each once."""
    return tuple(dict.fromkeys(t.laboratory.name for t in told.campaign.tests if t.laboratory))


def methods(told: Told, page: str) -> Found:
    """f) The methods used."""
    campaign = told.campaign
    without = [t for t in campaign.tests if f"{t.method}.{t.method_version}" not in campaign.methods]
    named = sorted(campaign.methods.values(), key=lambda m: (m.title, m.version))
    ways = tuple(Link(m.title, from_to(page, method_page(m.id, m.version))) for m in named)
    if not without:
        return Found("here", (words("items.f.all"),), ways)
    ways = (*ways, to(told, page, "method"))
    if len(without) == len(campaign.tests):
        return Found("missing", (words("items.f.none"),), ways)
    return Found("part", (words("items.f.some", tests=of_tests(without)),), ways)


def things_tested(told: Told, page: str) -> Found:
    """g) Description, unambiguous identification and condition of what was tested."""
    contenders = told.campaign.contenders
    nameless = [c for c in contenders if not _identified(c)]
    untold = [c for c in contenders if not _condition_told(c)]
    n = len(contenders)
    sentences = (
        words_of(n, "items.g.sheets", count=in_words(n)),
        words("items.g.not-identified", names=of_contenders(nameless)) if nameless else words("items.g.identified"),
        words("items.g.no-condition", names=of_contenders(untold)) if untold else words("items.g.condition"),
    )
    return Found("part" if nameless or untold else "here", sentences, _sheets(told, page))


def _identified(contender: Contender) -> bool:
    return any(map(noted, (contender.model, contender.gtin, *(s.serial for s in contender.specimens))))


def _condition_told(contender: Contender) -> bool:
    return bool(contender.as_received or contender.photos or any(s.as_received for s in contender.specimens))


def _sheets(told: Told, page: str) -> tuple[Link, ...]:
    contenders = told.campaign.contenders
    return to_sheets(told, page, contenders) if few(contenders) else (to(told, page, "answer", "contenders"),)


def arrived(told: Told, page: str) -> Found:
    """h) The date of receipt, and of sampling."""
    contenders = told.campaign.contenders
    undated = [c for c in contenders if not _dated(c)]
    sampled, ways = tuple(_sampled(told)), _sheets(told, page)
    if len(undated) == len(contenders):
        return Found("missing", (words("items.h.none"), *sampled), ways)
    said = words("items.h.some", names=of_contenders(undated)) if undated else words("items.h.bought")
    return Found("part", (said, *sampled), ways)


def _dated(contender: Contender) -> bool:
    days = (contender.bought_on, *(s.bought_on for s in contender.specimens))
    return any(day is not None and day.last for day in days)


def _sampled(told: Told) -> Iterator[str]:
    taken: dict[str, bool] = {}
    for test in told.campaign.tests:
        if test.laboratory:
            name = test.laboratory.name
            taken[name] = bool(test.laboratory.taken) and taken.get(name, True)
    for name, said in taken.items():
        yield words("items.h.taken" if said else "items.h.not-taken", laboratory=name)


def done_on(told: Told, page: str) -> Found:
    """i) The days of the work."""
    campaign = told.campaign
    running = [t for t in campaign.tests if t.running]
    still = words("items.i.running", tests=of_tests(running)) if running else ""
    if campaign.tested is None or not campaign.tested.last:
        return Found("missing", (words("items.i.never"), still))
    return Found("here", (words("items.i.days", days=day_of(campaign.tested)), still), (to(told, page, "method"),))


def picked(told: Told, page: str) -> Found:
    """k) The sampling plan and method: here at least where things came from."""
    contenders = told.campaign.contenders
    supplied = [c for c in contenders if c.supplied_by]
    unsaid = [c for c in contenders if not c.supplied_by and not _where(c)]
    sentences = (
        words("items.k.plan"),
        words("items.k.not-where", names=of_contenders(unsaid)) if unsaid else words("items.k.where"),
        words("items.k.supplied", names=of_contenders(supplied)) if supplied else "",
    )
    return Found("missing" if len(unsaid) == len(contenders) else "part", sentences, _sheets(told, page))


def _where(contender: Contender) -> bool:
    shops = (
        contender.bought_where,
        *(s.bought_where for s in contender.specimens),
        *(p.where for p in contender.prices),
    )
    return any(map(noted, shops))
