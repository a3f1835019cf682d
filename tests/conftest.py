"""What tests of several rooms share: the demonstration, compiled once a session as a reader would get it."""

from __future__ import annotations

import json
import os
import pickle
import re
from collections.abc import Iterator
from pathlib import Path
from shutil import copytree
from typing import Any

import pytest
from filelock import FileLock
from hypothesis import settings

from reportgen.build.progress import Built

ROOT = Path(__file__).parents[1]
settings.register_profile("no clock", deadline=None)  # how long a machine takes that others share says nothing
settings.load_profile("no clock")
_CHAPTER = re.compile(r"\[([^\]]+)\]\((?!photographs-and-film)[a-z-]+\.md[^)]*\)")  # a link to one that is left out


@pytest.fixture(scope="session")
def of_the_run(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder that all processes of one run of the tests share: each has a base of its own inside it."""
    base = tmp_path_factory.getbasetemp()
    return base.parent if "PYTEST_XDIST_WORKER" in os.environ else base


@pytest.fixture(scope="session", autouse=True)
def short_handbook(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """Two pages of the handbook for every campaign that a test compiles alone, instead of all of it, which would take
    twice as long as the rest. The demonstration has the whole of it, and so has what runs outside this process."""
    folder = tmp_path_factory.mktemp("short-handbook")
    for name in ("index.md", "photographs-and-film.md"):
        whole = (ROOT / "content/handbook" / name).read_text(encoding="utf-8")
        (folder / name).write_text(_CHAPTER.sub(r"\1", whole), encoding="utf-8")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("reportgen.site.texts.carried", lambda kind: folder)
        yield folder


@pytest.fixture(scope="session", autouse=True)
def index() -> Iterator[str]:
    """Where the index for searching is made: nowhere, for a campaign that a test compiles, as it would take a third of
    the time. The demonstration has it, and so has what runs outside this process; who else looks at it asks `searched`."""
    place = "reportgen.build.finish.search_index"
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(place, lambda pages, program, kept: {})
        yield place


@pytest.fixture(scope="module")
def searched(index: str) -> Iterator[None]:
    """Sites have an index for searching."""
    from reportgen.build.search_kept import search_index

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(index, search_index)
        yield


@pytest.fixture(scope="session")
def demo_built(of_the_run: Path, index: str) -> Built:
    """The demonstration and its archive, compiled from a copy of the repository's own folders.

    Whichever process asks first compiles it; the others wait for it and read what came out. Nobody changes it.
    """
    kept = of_the_run / "demonstration.pickle"
    with FileLock(of_the_run / "demonstration.lock"):
        if not kept.exists():
            kept.write_bytes(pickle.dumps(_compiled(of_the_run / "demonstration", index)))
    built = pickle.loads(kept.read_bytes())
    assert isinstance(built, Built)
    return built


def _compiled(workspace: Path, index: str) -> Built:
    from reportgen.build.memory import Standing
    from reportgen.build.run import compile_site
    from reportgen.build.search_kept import search_index

    for folder in ("content", "shared", "demo_campaign"):
        copytree(ROOT / folder, workspace / folder)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(index, search_index)
        return compile_site(workspace, standing=Standing())


@pytest.fixture(scope="session")
def demo_site(demo_built: Built) -> Path:
    """Its site."""
    return demo_built.out


@pytest.fixture(scope="session")
def demo_told(demo_site: Path) -> dict[str, Any]:
    """results.json of the demonstration."""
    told = json.loads((demo_site / "demo-campaign" / "results.json").read_text(encoding="utf-8"))
    assert isinstance(told, dict)
    return told
