"""Every phrase that code and templates speak, found in their syntax trees."""

from __future__ import annotations

import ast
import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from jinja2 import Environment, nodes

from reportgen.wording import english

PROGRAM = Path(english.__file__).parents[2]
THEMES = PROGRAM.parent / "themes"
PREFIXES = {"pages": "page.", "charts": "chart.", "site": "site."}  # of `words` and `words_of` in these rooms
SPEAKERS = {"say": 0, "words": 0, "say_of": 1, "words_of": 1}  # → where the key stands among the arguments


@dataclass(frozen=True)
class Spoken:
    """`key` is a pattern, for keys that are put together; `whole`: it is one key, written out. `gaps` is None where
    they aren't written out."""

    where: str
    key: re.Pattern[str]
    text: str
    whole: bool
    counts: bool
    gaps: frozenset[str] | None

    def keys_in(self, table: Collection[str]) -> list[str]:
        """The keys of a table that this may be."""
        if self.whole:
            return [self.text] if self.text in table else []
        return list(filter(self.key.fullmatch, table))


@cache
def in_python() -> tuple[Spoken, ...]:
    """What the rooms say."""
    found: list[Spoken] = []
    for path in sorted(PROGRAM.rglob("*.py")):
        room = path.relative_to(PROGRAM).parts[0]
        if room in ("carried", "browser") or "english" in path.parts:  # `browser` is given a function called `say`
            continue
        for call in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(call, ast.Call) and isinstance(call.func, ast.Name) and call.func.id in SPEAKERS:
                found += _said_by(call, call.func.id, room, f"{path.relative_to(PROGRAM)}:{call.lineno}")
    return tuple(found)


@cache
def in_templates() -> tuple[Spoken, ...]:
    """What templates of both themes say, under `on.`."""
    found: list[Spoken] = []
    for path in sorted(p for p in THEMES.rglob("templates/**/*") if p.suffix in (".html", ".js", ".svg")):
        tree = Environment(extensions=[]).parse(path.read_text(encoding="utf-8"))
        for call in tree.find_all(nodes.Call):
            if not isinstance(call.node, nodes.Name) or call.node.name not in SPEAKERS:
                continue
            where, name = f"{path.relative_to(THEMES)}:{call.lineno}", call.node.name
            gaps = None if call.dyn_kwargs else frozenset(k.key for k in call.kwargs)
            for pieces in _template_pieces(call.args[SPEAKERS[name]]):
                found.append(_spoken(where, "on.", pieces, name.endswith("_of"), gaps))
    return tuple(found)


def _said_by(call: ast.Call, name: str, room: str, where: str) -> Iterator[Spoken]:
    prefix = PREFIXES.get(room, "") if name.startswith("words") else ""
    if (name.startswith("words") and not prefix) or len(call.args) <= SPEAKERS[name]:
        return
    gaps = None if any(k.arg is None for k in call.keywords) else frozenset(str(k.arg) for k in call.keywords)
    for pieces in _pieces(call.args[SPEAKERS[name]]):
        yield _spoken(where, prefix, pieces, name.endswith("_of"), gaps)


def _spoken(where: str, prefix: str, pieces: list[str | None], counts: bool, gaps: frozenset[str] | None) -> Spoken:
    pattern = re.escape(prefix) + "".join(".*" if p is None else re.escape(p) for p in pieces)
    text = prefix + "".join("…" if p is None else p for p in pieces)
    return Spoken(where, re.compile(pattern), text, None not in pieces, counts, gaps)


def _pieces(node: ast.expr) -> Iterator[list[str | None]]:
    """What a key is put together from; None stands for what only a run can tell."""
    if isinstance(node, ast.IfExp):
        yield from _pieces(node.body)
        yield from _pieces(node.orelse)
    elif isinstance(node, ast.Constant) and isinstance(node.value, str):
        yield [node.value]
    elif isinstance(node, ast.JoinedStr):
        yield [str(v.value) if isinstance(v, ast.Constant) else None for v in node.values]
    elif isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr == "replace":
        yield from _pieces(node.func.value)


def _template_pieces(node: nodes.Expr) -> Iterator[list[str | None]]:
    if isinstance(node, nodes.CondExpr):
        yield from _template_pieces(node.expr1)
        if node.expr2 is not None:
            yield from _template_pieces(node.expr2)
    elif isinstance(node, nodes.Const):
        yield [str(node.value)]
    elif isinstance(node, nodes.Concat):
        yield [str(n.value) if isinstance(n, nodes.Const) else None for n in node.nodes]
    else:
        yield [None]
