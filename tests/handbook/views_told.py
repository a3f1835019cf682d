"""What templates are given, read off the code that renders them, and off the parts themselves, as the handbook's tables.

.venv/bin/python -m tests.handbook.views_told     writes the tables anew into content/handbook/templates.md
"""

from __future__ import annotations

import ast
import importlib
import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from pathlib import Path
from types import ModuleType
from typing import Any, get_type_hints

from reportgen.theme import Frame

ROOT = Path(__file__).parents[2]
PAGE = ROOT / "content/handbook/templates.md"
FIELDS = "| template | fields of `view`, besides `frame` |\n| --- | --- |\n"
PARTS = "| part | macros | what it sets |\n| --- | --- | --- |\n"


def views() -> dict[str, Any]:
    """Template → the class of the view that its pages are rendered from."""
    return dict(
        sorted(
            pair
            for room in ("pages", "site")
            for path in (ROOT / "reportgen" / room).rglob("*.py")
            for pair in _rendered(path)
        )
    )


def _rendered(path: Path) -> Iterator[tuple[str, Any]]:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    calls = [n for n in ast.walk(tree) if isinstance(n, ast.Call) and isinstance(n.func, ast.Name)]
    rendering = [c for c in calls if c.func.id == "render" and len(c.args) == 4]  # type: ignore[attr-defined]
    if not rendering:
        return
    module = importlib.import_module(".".join(path.relative_to(ROOT).with_suffix("").parts))
    for call in rendering:
        template, view = call.args[1], call.args[2]
        assert isinstance(template, ast.Constant)
        if str(template.value).endswith(".html") and not str(template.value).startswith("parts/"):
            yield str(template.value), _class_of(view, tree, module)


def _class_of(view: ast.expr, tree: ast.AST, module: ModuleType) -> Any:
    """What the expression gives: a call's class or the answer of its function, a name's by what is put into it."""
    if isinstance(view, ast.Name):
        given = [n.value for n in ast.walk(tree) if isinstance(n, ast.Assign) and ast.unparse(n.targets[0]) == view.id]
        view = next(v for v in given if isinstance(v, ast.Call))
    assert isinstance(view, ast.Call)
    made = getattr(module, ast.unparse(view.func))
    return made if is_dataclass(made) else get_type_hints(made)["return"]


def table_of_fields() -> str:
    """One template a row, its view's fields by name; last the frame that every view has."""
    rows = [(f"`{template}`", view) for template, view in views().items()]
    return "".join(f"| {of} | {_named(view)} |\n" for of, view in [*rows, ("`frame` of every page", Frame)])


def _named(view: Any) -> str:
    return ", ".join(f"`{f.name}`" for f in fields(view) if f.name != "frame")


def table_of_parts() -> str:
    """One part a row: its macros with what they are given, and its comment."""
    rows = []
    for path in sorted((ROOT / "themes/reading-room/templates/parts").glob("*.html")):
        text = path.read_text(encoding="utf-8")
        comment = re.search(r"\{#-?\s*(.*?)\s*-?#\}", text, re.S)
        assert comment, f"{path.name}: its first comment should say what it sets"
        macros = re.findall(r"\{%-? macro (\w+\(.*?\)) -?%\}", text)
        says = " ".join(comment[1].split())
        rows.append(f"| `{path.name}` | {', '.join(f'`{m}`' for m in macros)} | {says} |\n")
    return "".join(rows)


def written(head: str) -> str:
    """The rows below that heading as they stand in the handbook."""
    rest = PAGE.read_text(encoding="utf-8").split(head)[1]
    return rest.partition("\n\n")[0] + "\n" if "\n\n" in rest else rest


if __name__ == "__main__":
    for head, rows in ((FIELDS, table_of_fields()), (PARTS, table_of_parts())):
        PAGE.write_text(PAGE.read_text(encoding="utf-8").replace(head + written(head), head + rows), encoding="utf-8")
