"""Rules on claims: whether what was tested is what was claimed."""

from __future__ import annotations

import re
from collections.abc import Iterable

from reportgen.audit.case import Case, Seen
from reportgen.evaluation.claims import tested_so
from reportgen.finding import Severity

# Words by which makers name a condition; from memory, kept short on purpose.
CONDITION = re.compile(
    r"\b(up to|ideal|optimal|laborator\w+|typical(ly)?|depending on|at (sea level|room temperature|[0-9]+ ?°)|"
    r"in still air|fully charged|lowest setting|eco mode)\b",
    re.IGNORECASE,
)


def claimed_otherwise(case: Case) -> Iterable[Seen]:
    """Claims that name a condition and are held against ours as if they didn't; and claims set aside for theirs.

    A warning where such a claim is called contradicted.
    """
    outcomes = {(o.contender, o.claim): o.outcome for o in case.evaluation.claims}
    for contender in case.declared.campaign.contenders:
        for claim in contender.claims:
            outcome = outcomes.get((contender.id, claim.id), "not tested")
            place = case.declared.at(f"claim/{contender.id}/{claim.id}")
            words = next(iter(claim.says.values()), "")
            named = CONDITION.search(words)
            if claim.under and claim.quantity:
                if claim.tested_so or tested_so(case.declared.campaign, claim):
                    continue  # the author knows, and pages say it
                says = f"{contender.title}: “{words}” is claimed {_under(claim.under)}; nothing says that it was so."
                yield Seen(place, says, f"quantity/{claim.quantity}", contender.id)
            elif named and claim.quantity and outcome != "not tested":
                says = f"{contender.title}: “{words}” says “{named[0]}”, and is held against ours all the same."
                says = f"{says} It is called {outcome}."
                severity: Severity = "warning" if outcome == "contradicted" else "note"
                yield Seen(place, says, f"quantity/{claim.quantity}", contender.id, severity)


def _under(said: str) -> str:
    return said if re.match(r"(?:under|at|in|with|on|for)\b", said) else f"under “{said}”"
