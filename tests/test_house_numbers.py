"""Nothing but wording turns a number into text, as far as the source can show it."""

from __future__ import annotations

import ast
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "reportgen"
FILES = sorted(p for p in PACKAGE.rglob("*.py") if "carried" not in p.parts)

# Where a number may be shaped outside wording, and why. A file or a folder (ending in /).
ALLOWED: Mapping[str, str] = {
    "wording/": "the one place",
    "record/plain.py": "numbers for machines, rounded once where they are recorded",
    "campaign/dates.py": "ISO 8601 dates",
    "campaign/kinds.py": "writes a formula around a name",
    "theme/environment.py": "fills phrases with words that wording made",
    "judgement/reach/parts.py": "keys of a cache",
    "intake/sheets/number_format.py": "what a spreadsheet's cell shows, which is read like a text that was typed",
    "metrology/arithmetic.py": "messages of a library that may not know wording",
    "metrology/traces/plateau.py": "messages of a library that may not know wording",
    "metrology/type_a.py": "messages of a library that may not know wording",
}
# `round` as arithmetic, not print.
ROUNDING: Mapping[str, str] = {
    "charts/explored.py": "places of marks in px, to a tenth",
    "charts/zoomed.py": "places of ticks in px, to a hundredth",
    "metrology/": "mathematics",
    "judgement/": "mathematics",
    "charts/tidy.py": "coordinates of a drawing",
}
NUMERIC_SPEC = frozenset("eEfFgGn%,_")


@cache
def tree(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"))


def named(path: Path) -> str:
    return path.relative_to(PACKAGE).as_posix()


def shaped(module: ast.Module) -> Iterator[tuple[int, str]]:
    """Line and source of whatever formats a number: format specs with a number's type or precision, `format`,
    `%` with a number's conversion. `{n:02d}` of a whole number counts too."""
    for node in ast.walk(module):
        match node:
            case ast.FormattedValue(format_spec=ast.expr() as spec) if _numeric(spec):
                yield node.lineno, ast.unparse(node)
            case ast.Call(func=ast.Name(id="format")) | ast.Call(func=ast.Attribute(attr="format" | "format_map")):
                yield node.lineno, ast.unparse(node)
            case ast.BinOp(op=ast.Mod(), left=ast.Constant(value=str() as text)) if "%" in text:
                yield node.lineno, ast.unparse(node)


def rounded(module: ast.Module) -> Iterator[tuple[int, str]]:
    """Line and source of every `round(x, digits)`: with digits it is a step towards print."""
    for node in ast.walk(module):
        match node:
            case ast.Call(func=ast.Name(id="round"), args=args, keywords=named) if len(args) + len(named) > 1:
                yield node.lineno, ast.unparse(node)


def _numeric(spec: ast.expr) -> bool:
    text = "".join(
        part.value if isinstance(part, ast.Constant) else "0"
        for part in getattr(spec, "values", [])
        if not isinstance(part, ast.Constant) or isinstance(part.value, str)
    )
    return any(c in NUMERIC_SPEC or c == "." for c in text) or text.endswith("d")


def outside(path: Path, allowed: Mapping[str, str]) -> bool:
    name = named(path)
    return not any(name.startswith(a) if a.endswith("/") else name == a for a in allowed)


def test_no_other_room_formats_a_number() -> None:
    found = [
        f"{named(path)}:{line}: {source}"
        for path in FILES
        if outside(path, ALLOWED)
        for line, source in shaped(tree(path))
    ]
    assert found == []


def test_no_other_room_rounds_for_print() -> None:
    found = [
        f"{named(path)}:{line}: {source}"
        for path in FILES
        if outside(path, {**ALLOWED, **ROUNDING})
        for line, source in rounded(tree(path))
    ]
    assert found == []


def test_what_is_allowed_still_needs_it() -> None:
    for allowed, reason in {**ALLOWED, **ROUNDING}.items():
        assert reason
        files = [p for p in FILES if not outside(p, {allowed: reason})]
        assert files, f"{allowed} is gone: take it off the list"
        if allowed not in ("metrology/", "judgement/"):
            assert any([*shaped(tree(p)), *rounded(tree(p))] for p in files), f"{allowed} formats nothing any more"


@pytest.mark.parametrize(
    "source", ['f"{x:.2f}"', 'f"{x:,}"', 'f"{n:02d}"', "format(x, '.3g')", '"{:.1f}".format(x)', '"%.2f" % x']
)
def test_the_check_sees_a_number_being_formatted(source: str) -> None:
    assert list(shaped(ast.parse(source)))


@pytest.mark.parametrize("source", ['f"{x}"', 'f"{name:<20}"', "n % 2", "say(x)"])
def test_the_check_lets_words_be(source: str) -> None:
    assert not list(shaped(ast.parse(source)))
