"""The method of a campaign in one minute: plain sentences from what was declared and read, each with its way on."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from reportgen.addresses import campaign_page, from_to
from reportgen.campaign.declared import Contender, Test
from reportgen.pages.told import Told
from reportgen.pages.words import words, words_of
from reportgen.theme import Link
from reportgen.wording.count import counted, in_words
from reportgen.wording.listing import and_list, labelled, semicolons
from reportgen.wording.quoting import in_sentence
from reportgen.wording.sentence import paragraph

NAMED_AT_MOST = 5  # more names than these make a sentence too long to be read aloud


@dataclass(frozen=True)
class MinuteLine:
    """One or two sentences on one matter; `way` leads to where all of it stands, None where nothing more does."""

    says: str
    way: Link | None


def in_one_minute(told: Told, page: str) -> tuple[MinuteLine, ...]:
    """What was bought, tested, with what, in which order, how it is ranked, and what it can't tell."""
    lines = (_contenders, _tests, _instruments, _order, _ranked, _cannot_tell)
    return tuple(line for of in lines if (line := of(told, page)).says)


def _contenders(told: Told, page: str) -> MinuteLine:
    contenders = told.campaign.contenders
    n = len(contenders)
    return MinuteLine(
        paragraph(
            words_of(n, "minute.contenders", count=in_words(n)),
            *_come_by(contenders),
            _specimens(contenders) if n > 1 or contenders[0].specimens else "",
        ),
        Link(words("minute.to.contenders"), from_to(page, f"{campaign_page(told.campaign.id)}#contenders")),
    )


def _come_by(contenders: tuple[Contender, ...]) -> tuple[str, ...]:
    supplied = [c.title for c in contenders if c.supplied_by]
    unsaid = [c.title for c in contenders if not c.supplied_by and not was_bought(c)]
    if not supplied and not unsaid:
        return (words("minute.bought" if len(contenders) > 1 else "minute.bought.one"),)
    return (
        words("minute.supplied", names=and_list(supplied)) if supplied else "",
        words("minute.unsaid", names=and_list(unsaid)) if unsaid else "",
    )


def was_bought(contender: Contender) -> bool:
    """Whether anything says that it was bought: a shop, a day, a price paid."""
    return bool(
        contender.bought_where
        or contender.bought_on
        or any(p.sort == "paid" for p in contender.prices)
        or any(s.bought_where or s.bought_on for s in contender.specimens)
    )


def _specimens(contenders: tuple[Contender, ...]) -> str:
    several = [(c.title, len(c.specimens)) for c in contenders if len(c.specimens) > 1]
    if not several:
        return words("minute.specimens.one")
    each = [words_of(n, "minute.specimens.of", count=in_words(n), name=name) for name, n in several]
    return words("minute.specimens", list=and_list(each))


def _tests(told: Told, page: str) -> MinuteLine:
    runs = {test.id: found for test in told.campaign.tests if (found := _runs(told, test))}
    n, still = len(runs), [in_sentence(t.title) for t in told.campaign.tests if t.id not in runs]
    way = _to_test(told, "minute.to.tests")
    if not n:
        return MinuteLine(words("minute.tests.none"), way)
    least, most = min(min(r) for r in runs.values()), max(max(r) for r in runs.values())
    once = sum(max(r) == 1 for r in runs.values())
    return MinuteLine(
        paragraph(
            words_of(n, "minute.tests", count=in_words(n)),
            _passes(n, least, most, all(_everybody(told, t) for t in told.campaign.tests if t.id in runs)),
            words_of(once, "minute.once", count=in_words(once)) if once and least != most else "",
            _to_come(still) if still else "",
        ),
        way,
    )


def _to_come(titles: list[str]) -> str:
    key = "minute.to-come" if len(titles) <= NAMED_AT_MOST else "minute.to-come.many"
    return words_of(len(titles), key, count=in_words(len(titles)), names=and_list(titles))


