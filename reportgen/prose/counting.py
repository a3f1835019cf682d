"""Yes/no answers, counts and grades in words: shown as they are, without an order."""

from __future__ import annotations

from reportgen.evaluation.evaluated import Result
from reportgen.prose.standing import Standing, name
from reportgen.prose.values import values
from reportgen.wording.count import counted, whole
from reportgen.wording.interval import percent
from reportgen.wording.language import say
from reportgen.wording.listing import commas


def counting(s: Standing) -> str:
    """The results of a yes/no, count or grade as one sentence."""
    read = [r for r in s.results if not r.missing]
    if read and read[0].kind == "yes/no":
        return yes_no(s, read)
    if read and read[0].kind == "count" and s.quantity.better != "neither" and not s.quantity.independent:
        return say("count.line.not-independent", values=values(s))
    return say("grade.line" if read and read[0].kind == "grade" else "count.line", values=values(s))


def yes_no(s: Standing, read: list[Result]) -> str:
    """Yes/no answers. Where all agree, what that leaves open (exact limits, Clopper and Pearson 1934)."""
    tries = {r.of for r in read if r.of}
    if len(tries) == 1:
        (of,) = tries
        left = percent(most_unseen(of), 1)
        if all(r.yes == r.of for r in read):
            if of == 1:
                return say("yes.all-once", title=s.quantity.title, failure=left)
            return say("yes.all-each", title=s.quantity.title, tries=counted("try", of), failure=left)
        if of == 1 and all(r.yes == 0 for r in read):
            return say("yes.none-once", title=s.quantity.title, failure=left)
    lines = [
        say("yes.line", name=name(s.campaign, r.contender), yes=whole(r.yes or 0), of=whole(r.of or 0)) for r in read
    ]
    return say("yes.mixed", lines=commas(lines))


def most_unseen(tries: int) -> float:
    """How often something may happen that was never seen in so many tries: the upper limit of the two-sided exact
    95 % interval, 1 − 0.025^(1/n) (Clopper and Pearson 1934)."""
    return float(1 - 0.025 ** (1 / tries))
