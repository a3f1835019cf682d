"""Why a reading has no value is said in English by rooms that know no phrases, and in its language on a page."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from reportgen import evaluation, metrology
from reportgen.finding import Place
from reportgen.languages import load_language
from reportgen.wording.language import speaking
from reportgen.wording.reason import why_absent, why_missing

ROOMS = (Path(metrology.__file__).parent, Path(evaluation.__file__).parent)
PASSED_ON = re.compile(r"[\w.]+\.(says|absent_because)")  # what was said below


def said_below() -> Iterator[tuple[str, str]]:
    """Where, and each text that a `NoValue(…)` of these rooms says, with a word where it has a gap."""
    for path in sorted(p for room in ROOMS for p in room.rglob("*.py")):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        named = {
            t.id: n.value
            for n in tree.body if isinstance(n, ast.Assign)
            for t in n.targets if isinstance(t, ast.Name)
        }  # fmt: skip
        for call in ast.walk(tree):
            if isinstance(call, ast.Call) and isinstance(call.func, ast.Name) and call.func.id == "NoValue":
                says = call.args[0]
                says = named.get(says.id, says) if isinstance(says, ast.Name) else says
                if not PASSED_ON.fullmatch(ast.unparse(says)):
                    yield f"{path.name}:{call.lineno}", written(says)


def written(says: ast.expr) -> str:
    if isinstance(says, ast.JoinedStr):
        return "".join(map(written, says.values))
    if isinstance(says, ast.FormattedValue):
        return "over" if ast.unparse(says.value) == "side" else "pot"
    assert isinstance(says, ast.Constant)
    return str(says.value)


@pytest.mark.parametrize("tag", ["de", "ar"])
def test_every_reason_that_a_room_gives_is_told_in_the_language_of_the_page(tag: str) -> None:
    language, _ = load_language(None, tag, Place("content/publication.yaml"))
    found = list(said_below())
    assert len(found) > 50
    for where, text in found:
        assert why_absent(text) == text, where
        with speaking(language):
            assert why_absent(text) != text, f"{where}: “{text}” is no phrase of `wording/english/absent.py`"


def test_what_a_reason_names_stands_in_it() -> None:
    german, _ = load_language(None, "de", Place("content/publication.yaml"))
    with speaking(german):
        assert why_absent("temp has no sample there") == "„temp“ hat dort keinen Messpunkt"
        assert why_absent("part rim was not read") == "der Teil „rim“ wurde nicht abgelesen"
        assert "Kette gerissen" in why_absent("did not finish (Kette gerissen)")
        told = why_absent("gas of rim: temp has no sample there")
        assert all(word in told for word in ("gas", "rim", "„temp“ hat dort keinen Messpunkt"))


@pytest.mark.parametrize("text", ["spilled", "unfinished", "still running", "the lid fell off; we lost it"])
@pytest.mark.parametrize("tag", ["en", "de", "ar"])
def test_the_words_of_an_author_stay(tag: str, text: str) -> None:
    language, _ = load_language(None, tag, Place("content/publication.yaml"))
    with speaking(language):
        assert why_missing(text) == why_absent(text) == text


def test_several_reasons_are_told_each_in_its_words() -> None:
    german, _ = load_language(None, "de", Place("content/publication.yaml"))
    with speaking(german):
        assert why_missing("verschüttet; no reading") == "verschüttet; keine Ablesung"
