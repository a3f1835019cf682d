"""The commands as one types them: what is said, where it is said, how they end."""

from __future__ import annotations

import errno
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from reportgen.cli.commands import COMMANDS, commands
from reportgen.cli.outcome import run
from tests.campaigns import SMALLEST, SMALLEST_READINGS, write_campaign

ROOT = Path(__file__).parents[2]


def call(*arguments: str | Path) -> Result:
    return CliRunner().invoke(commands, [str(argument) for argument in arguments], catch_exceptions=False)


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_explains_itself_with_an_example(name: str) -> None:
    told = call(name, "--help")
    assert told.exit_code == 0
    assert "Example" in told.output
    assert f"reportgen {name} " in told.output.split("Example")[1]


@pytest.mark.parametrize(
    "arguments", [["compyle"], ["compile", "--oot", "x"], ["compile", "/nowhere/at/all"], ["inspect"]]
)
def test_misuse_ends_with_2_and_says_how_to_ask(arguments: list[str]) -> None:
    told = call(*arguments)
    assert told.exit_code == 2
    assert "--help" in told.output


def test_a_compile_says_what_it_made_and_where(tmp_path: Path) -> None:
    folder = write_campaign(tmp_path)
    told = call("compile", folder, "--out", tmp_path / "site")
    assert told.exit_code == 0
    assert "Compiled: 1 campaign, " in told.stdout
    assert str(tmp_path / "site/index.html") in told.stdout
    assert "\x1b" not in told.output
    assert "Nothing has changed" in call("compile", folder, "--out", tmp_path / "site").stdout


def test_an_error_ends_with_1_and_is_told_with_file_line_and_column(tmp_path: Path) -> None:
    folder = write_campaign(tmp_path, SMALLEST.replace("better: lower", "beter: lower", 1), readings=SMALLEST_READINGS)
    for command in ("compile", "audit"):
        told = call(command, folder)
        assert told.exit_code == 1
        assert "campaign.yaml:9:5" in told.output
        assert "Do:" in told.output
        assert "Traceback" not in told.output


def test_for_machines_everything_is_on_standard_output_as_json(tmp_path: Path) -> None:
    folder = write_campaign(tmp_path)
    compiled = call("compile", folder, "--json")
    told = json.loads(compiled.stdout)
    assert compiled.exit_code == 0
    assert told["ok"] is True
    assert told["pages"] > 5
    audited = json.loads(call("audit", folder, "--json").stdout)
    assert audited["findings"] == told["findings"]
    assert {"severity", "rule", "file", "line", "column", "says", "why", "do"} <= audited["findings"][0].keys()
    (folder / "campaign.yaml").write_text("title: [")
    broken = call("compile", folder, "--json")
    assert broken.exit_code == 1
    assert json.loads(broken.stdout)["findings"][0]["severity"] == "error"


def test_a_folder_without_a_campaign_is_told_what_to_do(tmp_path: Path) -> None:
    for command in ("compile", "audit"):
        told = call(command, tmp_path)
        assert told.exit_code == 1
        assert "reportgen begin" in told.output


def test_a_fault_of_the_program_is_no_stack_trace_until_asked_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def broken(*told: object) -> None:
        raise ZeroDivisionError("by design")

    monkeypatch.setattr("reportgen.build.run.compile_site", broken)
    with pytest.raises(SystemExit, match="1"):
        run(["compile", str(tmp_path)])
    told = capsys.readouterr().err
    assert "ZeroDivisionError: by design" in told
    assert "REPORTGEN_TRACE=1" in told
    assert "Traceback" not in told
    monkeypatch.setenv("REPORTGEN_TRACE", "1")
    with pytest.raises(ZeroDivisionError):
        run(["compile", str(tmp_path)])


def test_a_site_that_cannot_be_written_is_one_sentence(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder = write_campaign(tmp_path)
    (tmp_path / "file").write_text("in the way")
    with pytest.raises(SystemExit, match="1"):
        run(["compile", str(folder), "--out", str(tmp_path / "file" / "site")])
    told = capsys.readouterr().err
    assert f"{tmp_path / 'file'}: " in told
    assert "A file stands where a folder has to be; move it, or name another place with --out." in told


def test_libraries_that_read_files_are_not_heard_and_others_are() -> None:
    """A workbook without a default style, as some programs write it: openpyxl warns of it and reads it."""
    told = """if True:
        import io, warnings, zipfile
        import openpyxl
        from reportgen.cli.outcome import run
        whole, bare = io.BytesIO(), io.BytesIO()
        openpyxl.Workbook().save(whole)
        with zipfile.ZipFile(whole) as old, zipfile.ZipFile(bare, "w") as new:
            for name in old.namelist():
                data = old.read(name)
                start, end = data.find(b"<cellStyles"), data.find(b"</cellStyles>")
                new.writestr(name, data[:start] + data[end + 13:] if name == "xl/styles.xml" else data)
        with warnings.catch_warnings(record=True) as caught:
            warnings.simplefilter("always")
            openpyxl.load_workbook(bare)
            assert ["default style" in str(one.message) for one in caught] == [True]
        try:
            run(["--version"])
        except SystemExit:
            openpyxl.load_workbook(bare)
            warnings.warn("something else")
        """
    ran = subprocess.run([sys.executable, "-c", told], cwd=ROOT, capture_output=True, text=True, check=False)
    assert ran.returncode == 0, ran.stderr
    assert "something else" in ran.stderr
    assert "default style" not in ran.stderr


def test_the_command_line_is_there_as_a_process() -> None:
    command = [sys.executable, "-c", "from reportgen.cli import main; main()"]
    told = subprocess.run([*command, "compile", "/nowhere"], cwd=ROOT, capture_output=True, text=True, check=False)
    assert told.returncode == 2
    assert "/nowhere" in told.stderr
    assert told.stdout == ""


def test_a_full_disk_is_told_to_other_programs_too(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(*_: object) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC), "site")

    monkeypatch.setattr("reportgen.build.run.compile_site", full)
    ran = CliRunner().invoke(commands, ["compile", str(write_campaign(tmp_path)), "--json"])
    assert ran.exit_code == 1
    told = json.loads(ran.stdout)
    assert told["ok"] is False
    assert "--out" in told["fault"]
