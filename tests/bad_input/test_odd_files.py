"""What lies in a folder besides plain files, and an out folder that can't be used: a message each, never a wait or a loss."""

from __future__ import annotations

import os
import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from reportgen.build.run import compile_site
from reportgen.cli.commands import commands
from reportgen.finding import Refused
from tests.campaigns import refusal, write_campaign

YAML = "title: T\ncontenders: {a: A, b: B}\nmeasure:\n  boil time: timed, s, lower\nreadings: readings.csv\n"
ROWS = "contender,boil time\na,212.4\nb,230.1\n"
EVIL = '"><img src=x onerror=1><script>alert(1)</script> 😀 \u202eabc'


def told_of(folder: Path) -> list[tuple[str, str, str]]:
    """Rule, place and remedy of each error that keeps `folder` from compiling."""
    try:
        compile_site(folder)
    except Refused as refused:
        return [(f.rule, str(f.place), f.do) for f in refused.findings if f.severity == "error"]
    raise AssertionError("it compiled")


def with_readings(place: Path, make: str) -> Path:
    """The campaign with something in the place of its table."""
    folder = write_campaign(place, YAML)
    table = folder / "readings.csv"
    if make == "folder":
        table.mkdir()
    elif make == "pipe":
        os.mkfifo(table)
    elif make == "circle of links":
        table.symlink_to("readings.csv")
    elif make == "link to nothing":
        table.symlink_to("nowhere.csv")
    elif make == "link out of the workspace":
        (place / "out.csv").write_text(ROWS)
        table.symlink_to("../out.csv")
    elif make == "device without end":
        table.symlink_to("/dev/zero")
    return folder


@pytest.mark.parametrize(
    ("make", "rule", "remedy"),
    [
        ("folder", "not-a-file", "Name the file"),
        ("pipe", "not-a-file", "Put a file"),
        ("circle of links", "unreadable-file", "Check the path"),
        ("link to nothing", "missing-file", "Put the file there"),
        ("link out of the workspace", "leaves-workspace", "Copy the file"),
        ("device without end", "leaves-workspace", "Copy the file"),
    ],
)
def test_what_is_no_file_is_named_where_it_was_asked_for(make: str, rule: str, remedy: str, tmp_path: Path) -> None:
    ((found, place, do),) = told_of(with_readings(tmp_path, make))
    assert (found, place) == (rule, "campaign.yaml:5:11")
    assert remedy in do


def test_a_pipe_beside_the_readings_holds_nothing_up(tmp_path: Path) -> None:
    folder = write_campaign(tmp_path, YAML, readings=ROWS)
    os.mkfifo(folder / "left-over")
    assert compile_site(folder).pages


def test_a_file_name_in_another_encoding_is_refused_by_name(tmp_path: Path) -> None:
    folder = write_campaign(tmp_path, YAML, readings=ROWS)
    (folder / "attachments").mkdir()
    try:
        (Path(os.fsdecode(os.fsencode(folder / "attachments") + b"/b\xff.pdf"))).write_text("x")
    except OSError:
        pytest.skip("this file system takes no such name")
    ((rule, place, do),) = told_of(folder)
    assert (rule, place, do) == ("name-not-utf-8", "attachments/b\ufffd.pdf", "Rename the file.")


def test_a_folder_of_the_campaign_files_name_is_told_as_one(tmp_path: Path) -> None:
    (tmp_path / "stoves" / "campaign.yaml").mkdir(parents=True)
    ((rule, _, do),) = told_of(tmp_path / "stoves")
    assert rule == "no-campaign"
    assert "Put a file in the place of campaign.yaml" in do


def test_a_foreign_folder_is_never_replaced(tmp_path: Path) -> None:
    folder, out = write_campaign(tmp_path, YAML, readings=ROWS), tmp_path / "mine"
    out.mkdir()
    (out / "diary.txt").write_text("mine")
    ran = CliRunner().invoke(commands, ["compile", str(folder), "--out", str(out)])
    assert ran.exit_code == 1
    assert [p.name for p in out.iterdir()] == ["diary.txt"]


def test_hostile_names_stay_text_on_every_page(tmp_path: Path) -> None:
    quoted = "'" + EVIL.replace("'", "''") + "'"
    yaml = YAML.replace("title: T", f"title: {quoted}").replace("a: A", f"a: {{title: {quoted}, maker: {quoted}}}")
    folder = write_campaign(
        tmp_path, yaml + f"caveats: [{quoted}]\n", readings=ROWS, **{"conclusions.md": f"# {EVIL}\n\n{EVIL}\n"}
    )
    pages = [p.read_text(encoding="utf-8") for p in compile_site(folder).out.rglob("*.html")]
    assert any("&lt;script&gt;" in page for page in pages)
    assert not [page for page in pages if "<script>alert" in page or "<img src=x" in page]


def test_a_link_that_would_run_a_script_is_no_link(tmp_path: Path) -> None:
    prose = (
        "# So\n\n[one](javascript:alert(1)) [two](JaVaScRiPt:alert(1)) [three](data:text/html,x) [four](vbscript:x)\n"
    )
    folder = write_campaign(tmp_path, YAML, readings=ROWS, **{"conclusions.md": prose})
    pages = [p.read_text(encoding="utf-8").lower() for p in compile_site(folder).out.rglob("*.html")]
    assert any("[one](javascript:alert(1))" in page for page in pages), "it is shown as it was typed"
    assert not [page for page in pages if re.search(r'(?:href|src)="(?:javascript|data|vbscript):', page)]


def test_a_formula_of_a_spreadsheet_is_passed_on_as_it_was_typed(tmp_path: Path) -> None:
    rows = "contender,boil time,note\na,212.4,=1+1\nb,230.1,@SUM(A1)\n"
    built = compile_site(write_campaign(tmp_path, YAML, readings=rows))
    (copied,) = built.out.rglob("files/readings.csv")
    assert copied.read_text(encoding="utf-8") == rows


def test_an_unknown_theme_is_told_with_the_file_that_asks(tmp_path: Path) -> None:
    (tmp_path / "content").mkdir()
    (tmp_path / "content" / "publication.yaml").write_text("title: P\ntheme: nowhere\n")
    found = told_of(write_campaign(tmp_path, YAML, readings=ROWS))
    assert [place for _, place, _ in found] == ["content/publication.yaml:2:8"]


def test_a_mistake_in_one_line_is_one_message(tmp_path: Path) -> None:
    (finding,) = [f for f in refusal(tmp_path, YAML.replace("lower", "lowr"), readings=ROWS) if f.severity == "error"]
    assert str(finding.place) == "campaign.yaml:4:14"


def test_a_page_in_the_place_of_a_word_does_not_fill_the_message(tmp_path: Path) -> None:
    for key in ("tested", "contenders", "films"):
        found = refusal(tmp_path / key, f"title: T\n{key}: {'x' * 5000}\n")
        assert found
        assert all(len(f.says) < 600 and len(f.do) < 600 for f in found)


def test_what_names_a_contender_of_none_is_told_what_to_do(tmp_path: Path) -> None:
    yaml = "title: T\nmeasure:\n  gas: one reading, g\nincidents:\n  - {contender: ostler, what: It fell.}\n"
    assert all(f.do for f in refusal(tmp_path, yaml) if f.severity == "error")
