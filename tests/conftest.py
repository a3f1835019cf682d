"""What tests of several rooms share: the demonstration, compiled once a session as a reader would get it."""

from __future__ import annotations

import json
from pathlib import Path
from shutil import copytree
from typing import Any

import pytest

from reportgen.build.progress import Built

ROOT = Path(__file__).parents[1]


@pytest.fixture(scope="session")
def demo_built(tmp_path_factory: pytest.TempPathFactory) -> Built:
    """The demonstration and its archive, compiled from a copy of the repository's own folders."""
    from reportgen.build.memory import Standing
    from reportgen.build.run import compile_site

    workspace = tmp_path_factory.mktemp("demonstration")
    for folder in ("content", "shared", "demo_campaign"):
        copytree(ROOT / folder, workspace / folder)
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
