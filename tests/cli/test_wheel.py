"""The wheel, installed outside the repository: a campaign is begun, compiled and viewed with nothing else at hand."""

from __future__ import annotations

import os
import re
import subprocess
import sys
import threading
import urllib.request
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
COMMAND = [sys.executable, "-c", "from reportgen.cli import main; main()"]


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """The environment of a process that finds the wheel's reportgen first, and no repository."""
    place = tmp_path_factory.mktemp("wheel")
    pip = [sys.executable, "-m", "pip", "-q", "--disable-pip-version-check"]
    wheel = ["wheel", "--no-deps", "--no-build-isolation", "-w", str(place), str(ROOT)]
    subprocess.run([*pip, *wheel], check=True, capture_output=True)
    (built,) = place.glob("*.whl")
    subprocess.run([*pip, "install", "--no-deps", "--target", str(place / "lib"), str(built)], check=True)
    return {**os.environ, "PYTHONPATH": str(place / "lib"), "PYTHONSAFEPATH": "1"}


def run(arguments: list[str], environment: dict[str, str], here: Path) -> str:
    done = subprocess.run(
        [*COMMAND, *arguments], env=environment, cwd=here, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    return done.stdout


def test_the_wheel_carries_themes_shared_things_and_the_handbook(installed: dict[str, str], tmp_path: Path) -> None:
    ask = (
        "import reportgen, reportgen.sources as s; print(*map(s.carried, ('themes', 'shared', 'handbook')), sep='\\n')"
    )
    done = subprocess.run(
        [sys.executable, "-c", ask], env=installed, cwd=tmp_path, capture_output=True, text=True, check=True
    )
    for line in done.stdout.splitlines():
        folder = Path(line)
        assert folder.is_relative_to(installed["PYTHONPATH"])
        assert any(path.is_file() for path in folder.rglob("*")), folder


def test_a_campaign_is_begun_compiled_and_viewed_outside_the_repository(
    installed: dict[str, str], tmp_path: Path
) -> None:
    told = run(["begin", "kettles", "--contender", "Brindle", "--contender", "Tamsin"], installed, tmp_path)
    assert "kettles/readings.csv" in told
    run(["compile", "kettles", "--out", "site"], installed, tmp_path)
    assert "not yet tested" in (tmp_path / "site/kettles/index.html").read_text(encoding="utf-8").lower()
    assert (tmp_path / "site/static/reading-room/campaign.css").is_file()

    command = [*COMMAND, "view", "kettles"]
    with subprocess.Popen(command, env=installed, cwd=tmp_path, stdout=subprocess.PIPE, text=True) as viewing:
        killer = threading.Timer(60, viewing.kill)
        killer.start()
        assert viewing.stdout is not None
        try:
            address = next(found[0] for line in viewing.stdout if (found := re.findall(r"http://[\d.:]+/", line)))
            with urllib.request.urlopen(f"{address}kettles/index.html", timeout=10) as answer:
                assert "Brindle" in answer.read().decode()
        finally:
            killer.cancel()
            viewing.terminate()
