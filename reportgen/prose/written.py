"""What an author's own text holds, for the audit: links, pictures, numbers typed by hand, sentences that speak wide."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from reportgen.campaign.declared import Campaign, ProseFile
from reportgen.evaluation.evaluated import Evaluation, Result
from reportgen.finding import Place
from reportgen.prose.parsing import marks, tokens
from reportgen.prose.typed_number import TypedNumber, agrees, typed_in
from reportgen.wording.unit import spelled

# Words that make a sentence speak of every unit ever made, or of all time. From memory; kept short on purpose.
_WIDE = re.compile(
    r"\b(always|never fails?|every time|all units|every unit|all of them ever|in general)\b", re.IGNORECASE
)


def link_places(file: ProseFile) -> tuple[tuple[Place, str], ...]:
    """Every link of a text: where it stands, and its address, in which a space is `%20` however it was typed."""
    return tuple((m.place, m.address) for m in marks(file.path, file.text) if not m.picture)


def picture_places(file: ProseFile) -> tuple[tuple[Place, str, str], ...]:
    """Every picture of a text: where it stands, its address, and the words for those who can't see it."""
    return tuple((m.place, m.address, m.words) for m in marks(file.path, file.text) if m.picture)


def speaks_wide(file: ProseFile, names: Sequence[str]) -> tuple[tuple[Place, str], ...]:
    """Sentences that speak of a model or brand where single specimens were tested, with their places.

    Caught: one of `names` in a sentence with "always" and its like; "every Corvane", "all Corvanes", "any Corvane";
    and a brand's plural ("Corvane stoves are"). Quotations (block quotes) are the maker's words and pass.
    """
    wanted = sorted({n for n in names if n}, key=len, reverse=True)
    if not wanted:
        return ()
    any_name = "|".join(re.escape(n) for n in wanted)
    whole_brand = re.compile(rf"\b(?:every|all|any|each)\s+(?:{any_name})s?\b", re.IGNORECASE)
    plural = re.compile(rf"\b(?:{any_name})(?:s|\s+[a-z]+s)\s+(?:are|burn|have|make|last|need|use|do|will|can)\b")
    named = re.compile(rf"\b(?:{any_name})\b", re.IGNORECASE)
    found = []
    for place, sentence in sentences_of(file):
        wide = whole_brand.search(sentence) or plural.search(sentence)
        if wide or (named.search(sentence) and (wide := _WIDE.search(sentence))):
            found.append((place, sentence))
    return tuple(found)


def typed_numbers(file: ProseFile, campaign: Campaign, evaluation: Evaluation) -> tuple[tuple[Place, str], ...]:
    """Numbers with the unit of a result, typed in a sentence that names a contender, that no result of it agrees with.

    A number that agrees with any result, pass, difference, bound of a claim or amount that matters is let be: only
    those nothing stands behind are told. References are not typed numbers.
    """
    told = []
    for place, sentence in sentences_of(file):
        about = [c.id for c in campaign.contenders if c.title.lower() in sentence.lower() or _word(c.id, sentence)]
        if not about:
            continue
        results = [r for r in evaluation.results if r.contender in about and r.estimate]
        for number in typed_in(sentence):
            same_unit = [r for r in results if r.estimate and _same_unit(number.unit, r.estimate.unit)]
            if same_unit and not _known(number, same_unit, campaign, evaluation):
                told.append((place, number.text))
    return tuple(told)


def sentences_of(file: ProseFile) -> Iterator[tuple[Place, str]]:
    """The author's sentences without references' words, code and quotations, each with the line it begins on."""
    quoted = 0
    for block in tokens(file.text):
        quoted += {"blockquote_open": 1, "blockquote_close": -1}.get(block.type, 0)
        if block.type != "inline" or quoted or block.map is None:
            continue
        line, inside_ours, words = block.map[0] + 1, False, ""
        begins = line
        for child in block.children or []:
            if child.type == "link_open":
                inside_ours = str(child.attrGet("href") or "").startswith(("value:", "comparison:", "first:"))
            elif child.type == "link_close":
                inside_ours = False
            elif child.type in ("softbreak", "hardbreak"):
                words, line = words + " ", line + 1
            elif child.type == "text" and not inside_ours:
                for piece in re.split(r"(?<=[.!?])(?=\s)", child.content):
                    begins = line if not words.strip() else begins
                    words += piece
                    if words.rstrip().endswith((".", "!", "?")):
                        yield Place(file.path, begins), words.strip()
                        words = ""
        if words.strip():
            yield Place(file.path, begins), words.strip()


def _known(number: TypedNumber, results: Sequence[Result], campaign: Campaign, evaluation: Evaluation) -> bool:
    quantities = {r.quantity for r in results}
    computed: list[float] = []
    for r in results:
        assert r.estimate is not None
        computed += [x for x in (r.estimate.value, r.u, r.low, r.high, r.without, r.estimate.scatter) if x is not None]
        computed += [p.value for p in r.by_pass if p.value is not None]
        computed += [s.value for p in r.by_pass for s in p.steps if s.value is not None]
    for c in evaluation.comparisons:
        if c.quantity in quantities:
            computed += [abs(x) for x in (c.difference, c.low, c.high) if x is not None]
    amounts = [q.matters for t in campaign.tests for q in t.quantities if q.id in quantities and q.matters]
    amounts += [a for c in campaign.contenders for k in c.claims for a in (k.at_most, k.at_least, k.nominal) if a]
    typed = any(a.value == number.value for a in amounts)
    return typed or any(agrees(number, x) for x in computed)


def _same_unit(typed: str, unit: str) -> bool:
    return bool(typed) and bool(unit) and spelled(typed.rstrip(".")) == spelled(unit)


def _word(name: str, sentence: str) -> bool:
    return re.search(rf"\b{re.escape(name.replace('-', ' '))}\b", sentence, re.IGNORECASE) is not None
