"""The table of phrases fits the code that speaks from it."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import get_args

import pytest

from reportgen.judgement.measured import Decision
from reportgen.metrology.uncertain import Sort
from reportgen.wording import decision, english, reason
from reportgen.wording.interval import bound
from reportgen.wording.language import ENGLISH, say, say_of, speaking
from reportgen.wording.phrase import forms_of, gaps_of

ROOMS = Path(english.__file__).parents[2]


def spoken_keys() -> Iterator[tuple[str, str, str, set[str] | None]]:
    """Where, function, key and gap names of every `say("…", …)` in the program whose key is written out."""
    for path in sorted(ROOMS.rglob("*.py")):
        for call in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if not isinstance(call, ast.Call) or not isinstance(call.func, ast.Name):
                continue
            at = {"say": 0, "say_of": 1}.get(call.func.id)
            if at is None or len(call.args) <= at:
                continue
            gaps = None if any(k.arg is None for k in call.keywords) else {str(k.arg) for k in call.keywords}
            for key in literals(call.args[at]):
                yield f"{path.name}:{call.lineno}", call.func.id, key, gaps


def literals(node: ast.expr) -> list[str]:
    if isinstance(node, ast.IfExp):
        return [*literals(node.body), *literals(node.orelse)]
    return [node.value] if isinstance(node, ast.Constant) and isinstance(node.value, str) else []


def test_every_phrase_that_is_spoken_is_in_the_table_with_its_gaps() -> None:
    found = [f for f in spoken_keys() if "wording" in f[0] or f[2] in english.PHRASES or "." in f[2]]
    assert len(found) > 100
    for where, function, key, gaps in found:
        assert key in english.PHRASES, f"{where} says “{key}”"
        entry = english.PHRASES[key]
        assert isinstance(entry, str) == (function == "say"), f"{where}: {key}"
        for form in forms_of(entry):
            assert gaps is None or gaps_of(form) <= gaps, f"{where}: {key} lacks {gaps_of(form) - gaps}"


def test_forms_always_have_one_for_any_number() -> None:
    assert all("other" in entry for entry in english.PHRASES.values() if not isinstance(entry, str))


def test_every_decision_and_source_has_words() -> None:
    for code in get_args(Decision):
        assert decision.decision(code)
        assert decision.seen_from_first(code, True)
    for sort in get_args(Sort):
        assert f"cause.{sort}" in english.PHRASES
    assert decision.seen_from_first("better", False) == "worse"


def test_a_reason_that_is_no_code_stays_as_the_author_wrote_it() -> None:
    assert reason.why_missing("not yet tested") == "not yet tested"
    assert reason.why_missing("spilled") == "spilled"
    assert reason.why_no_u("accuracy-unknown") != "accuracy-unknown"
    assert reason.pushes("") == ""


def test_another_language_is_one_table() -> None:
    german = replace(ENGLISH, tag="de", phrases={"limit.above": "mehr als {value}"}, decimal_sign=",")
    with speaking(german):
        assert bound(12.5, "g", "above") == "mehr als 12,5\u00a0g"
    assert bound(12.5, "g", "above") == "more than 12.5\u00a0g"


def test_a_phrase_with_forms_needs_its_number() -> None:
    with pytest.raises(KeyError):
        say("count.pass", count="two")
    with pytest.raises(KeyError):
        say_of(2, "first.lead.plain")
