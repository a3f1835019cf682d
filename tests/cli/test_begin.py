"""A campaign is begun, compiles as it stands, and nothing of the author's is overwritten."""

from __future__ import annotations

import csv
import json
from pathlib import Path

import jsonschema
import pytest
import yaml
from click.testing import CliRunner, Result

from reportgen.build.run import audit_path, compile_site
from reportgen.cli.beginning import in_yaml
from reportgen.cli.commands import commands


def begin(*arguments: str | Path) -> Result:
    return CliRunner().invoke(commands, ["begin", *map(str, arguments)], catch_exceptions=False)


def table(folder: Path) -> list[list[str]]:
    with (folder / "readings.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.reader(file))


def test_what_is_begun_compiles_as_it_stands_and_says_not_yet_tested(tmp_path: Path) -> None:
    told = begin(tmp_path / "stoves")
    assert told.exit_code == 0
    assert "reportgen view" in told.output
    built = compile_site(tmp_path / "stoves")
    assert (built.campaigns, built.out) == (1, tmp_path / ".site")
    assert not [f for f in built.findings if f.severity == "error"]
    assert "not yet tested" in (built.out / "stoves/index.html").read_text(encoding="utf-8").lower()


def test_the_table_has_a_heading_for_everything_that_is_read(tmp_path: Path) -> None:
    begin(
        tmp_path / "stoves",
        "--measure",
        "gas burned: weighed before and after, g, lower",
        "--measure",
        "noise: level, dB, lower",
    )
    assert table(tmp_path / "stoves") == [["contender", "pass", "gas burned before", "gas burned after", "noise"]]


KIND_FILES = {
    "one reading, g, lower, kitchen-scale": {"readings.csv": "contender,pass,thing"},
    "timed, s, lower, stopwatch": {"readings.csv": "contender,pass,thing"},
    "weighed before and after, g, lower, bench-scale": {"readings.csv": "contender,pass,thing before,thing after"},
    "share lost, %, lower, bench-scale": {"readings.csv": "contender,pass,thing before,thing after"},
    "rise, °C, lower, kitchen-thermometer": {"readings.csv": "contender,pass,thing start,thing end"},
    "peak, kgf, higher, pull-scale": {"readings.csv": "contender,pass,thing"},
    "level, dB, lower, sound-meter": {"readings.csv": "contender,pass,thing"},
    "level over background, dB, lower, sound-meter": {"readings.csv": "contender,pass,thing,thing background"},
    "run to a limit, min, higher, stopwatch": {"readings.csv": "contender,pass,thing"},
    "count, lower": {"readings.csv": "contender,pass,thing"},
    "yes/no, higher": {"readings.csv": "contender,pass,thing"},
    "grade, higher": {"readings.csv": "contender,pass,thing"},
    "order, lower": {"orders.csv": "contender,thing"},
    "laboratory, mg/kg, lower": {
        "laboratory.csv": "contender,sample,page,thing",
        "attachments/put-the-report-here.txt": "Put the laboratory's report into this folder, as a PDF, "
        "and name it in campaign.yaml under `laboratory:`.",
    },
    "logged, °C, lower": {"traces/first-1.csv": "time,thing", "traces/second-1.csv": "time,thing"},
}


@pytest.mark.parametrize("said", KIND_FILES)
def test_every_kind_is_begun_with_the_tables_that_fit_and_compiles(tmp_path: Path, said: str) -> None:
    told = begin(tmp_path / "x", "--measure", f"thing: {said}")
    assert told.exit_code == 0, told.output
    written = {p.relative_to(tmp_path / "x").as_posix(): p for p in (tmp_path / "x").rglob("*") if p.is_file()}
    del written["campaign.yaml"]
    assert {name: path.read_text(encoding="utf-8").strip() for name, path in written.items()} == KIND_FILES[said]
    built = compile_site(tmp_path / "x")
    assert not [f for f in built.findings if f.severity == "error"]
    assert "not yet tested" in (built.out / "x/tests/thing.html").read_text(encoding="utf-8").lower()


def test_the_kinds_that_are_begun_here_are_all_there_are() -> None:
    from reportgen.campaign.kinds import KINDS

    assert [said.partition(",")[0] for said in KIND_FILES] == list(KINDS)
    for said, (kind, of) in zip(KIND_FILES, KINDS.items(), strict=True):
        assert not of.instrument or kind == "one reading" or said.endswith(of.instrument), "the usual instrument"


def test_all_kinds_go_into_one_campaign(tmp_path: Path) -> None:
    asked = [w for n, said in enumerate(KIND_FILES) for w in ("--measure", f"thing {n}: {said}")]
    told = begin(tmp_path / "x", *asked)
    assert told.exit_code == 0, told.output
    declared = yaml.load((tmp_path / "x/campaign.yaml").read_text(), yaml.BaseLoader)
    assert declared["readings"] == ["readings.csv", "once.csv", "orders.csv", "laboratory.csv"]
    assert declared["measure"]["thing 11"]["grades"] == ["poor", "fair", "good"]
    assert not [f for f in compile_site(tmp_path / "x").findings if f.severity == "error"]


def test_what_is_read_once_has_a_table_of_its_own_beside_what_is_repeated(tmp_path: Path) -> None:
    """As the handbook's Readings has it; one table where there is no other."""
    begin(tmp_path / "s", "--measure", "boil time: timed, s, lower", "--measure", "weight: one reading, g, lower")
    assert (tmp_path / "s/readings.csv").read_text() == "contender,pass,boil time\n"
    assert (tmp_path / "s/once.csv").read_text() == "contender,weight\n"
    assert yaml.load((tmp_path / "s/campaign.yaml").read_text(), yaml.BaseLoader)["readings"] == [
        "readings.csv",
        "once.csv",
    ]


def test_readings_typed_into_what_was_begun_are_results(tmp_path: Path) -> None:
    begin(
        tmp_path / "s",
        "--contender",
        "corvane: Corvane Sol",
        "--contender",
        "Ostler",
        "--measure",
        "boil time: timed, s, lower",
    )
    with (tmp_path / "s/readings.csv").open("a") as file:
        file.write("corvane,1,212.4\nostler,1,230.1\n")
    built = compile_site(tmp_path / "s")
    told = json.loads((built.out / "s/results.json").read_text())
    assert [(r["contender"], r["value"]) for r in told["results"]] == [("corvane", 212.4), ("ostler", 230.1)]


def test_on_a_terminal_it_asks_and_takes_its_own_proposals(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("reportgen.cli.begin._someone_is_there", lambda: True)
    answers = [
        "Which boils first?",
        "Corvane Sol",
        "Ostler",
        "",
        "boil time",
        "",
        "",
        "",
        "",
        "packed weight",
        "",
        "",
        "",
        "letter-scale",
        "lit",
        "yes/no",
        "higher",
        "",
    ]
    told = CliRunner().invoke(commands, ["begin", str(tmp_path / "s")], input="\n".join(answers) + "\n")
    assert told.exit_code == 0, told.output
    declared = yaml.load((tmp_path / "s/campaign.yaml").read_text(), yaml.BaseLoader)
    assert declared["title"] == "Which boils first?"
    assert declared["contenders"] == {"corvane-sol": "Corvane Sol", "ostler": "Ostler"}
    assert declared["measure"] == {
        "boil time": "timed, s, lower, stopwatch",
        "packed weight": "one reading, g, lower, letter-scale",
        "lit": "yes/no, higher",
    }
    assert not [f for f in audit_path(tmp_path / "s") if f.severity == "error"]


@pytest.mark.parametrize("name", ["campaign.yaml", "readings.csv"])
def test_nothing_is_overwritten(tmp_path: Path, name: str) -> None:
    (tmp_path / "stoves").mkdir()
    (tmp_path / "stoves" / name).write_text("mine")
    told = begin(tmp_path / "stoves")
    assert told.exit_code == 1
    assert name in told.output
    assert [p.name for p in (tmp_path / "stoves").iterdir()] == [name]
    assert (tmp_path / "stoves" / name).read_text() == "mine"
    assert not (tmp_path / "content").exists()


def test_a_second_campaign_joins_the_workspace_of_the_first(tmp_path: Path) -> None:
    begin(tmp_path / "stoves")
    (tmp_path / "content/publication.yaml").write_text("title: Boil and Tell\n")
    begin(tmp_path / "pots")
    assert (tmp_path / "content/publication.yaml").read_text() == "title: Boil and Tell\n"
    assert compile_site(tmp_path).campaigns == 2


def test_where_it_would_not_be_found_it_is_not_begun(tmp_path: Path) -> None:
    begin(tmp_path / "stoves")
    for place in (tmp_path, tmp_path / "stoves/inner"):
        told = begin(place)
        assert told.exit_code == 1
        assert "workspace" in told.output


@pytest.mark.parametrize(
    "wrong",
    [
        ["--measure", "boil time: timd, s, lower"],
        ["--contender", "???"],
        ["--measure", "noise: level, blarghs, lower"],
    ],
)
def test_what_would_not_compile_is_not_written(tmp_path: Path, wrong: list[str]) -> None:
    told = begin(tmp_path / "stoves", *wrong)
    assert told.exit_code == 1
    assert "Nothing was written" in told.output
    assert list(tmp_path.iterdir()) == []


def test_a_name_that_would_hide_a_page_of_the_site_is_refused(tmp_path: Path) -> None:
    assert begin(tmp_path / "methods").exit_code == 1
    assert not (tmp_path / "methods").exists()


def test_editors_find_the_schema_and_the_files_meet_it(tmp_path: Path) -> None:
    begin(tmp_path / "stoves")
    for name in ("stoves/campaign.yaml", "content/publication.yaml"):
        path = tmp_path / name
        first = path.read_text().splitlines()[0]
        assert first.startswith("# yaml-language-server: $schema=")
        schema = json.loads((path.parent / first.partition("=")[2]).read_text())
        jsonschema.Draft202012Validator.check_schema(schema)
        jsonschema.validate(yaml.load(path.read_text(), yaml.BaseLoader), schema)


@pytest.mark.parametrize(
    "text",
    [
        "plain words",
        "no",
        "Which: one?",
        "5:31",
        "# 1",
        "- dash",
        "it's “so”",
        'say "x"',
        "tab\there",
        "50 %",
        "a: b",
        "",
        "1.0",
        "x #y",
        "[a]",
        "trailing ",
    ],
)
def test_any_text_survives_being_written_as_yaml(text: str) -> None:
    """YAML 1.1 as PyYAML reads it, with every scalar kept as text."""
    assert yaml.load(f"k: {in_yaml(text)}", yaml.BaseLoader) == {"k": text}


def test_an_awkward_title_and_name_are_taken_as_typed(tmp_path: Path) -> None:
    told = begin(
        tmp_path / "s",
        "--title",
        'Which is "best": a #1 or no?',
        "--contender",
        "yes: Yes & Söhne",
        "--contender",
        "b: B",
    )
    assert told.exit_code == 0, told.output
    page = (compile_site(tmp_path / "s").out / "s/index.html").read_text(encoding="utf-8")
    assert "Yes &amp; Söhne" in page
    assert not [f for f in audit_path(tmp_path / "s") if f.severity == "error"]
