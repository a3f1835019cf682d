"""What is said to be not yet tested, and has readings after all."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reportgen.campaign.declared import Declared
from reportgen.finding import Finding
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.intake.table import spelt


def tested_after_all(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Finding]:
    """A warning for each contender that is under `not yet tested:` in tests that have read it."""
    campaign = declared.campaign
    read = {(k.test, k.contender) for k, r in readings.items() if not r.absent_because}
    for contender in campaign.contenders:
        tests = [t for t in campaign.tests if contender.id in t.not_yet_tested and (t.id, contender.id) in read]
        if tests:
            yield Finding(
                "warning",
                "tested-after-all",
                declared.at(f"to-come/{tests[0].id}/{contender.id}"),
                f"{contender.title} is under `not yet tested:` and has readings in {spelt([t.title for t in tests])}.",
                "Its readings count; what is said to be missing is there.",
                "Take it out. A list names contenders to come in every test, and whole tests; one contender in one "
                f"test is written `not yet tested: {{{tests[0].id}: [{contender.id}]}}`.",
                f"test/{tests[0].id}" if len(tests) == 1 else "",
                contender.id,
            )
