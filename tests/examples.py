"""Examples in docstrings and in the handbook, found and run."""

from __future__ import annotations

import doctest
import importlib
import pkgutil
from collections.abc import Iterator
from pathlib import Path
from types import ModuleType


def modules(package: ModuleType) -> Iterator[ModuleType]:
    """The package and everything in it."""
    yield package
    for found in pkgutil.walk_packages(package.__path__, f"{package.__name__}."):
        yield importlib.import_module(found.name)


def examples(package: ModuleType) -> Iterator[doctest.DocTest]:
    """Every docstring that holds an example."""
    finder = doctest.DocTestFinder(exclude_empty=True)
    for module in modules(package):
        yield from (test for test in finder.find(module) if test.examples)


def examples_of_page(path: Path) -> doctest.DocTest:
    """All examples of a page of the handbook, run one after another."""
    return doctest.DocTestParser().get_doctest(path.read_text(encoding="utf-8"), {}, path.name, str(path), 0)


def run(example: doctest.DocTest) -> int:
    """How many were tried; fails with what came out where one comes out otherwise than it says."""
    said: list[str] = []
    failed, tried = doctest.DocTestRunner(optionflags=doctest.ELLIPSIS).run(example, out=said.append)
    assert not failed, "".join(said)
    return tried
