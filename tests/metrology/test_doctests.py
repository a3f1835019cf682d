"""What the measuring library says of itself is run: every example in its docstrings, one a clause at the least."""

import doctest
import inspect
import re
from pathlib import Path
from types import ModuleType

import pytest

from reportgen import metrology
from tests.examples import examples, examples_of_page, run

# clauses of the JCGM 100 that the library rests on, and the JCGM 101 as a whole: each shown by an example
CLAUSES = (
    "4.2.1", "4.2.2", "4.2.3", "4.2.4", "4.3.3", "4.3.4", "4.3.7", "4.3.9", "5.1.2", "5.1.3", "5.2.2", "E.4.3",
    "F.2.2.1", "G.3", "G.4.1", "G.4.2", "G.6.4", "JCGM 101",
)  # fmt: skip


@pytest.mark.parametrize(
    "example", list(examples(metrology)), ids=lambda example: example.name.removeprefix("reportgen.")
)
def test_an_example_comes_out_as_it_says(example: doctest.DocTest) -> None:
    assert run(example)


def test_every_clause_the_library_rests_on_has_an_example() -> None:
    told = [example.docstring or "" for example in examples(metrology)]
    missing = [clause for clause in CLAUSES if not any(re.search(rf"\b{re.escape(clause)}\b", text) for text in told)]
    assert missing == []


def test_every_function_of_the_public_face_has_an_example() -> None:
    functions = [getattr(metrology, name) for name in metrology.__all__]
    functions = [function for function in functions if inspect.isfunction(function)]
    assert len(functions) > 30
    assert [f.__name__ for f in functions if ">>>" not in (f.__doc__ or "")] == []


def test_the_public_face_says_what_it_holds_and_each_thing_once() -> None:
    public = [name for name in metrology.__all__ if not isinstance(getattr(metrology, name), ModuleType)]
    assert metrology.__all__ == sorted(set(metrology.__all__))
    assert [name for name in public if not getattr(metrology, name).__doc__] == []
    functions = [getattr(metrology, name) for name in public if inspect.isfunction(getattr(metrology, name))]
    assert len({id(function) for function in functions}) == len(functions), "two names for one thing"
    assert [f.__name__ for f in functions if f.__name__ not in metrology.__all__] == [], "another name inside"


LIBRARY = Path(__file__).parents[2] / "content" / "handbook" / "library.md"


def test_the_examples_of_the_handbook_come_out_as_they_say() -> None:
    assert run(examples_of_page(LIBRARY)) > 20


def test_the_handbook_names_every_function_of_the_public_face() -> None:
    told = set(re.findall(r"`(?:type_[ab]\.)?(\w+)`", LIBRARY.read_text(encoding="utf-8")))
    functions = {name for name in metrology.__all__ if inspect.isfunction(getattr(metrology, name))}
    for part in (metrology.type_b, metrology.type_a):
        functions |= {
            name for name, of in vars(part).items() if inspect.isfunction(of) and of.__module__ == part.__name__
        }
    aside = {"rounds_scatter", "student"}  # of contenders in rounds; behind `coverage_factor`
    assert {name for name in functions if not name.startswith("_")} - aside - told == set()
