"""What a finding can do to the outcome: which leads rest on a test, what became of first place without or with a pass.

Rules say it in their sentences, and grade what they find by it: what could change who is first is a warning, what
changes nothing a note.
"""

from __future__ import annotations

from collections.abc import Iterable

from reportgen.audit.case import Case
from reportgen.campaign.declared import Test
from reportgen.evaluation.evaluated import Caveat, Comparison, FirstPlace
from reportgen.evaluation.hanging import WithBack
from reportgen.finding import Severity
from reportgen.prose.hanging import then_first
from reportgen.prose.standing import name, names
from reportgen.wording.listing import and_list
from reportgen.wording.sentence import inside


def leads(case: Case, test: Test, among: Iterable[frozenset[str]] | None = None) -> tuple[Comparison, ...]:
    """The comparisons of a test in which one is said to be better; `among` narrows them to pairs of contenders."""
    pairs = None if among is None else set(among)
    mine = (c for c in case.evaluation.comparisons if c.test == test.id and c.favours is not None)
    return tuple(c for c in mine if pairs is None or frozenset((c.first, c.second)) in pairs)


def grave(found: Iterable[object]) -> Severity:
    """A warning where something rests on it, a note where nothing does."""
    return "warning" if any(True for _ in found) else "note"


def rests_on_it(case: Case, found: tuple[Comparison, ...]) -> str:
    """ "Ostler is said to be better than Corvane on noise, and this may be why."; "" where no lead is among them."""
    if not found:
        return ""
    c = found[0]
    better, other = (c.first, c.second) if c.favours == c.first else (c.second, c.first)
    title = inside(case.declared.campaign.quantity(c.quantity).title)
    campaign = case.declared.campaign
    return (
        f"{name(campaign, better)} is said to be better than {name(campaign, other)} on {title}, and this may be why."
    )


def wins(case: Case, contender: str) -> str:
    """ "It is alone in first place on gas burned and noise."; "" where it is nowhere."""
    campaign = case.declared.campaign
    titles = [inside(campaign.quantity(f.quantity).title) for f in case.evaluation.firsts if f.winner == contender]
    return f"It is alone in first place on {and_list(list(dict.fromkeys(titles)))}." if titles else ""


def with_it_back(case: Case, caveat: Caveat) -> tuple[str, Severity]:
    """What would be of first place, had an exclusion not been made, and how grave that is."""
    back = [(f, b) for f in case.evaluation.firsts for b in _back(f) if b.exclusion == caveat.id]
    other = [(f, b) for f, b in back if b.winner != f.winner]
    if other:
        first, found = other[0]
        then = then_first(case.declared.campaign, found.winner)
        return f"With it back, {then} on {inside(case.declared.campaign.quantity(first.quantity).title)}.", "warning"
    if moved := [f for f, b in back if b.moves]:
        title = inside(case.declared.campaign.quantity(moved[0].quantity).title)
        if moved[0].winner is None:  # who shares first place may be others then
            return f"With it back, places would change on {title}; nobody would be alone in first place.", "warning"
        return f"With it back, first place stays as it is on {title}, and other places would change.", "warning"
    if back:
        return "With it back, no place would change.", "note"
    return "", "warning"


def _back(first: FirstPlace) -> tuple[WithBack, ...]:
    return first.hangs_on.back if first.hangs_on else ()


def apart_named(case: Case, pairs: Iterable[tuple[str, str]]) -> str:
    """The contenders of several pairs, each once."""
    return names(case.declared.campaign, list(dict.fromkeys(c for pair in pairs for c in pair)))
