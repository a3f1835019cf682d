"""What the judging library says of itself is run: every example in its docstrings, one for each public function."""

import doctest
import inspect
import re
import subprocess
import sys
from pathlib import Path

import pytest

from reportgen import judgement
from tests.examples import examples, examples_of_page, modules, run

# what the library rests on, each shown by an example whose docstring names it
SOURCES = (
    "Montgomery", "JCGM 106", "Schuirmann 1987", "Clopper", "Garwood", "Boschloo", "Lahdelma", "Cochran", "Grubbs", "Scheffé",
    "Anscombe",
)  # fmt: skip
LIBRARY = Path(__file__).parents[2] / "content" / "handbook" / "judging-library.md"


@pytest.mark.parametrize(
    "example", list(examples(judgement)), ids=lambda example: example.name.removeprefix("reportgen.")
)
def test_an_example_comes_out_as_it_says(example: doctest.DocTest) -> None:
    assert run(example)


def test_every_function_of_the_public_face_has_an_example() -> None:
    functions = [getattr(judgement, name) for name in judgement.__all__]
    functions = [inspect.unwrap(function) for function in functions if not inspect.isclass(function)]
    assert len(functions) > 25
    assert [f.__name__ for f in functions if ">>>" not in (f.__doc__ or "")] == []


def test_every_source_has_an_example() -> None:
    texts = [(m.__doc__ or "") + "".join(t.docstring or "" for t in doctest.DocTestFinder(exclude_empty=True).find(m)
             if t.examples) for m in modules(judgement)]  # fmt: skip
    told = [text for text in texts if ">>>" in text]
    assert [source for source in SOURCES if not any(source in text for text in told)] == []


def test_the_public_face_says_what_it_holds_and_each_thing_once() -> None:
    assert judgement.__all__ == sorted(set(judgement.__all__))
    assert sorted(name for names in judgement.WHERE.values() for name in names) == judgement.__all__
    assert [name for name in judgement.__all__ if not getattr(judgement, name).__doc__] == []
    with pytest.raises(AttributeError, match="no attribute 'medal'"):
        getattr(judgement, "medal")  # noqa: B009  # a name that isn't there, asked for on purpose


def test_asking_for_a_type_loads_no_heavy_library() -> None:
    asked = "import sys; from reportgen.judgement import Measured, Rules; print({'numpy', 'scipy'} & set(sys.modules))"
    done = subprocess.run([sys.executable, "-c", asked], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "set()"


def test_the_examples_of_the_handbook_come_out_as_they_say() -> None:
    assert run(examples_of_page(LIBRARY)) > 15


def test_the_handbook_names_every_function_of_the_public_face() -> None:
    told = set(re.findall(r"`(\w+)`", LIBRARY.read_text(encoding="utf-8")))
    functions = {name for name in judgement.__all__ if not inspect.isclass(getattr(judgement, name))}
    assert functions - told == set()
