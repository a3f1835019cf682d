"""`reportgen inspect`: what it says and how it ends."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from reportgen.browser.chromium import NoBrowserError
from reportgen.browser.inspect import Fault, Inspected, Measured
from reportgen.cli.commands import commands

FAULT = Fault("stoves/index.html", 7, "dead link", "the link “gone.html” leads nowhere")


def inspect(*arguments: str | Path) -> Result:
    return CliRunner().invoke(commands, ["inspect", *map(str, arguments)], catch_exceptions=False)


def test_each_fault_is_a_line_with_its_page_and_the_command_ends_with_1(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("reportgen.browser.inspect.inspect_site", lambda site, tell, **asked: Inspected(12, (FAULT,)))
    told = inspect(tmp_path)
    assert told.exit_code == 1
    assert told.stdout.splitlines() == [
        "dead link: whoever follows it finds nothing.",
        "  To mend it: write the address of what is there, or take the link away.",
        "  stoves/index.html:7  the link “gone.html” leads nowhere",
        "Inspected 12 pages: 1 fault.",
    ]
    machines = json.loads(inspect(tmp_path, "--json").stdout)
    assert (machines["ok"], machines["pages"]) == (False, 12)
    assert machines["faults"][0]["line"] == 7
    assert machines["faults"][0]["do"] == "write the address of what is there, or take the link away"


def test_one_thing_wrong_on_many_pages_is_said_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    faults = tuple(Fault(f"{n}.html", 0, "overflow", "at 320 px: pre") for n in range(5))
    monkeypatch.setattr("reportgen.browser.inspect.inspect_site", lambda site, tell, **asked: Inspected(5, faults))
    assert inspect(tmp_path).stdout.splitlines()[-2:] == [
        "  0.html, 1.html, 2.html and 2 more  at 320 px: pre",
        "Inspected 5 pages: 5 faults.",
    ]


def test_what_was_measured_stands_in_columns(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    measured = (
        Measured("campaign", "stoves/index.html", 1.24, 0.0, 45_210, 6, 9),
        Measured("test", "stoves/tests/noise.html", 10.0, 0.0, 9_000, 10, 12),
    )
    monkeypatch.setattr(
        "reportgen.browser.inspect.inspect_site", lambda site, tell, **asked: Inspected(2, (), measured)
    )
    assert inspect(tmp_path).stdout.splitlines()[1:4] == [
        "  kind of page  first seen  shift   loaded  files  sheets  page",
        "  campaign           1.2 s  0.000  45.2 kB      6       9  stoves/index.html",
        "  test              10.0 s  0.000   9.0 kB     10      12  stoves/tests/noise.html",
    ]
    assert json.loads(inspect(tmp_path, "--json").stdout)["measured"][0]["painted"] == 1.24


def test_it_is_told_which_pages_and_variants_to_open(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[dict[str, bool]] = []

    def note(site: Path, tell: object, **how: bool) -> Inspected:
        asked.append(how)
        return Inspected(1, ())

    monkeypatch.setattr("reportgen.browser.inspect.inspect_site", note)
    for options in ([], ["--all"], ["--samples"]):
        inspect(tmp_path, *options)
    assert [(how["all_variants"], how["samples_only"]) for how in asked] == [
        (False, False),
        (True, False),
        (False, True),
    ]


def test_a_sound_site_ends_with_0_and_an_empty_folder_with_1(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("reportgen.browser.inspect.inspect_site", lambda site, tell, **asked: Inspected(1, ()))
    assert (inspect(tmp_path).exit_code, inspect(tmp_path).stdout) == (0, "Inspected 1 page: no faults.\n")
    monkeypatch.setattr("reportgen.browser.inspect.inspect_site", lambda site, tell, **asked: Inspected(0, ()))
    assert inspect(tmp_path).exit_code == 1


def test_without_a_browser_it_says_how_to_get_one(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def none(site: Path, tell: object, **asked: bool) -> None:
        raise NoBrowserError("No Chromium could be started.\n  Get one ready with: python -m reportgen.browser")

    monkeypatch.setattr("reportgen.browser.inspect.inspect_site", none)
    told = inspect(tmp_path)
    assert told.exit_code == 1
    assert "python -m reportgen.browser" in told.output
    assert "Traceback" not in told.output
