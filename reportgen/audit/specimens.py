"""Rules on what was tested: who supplied it, where and when it was bought, how it came, how many there were."""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date

from reportgen.audit.case import Case, Seen
from reportgen.audit.outcome import wins
from reportgen.metrology.type_a import student
from reportgen.prose.standing import name, names
from reportgen.wording.count import degrees
from reportgen.wording.day import days_long
from reportgen.wording.listing import and_list
from reportgen.wording.number import fixed

FEW = 3  # degrees of freedom; with two, t is 4.3, with three still 3.2 (JCGM 100, table G.2)
FAR_APART = 183  # days between two purchases; common practice, no source
# Words by which authors tell such things; common practice, no source.
DAMAGED = re.compile(
    r"\b(?<!no )(?<!un)(damag\w*|dent(ed|s)?|crack\w*|broken|bent|scratch\w*|torn|leak(s|ed|ing)|rust\w*|chipped|loose|"
    r"second[- ]hand|worn|warped|out of round)\b",
    re.IGNORECASE,
)
DEALT_WITH = re.compile(
    r"\b(bent back|straighten\w*|replac\w*|exchang\w*|repair\w*|put right|tighten\w*|returned|glued|sent back|"
    r"left as|as it (was|came)|all the same|used anyway)\b",
    re.IGNORECASE,
)


def supplied_by_the_maker(case: Case) -> Iterable[Seen]:
    """Contenders that were not bought; what they are first on, and whether others were bought."""
    campaign = case.declared.campaign
    bought = [c.id for c in campaign.contenders if not c.supplied_by and (c.bought_where or c.bought_on)]
    for contender in campaign.contenders:
        if contender.supplied_by:
            others = f" {names(campaign, bought)} {'was' if len(bought) == 1 else 'were'} bought." if bought else ""
            says = f"{contender.title} was supplied by {contender.supplied_by}, not bought.{others}"
            says = " ".join(filter(None, (says, wins(case, contender.id))))
            yield Seen(case.declared.at(f"contender/{contender.id}"), says, "", contender.id)


def bought_far_apart(case: Case) -> Iterable[Seen]:
    """Contenders bought so far apart in time that makers may have changed what they sell."""
    days = {c.id: c.bought_on for c in case.declared.campaign.contenders if c.bought_on and c.bought_on.first}
    if not days:
        return
    early, late = min(days, key=lambda c: days[c].last), max(days, key=lambda c: days[c].first)
    apart = (date.fromisoformat(days[late].first) - date.fromisoformat(days[early].last)).days
    if apart > FAR_APART:
        who = name(case.declared.campaign, early), name(case.declared.campaign, late)
        says = f"Between buying {who[0]} and buying {who[1]} lie {days_long(apart)}."
        yield Seen(case.declared.at(f"contender/{late}/bought"), says)


def bought_unsaid(case: Case) -> Iterable[Seen]:
    """Contenders of which nobody says where they came from, beside others of which that is said."""
    campaign = case.declared.campaign
    silent = [c.id for c in campaign.contenders if not (c.bought_where or c.bought_on or c.supplied_by)]
    if silent and len(silent) < len(campaign.contenders):
        says = f"Nothing says where and when {names(campaign, silent)} came from."
        yield Seen(case.declared.at(f"contender/{silent[0]}"), says, "", silent[0] if len(silent) == 1 else "")


def damaged_on_arrival(case: Case) -> Iterable[Seen]:
    """Damage seen on unpacking of which nobody says what was done about it."""
    for contender in case.declared.campaign.contenders:
        units = [("", contender.as_received, contender.put_right)]
        units += [(f" ({s.id})", s.as_received, s.put_right) for s in contender.specimens]
        for which, seen, done in units:
            told = " ".join(seen)
            damage = next((line for line in seen if DAMAGED.search(line)), "")
            if damage and not done and not DEALT_WITH.search(told):
                says = f"{contender.title}{which} came so: “{damage}” Nothing says what was done about it."
                says = " ".join(filter(None, (says, wins(case, contender.id))))
                yield Seen(case.declared.at(f"contender/{contender.id}/as-received"), says, "", contender.id)


def few_specimens(case: Case) -> Iterable[Seen]:
    """Results whose only scatter is that between so few specimens that Student's t swallows them."""
    for used in case.evaluation.scatters:
        results = [r for r in case.evaluation.results if (r.quantity, r.part) == (used.quantity, used.part)]
        several = [r for r in results if r.by_specimens and len({p.specimen for p in r.by_pass if p.keys}) > 1]
        known = used.found.degrees
        if used.found.origin != "passes" or not known or known >= FEW or not several:
            continue
        quantity = next(q for t in case.declared.campaign.tests for q in t.quantities if q.id == used.quantity)
        who = and_list([name(case.declared.campaign, r.contender) for r in several])
        said = f"{degrees(known)}: t = {fixed(student(0.975, known), 1)}"
        says = f"{quantity.title}: how far specimens differ is known from those of {who} alone ({said})."
        yield Seen(case.declared.at(f"quantity/{quantity.id}"), says, f"quantity/{quantity.id}")
