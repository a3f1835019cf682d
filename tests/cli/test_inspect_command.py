"""`reportgen inspect`: what it says and how it ends."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from reportgen.browser.chromium import NoBrowserError
from reportgen.browser.inspect import Fault, Inspected
from reportgen.cli.commands import commands

FAULT = Fault("stoves/index.html", 7, "dead link", "the link “gone.html” leads nowhere")


def inspect(*arguments: str | Path) -> Result:
    return CliRunner().invoke(commands, ["inspect", *map(str, arguments)], catch_exceptions=False)


def test_each_fault_is_a_line_with_its_page_and_the_command_ends_with_1(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("reportgen.browser.inspect.inspect_site", lambda site, tell: Inspected(12, (FAULT,)))
    told = inspect(tmp_path)
    assert told.exit_code == 1
    assert told.stdout.splitlines() == [
        "stoves/index.html:7  dead link: the link “gone.html” leads nowhere",
        "Inspected 12 pages: 1 fault.",
    ]
    machines = json.loads(inspect(tmp_path, "--json").stdout)
    assert (machines["ok"], machines["pages"]) == (False, 12)
    assert machines["faults"][0]["line"] == 7


def test_a_sound_site_ends_with_0_and_an_empty_folder_with_1(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("reportgen.browser.inspect.inspect_site", lambda site, tell: Inspected(1, ()))
    assert (inspect(tmp_path).exit_code, inspect(tmp_path).stdout) == (0, "Inspected 1 page: no faults.\n")
    monkeypatch.setattr("reportgen.browser.inspect.inspect_site", lambda site, tell: Inspected(0, ()))
    assert inspect(tmp_path).exit_code == 1


def test_without_a_browser_it_says_how_to_get_one(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def none(site: Path, tell: object) -> None:
        raise NoBrowserError("No Chromium could be started.\n  Get one ready with: python -m reportgen.browser")

    monkeypatch.setattr("reportgen.browser.inspect.inspect_site", none)
    told = inspect(tmp_path)
    assert told.exit_code == 1
    assert "python -m reportgen.browser" in told.output
    assert "Traceback" not in told.output
