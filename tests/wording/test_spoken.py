"""Whatever is said is in the table with its gaps, and whatever is in the table is said somewhere."""

from __future__ import annotations

import re

import pytest

from reportgen.wording.language import ENGLISH
from reportgen.wording.phrase import forms_of, gaps_of
from tests.wording.spoken import PROGRAM, Spoken, in_python, in_templates

PHRASES = ENGLISH.phrases
BY_CODE = ("absent", "blocked", "claim", "decided", "met", "missing", "month", "pushes", "reason", "why-no-u")
"""Families whose keys are put together of codes and handed on: `wording/reason.py`, `met.py`, `prose/claim.py`."""


@pytest.mark.parametrize("spoken", [in_python, in_templates])
def test_what_is_said_is_in_the_table(spoken: object) -> None:
    found: tuple[Spoken, ...] = spoken()  # type: ignore[operator]
    assert len(found) > 200
    assert [f"{s.where} says “{s.text}”" for s in found if not s.keys_in(PHRASES)] == []


@pytest.mark.parametrize("spoken", [in_python, in_templates])
def test_what_is_said_fills_every_gap_and_counts_where_forms_need_a_number(spoken: object) -> None:
    wrong = []
    for s in spoken():  # type: ignore[operator]
        if not s.whole or s.text not in PHRASES:
            continue
        entry = PHRASES[s.text]
        if isinstance(entry, str) == s.counts:
            wrong.append(f"{s.where}: {s.text} {'has no forms' if s.counts else 'needs a number'}")
        lacking = frozenset().union(*map(gaps_of, forms_of(entry))) - (s.gaps or frozenset())
        if s.gaps is not None and lacking:
            wrong.append(f"{s.where}: {s.text} lacks {', '.join(sorted(lacking))}")
    assert wrong == []


def test_every_phrase_is_said_somewhere() -> None:
    """A phrase that nobody says would be translated for nothing. A key may be handed on as a text first."""
    spoken = (*in_python(), *in_templates())
    whole = {s.text for s in spoken if s.whole}
    families = {s.key for s in spoken if not s.whole and len(re.sub(r"\\.|\.\*", "", s.key.pattern)) >= 4}
    written = "\n".join(p.read_text(encoding="utf-8") for p in PROGRAM.rglob("*.py") if "english" not in p.parts)
    unsaid = [
        key
        for key in PHRASES
        if key.partition(".")[0] not in BY_CODE
        and key not in whole
        and f'"{key}"' not in written
        and f'"{key.partition(".")[2]}"' not in written
        and not any(pattern.fullmatch(key) for pattern in families)
    ]
    assert unsaid == []
