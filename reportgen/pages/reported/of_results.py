"""Items that are about results: for what they hold, which there are, what befell them, whose they are."""

from __future__ import annotations

from collections import Counter

from reportgen.evaluation.evaluated import CaveatSort
from reportgen.pages.laboratory import report_address
from reportgen.pages.reported.item import Found, few, of_tests, to, to_tests
from reportgen.pages.told import Told
from reportgen.pages.words import words, words_of
from reportgen.theme import Link
from reportgen.wording.count import in_words
from reportgen.wording.listing import and_list

DEVIATIONS: tuple[CaveatSort, ...] = ("exclusion", "incident", "amendment", "records", "assumption")
"""Sorts of caveats that tell of something left out, gone wrong, put right or taken instead of measured."""


def hold_for(told: Told, page: str) -> Found:
    """l) That results relate only to what was tested."""
    return Found("here", (words("items.l.products" if told.campaign.of_products else "items.l.only"),))


def results(told: Told, page: str) -> Found:
    """m) The results with their units."""
    missing = sum(bool(r.missing) for r in told.evaluation.results)
    n = len(told.evaluation.results) - missing
    ways = (to(told, page, "answer", "tests"), to(told, page, "data"))
    if not n:
        return Found("missing", (words("items.m.nothing"),), ways)
    none = words_of(missing, "items.m.missing", count=in_words(missing)) if missing else ""
    return Found("part" if missing else "here", (words_of(n, "items.m.results", count=in_words(n)), none), ways)


def deviations(told: Told, page: str) -> Found:
    """n) Additions to, deviations and exclusions from the method."""
    met = [c for c in told.evaluation.caveats if c.sort in DEVIATIONS]
    if not met:
        return Found("none", (words("items.n.none"),))
    of_sort = Counter(c.sort for c in met)
    each = [words_of(n, f"items.n.{sort}", count=in_words(n)) for sort in DEVIATIONS if (n := of_sort[sort])]
    touched = {key.test for c in met for key in c.touches}
    tests = [t for t in told.campaign.tests if t.id in touched]
    ways = to_tests(told, page, tests) if few(tests) else (to(told, page, "answer", "tests"),)
    return Found("here", (words("items.n.some", list=and_list(each)),), ways)


def from_others(told: Told, page: str) -> Found:
    """p) Which results come from external providers."""
    campaign = told.campaign
    analysed = [(t, t.laboratory) for t in campaign.tests if t.laboratory]
    if not analysed:
        return Found("none", (words("items.p.none"),))
    sentences, ways = [], []
    for name in dict.fromkeys(laboratory.name for _, laboratory in analysed):
        mine = [(t, of) for t, of in analysed if of.name == name]
        sentences.append(words("items.p.from", laboratory=name, tests=of_tests([t for t, _ in mine])))
        for number in dict.fromkeys(of.number for _, of in mine if of.number):
            sentences.append(words("items.p.number", number=number))
        for report in dict.fromkeys(of.report for _, of in mine if of.report):
            ways.append(Link(report, report_address(told, page, report)))
    return Found("here", tuple(sentences), (*to_tests(told, page, [t for t, _ in analysed]), *ways))