def _passes(tests: int, least: int, most: int, everybody: bool) -> str:
    if least == most and not everybody:
        return words_of(most, "minute.passes.some", count=in_words(most))
    if least == most:
        return words_of(most, "minute.passes.one-test" if tests == 1 else "minute.passes", count=in_words(most))
    if least == 1:
        return words_of(most, "minute.passes.from-one", most=in_words(most))
    return words_of(most, "minute.passes.range", least=in_words(least), most=in_words(most))


def _everybody(told: Told, test: Test) -> bool:
    """Whether every contender has a result in the test."""
    having = {r.contender for r in told.evaluation.results if r.quantity == test.headline and not r.missing}
    return len(having) == len(told.campaign.contenders)


def _runs(told: Told, test: Test) -> tuple[int, ...]:
    """How often each contender with a result ran in the test, passes that were left out counted too."""
    return tuple(
        ran
        for r in told.evaluation.results
        if r.quantity == test.headline and not r.missing and (ran := r.passes + r.excluded)
    )


def _instruments(told: Told, page: str) -> MinuteLine:
    campaign = told.campaign
    found = sorted(campaign.instruments.values(), key=lambda i: i.title)
    n, unknown = len(found), sum(not i.accuracy.known for i in found)
    laboratories = list(dict.fromkeys(t.laboratory.name for t in campaign.tests if t.laboratory))
    analysed = words_of(
        len(laboratories), "minute.laboratories", count=in_words(len(laboratories)), names=and_list(laboratories)
    )
    if not n:
        return MinuteLine(
            paragraph(words("minute.instruments.none"), analysed if laboratories else ""),
            _to_test(told, "minute.to.tests"),
        )
    names = and_list([in_sentence(i.title) for i in found])
    return MinuteLine(
        paragraph(
            words_of(n, "minute.instruments", count=in_words(n), names=names)
            if n <= NAMED_AT_MOST
            else words_of(n, "minute.instruments.many", count=in_words(n)),
            words_of(n, "minute.accuracy.none")
            if unknown == n
            else words_of(unknown, "minute.accuracy", count=in_words(unknown))
            if unknown
            else "",
            analysed if laboratories else "",
        ),
        Link(words("minute.to.instruments"), "#instruments"),
    )


def _order(told: Told, page: str) -> MinuteLine:
    tests = [t for t in told.campaign.tests if _runs(told, t) and len(told.campaign.contenders) > 1]
    kinds = Counter(order_of(told, t) for t in tests)
    if not kinds:
        return MinuteLine("", None)
    way = _to_test(told, "minute.to.order")
    if len(kinds) == 1:
        return MinuteLine(words(f"minute.order.{next(iter(kinds))}"), way)
    each = [labelled(words(f"minute.order.of.{kind}"), counted("test", n)) for kind, n in kinds.most_common()]
    return MinuteLine(paragraph(words("minute.order.mixed"), semicolons(each)), way)


def order_of(told: Told, test: Test) -> str:
    """As a code: how it was laid down, else whether rows tell it."""
    return test.order or ("recorded" if told.readings.order_recorded.get(test.id) else "unknown")


def _ranked(told: Told, page: str) -> MinuteLine:
    one = len(told.campaign.contenders) == 1
    way = Link(words("minute.to.answer"), from_to(page, campaign_page(told.campaign.id)))
    return MinuteLine(words("minute.ranked.none" if one else "minute.ranked"), way)


def _cannot_tell(told: Told, page: str) -> MinuteLine:
    campaign = told.campaign
    named = {line for t in campaign.tests for line in t.cannot_tell} | set(campaign.cannot_tell)
    named |= {line for m in campaign.methods.values() for line in m.cannot_tell}
    more = words_of(len(named), "minute.limits", count=in_words(len(named))) if named else ""
    return MinuteLine(
        paragraph(words("minute.cannot.products" if campaign.of_products else "minute.cannot"), more),
        _to_test(told, "minute.to.limits") if named else None,
    )


def _to_test(told: Told, key: str) -> Link | None:
    """The way to the first test on the method's page, where they stand one below another."""
    return Link(words(key), f"#{told.campaign.tests[0].id}") if told.campaign.tests else None
