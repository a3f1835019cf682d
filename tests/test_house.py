"""The house keeps its order: one direction, one place for the disk, no markup in Python, words on public things."""

from __future__ import annotations

import ast
import re
import subprocess
import sys
from collections.abc import Iterator
from fnmatch import fnmatch
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "reportgen"
FILES = sorted(path for path in PACKAGE.rglob("*.py") if "carried" not in path.parts)

TOUCH_THE_DISK = (
    "sources/",
    "store/",
    "site/write.py",
    "site/swap.py",
    "opendata/parquet_form.py",  # DuckDB writes Parquet into a file alone
    "cli/founding.py",  # `begin` writes the files of a new campaign
    "browser/",  # reads a site that stands
    "view/",  # serves one
    "build/stamp.py",  # asks which files lie at the workspace's root
)
DISK = frozenset(
    {"read_text", "read_bytes", "write_text", "write_bytes", "unlink", "mkdir", "rmdir", "iterdir", "rglob", "rename"}
    | {"is_file", "is_dir", "exists", "stat", "touch", "symlink_to", "hardlink_to"}
)
MARKUP = re.compile(
    r"(?<!\?P)</?(a|abbr|b|body|br|caption|circle|code|dd|details|div|dl|dt|em|figure|figcaption|footer|g|h[1-6]|head"
    r"|header|hr|html|i|img|li|line|link|main|meta|nav|ol|p|path|pre|rect|script|section|small|span|strong|style|sub"
    r"|summary|sup|svg|table|tbody|td|text|th|thead|title|tr|ul)(\s[^<>]*)?/?>"
)
HEAVY = (
    "babel",
    "numpy",
    "scipy",
    "pint",
    "altair",
    "pandas",
    "vl_convert",
    "playwright",
    "jinja2",
    "markdown_it",
    "PIL",
    "duckdb",
    "openpyxl",
    "pypdf",
    "yaml",
    "rich",
)


@cache
def tree(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"), str(path))


def named(path: Path) -> str:
    return path.relative_to(PACKAGE).as_posix()


def test_imports_go_one_way() -> None:
    command = "from importlinter.cli import lint_imports_command; lint_imports_command(['--no-cache'])"
    done = subprocess.run([sys.executable, "-c", command], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout
    assert "0 broken" in done.stdout


def test_only_the_named_rooms_touch_the_disk() -> None:
    touching = [
        f"{named(path)}:{call.lineno}: {ast.unparse(call)[:80]}"
        for path in FILES
        if not named(path).startswith(TOUCH_THE_DISK)
        for call in ast.walk(tree(path))
        if isinstance(call, ast.Call) and _touches(call)
    ]
    assert touching == []


def test_no_markup_stands_in_python() -> None:
    found = [
        f"{named(path)}:{node.lineno}: {node.value[:60]!r}"
        for path in FILES
        for node in _texts(tree(path))
        if isinstance(node.value, str) and MARKUP.search(node.value)
    ]
    assert found == []


def test_every_public_thing_says_what_it_is() -> None:
    bare = [f"{named(path)}: the module" for path in FILES if not ast.get_docstring(tree(path))]
    bare += [
        f"{named(path)}:{node.lineno}: {node.name}"
        for path in FILES
        for node in tree(path).body
        if isinstance(node, ast.FunctionDef | ast.ClassDef)
        and not (node.name.startswith("_") or ast.get_docstring(node) or _speaks_for_itself(node))
    ]
    assert bare == []


def test_every_room_stands_in_the_plan_of_the_house() -> None:
    plan = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    rooms = [place.parent.name for place in PACKAGE.glob("*/__init__.py")]
    assert len(rooms) > 15
    assert [room for room in rooms if f"`{room}/`" not in plan] == []


def test_no_folder_of_tests_is_passed_over(request: pytest.FixtureRequest) -> None:
    """Left to itself pytest looks into no folder called build, and a room of the house is."""
    passed_over = request.config.getini("norecursedirs")
    tests = ROOT / "tests"
    folders = {name for path in tests.rglob("test_*.py") for name in path.relative_to(tests).parts[:-1]}
    assert "build" in folders
    assert [name for name in folders for sort in passed_over if fnmatch(name, sort)] == []


def test_files_are_short() -> None:
    long = {named(path): len(path.read_text(encoding="utf-8").splitlines()) for path in FILES}
    assert {name: lines for name, lines in long.items() if lines > 350} == {}


@pytest.mark.parametrize("arguments", [["--help"], ["--version"], ["compile", "--help"], ["begin", "--help"]])
def test_saying_how_to_use_it_loads_nothing_heavy(arguments: list[str]) -> None:
    told = f"""
import sys, contextlib, io
from reportgen.cli.outcome import run
with contextlib.suppress(SystemExit), contextlib.redirect_stdout(io.StringIO()):
    run({arguments!r})
print(*sorted(name for name in sys.modules if "." not in name))
"""
    done = subprocess.run([sys.executable, "-c", told], cwd=ROOT, capture_output=True, text=True, check=True)
    assert "click" in done.stdout.split()
    assert set(done.stdout.split()) & set(HEAVY) == set()


def _touches(call: ast.Call) -> bool:
    if isinstance(call.func, ast.Name):
        return call.func.id == "open"
    return isinstance(call.func, ast.Attribute) and call.func.attr in DISK and not _from_the_package(call.func.value)


def _from_the_package(value: ast.expr) -> bool:
    """`files("reportgen.x") / "y"`: what the program itself brings along, wherever it is installed."""
    return any(
        isinstance(n, ast.Call) and isinstance(n.func, ast.Name) and n.func.id == "files" for n in ast.walk(value)
    )


def _texts(module: ast.Module) -> Iterator[ast.Constant]:
    """Constants that aren't docstrings."""
    docs = set()
    for node in ast.walk(module):
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef) and ast.get_docstring(node) is not None:
            first = node.body[0]
            assert isinstance(first, ast.Expr)
            docs.add(id(first.value))
    yield from (node for node in ast.walk(module) if isinstance(node, ast.Constant) and id(node) not in docs)


def _speaks_for_itself(node: ast.FunctionDef | ast.ClassDef) -> bool:
    """A record whose fields say it all; a function of one line whose name and signature do."""
    if isinstance(node, ast.ClassDef):
        return all(isinstance(line, ast.AnnAssign | ast.Assign) for line in node.body)
    return len(node.body) == 1 and isinstance(node.body[0], ast.Return)
