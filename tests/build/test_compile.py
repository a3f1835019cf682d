"""A compile as a user meets it: what comes out, what stays, what stops it."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from reportgen.browser.links import links
from reportgen.browser.standing import read_site
from reportgen.build.progress import Progress
from reportgen.build.run import audit_path, compile_site
from reportgen.finding import Refused
from reportgen.pictures import look
from tests.campaigns import SMALLEST, SMALLEST_READINGS, compile_campaign, refusal, result_of, write_campaign
from tests.photographs import photograph

ROOT = Path(__file__).parents[2]


def files(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_the_smallest_campaign_compiles_as_it_stands(tmp_path: Path) -> None:
    told = compile_campaign(tmp_path)
    # 231.4 - 217.1 = 14.3 and 217.1 - 202.6 = 14.5; their mean by hand is 14.4
    assert result_of(told, "gas-burned", "corvane")["value"] == pytest.approx(14.4, abs=1e-9)
    assert result_of(told, "boil-time", "ostler")["value"] == pytest.approx((230.1 + 226.4) / 2, abs=1e-9)


def test_raw_files_are_passed_on_byte_for_byte_and_never_written_to(tmp_path: Path) -> None:
    readings = SMALLEST_READINGS.replace("\n", "\r\n").encode("utf-8-sig")
    folder = write_campaign(tmp_path, SMALLEST, readings=readings)
    built = compile_site(folder)
    assert (folder / "readings.csv").read_bytes() == readings
    assert (built.out / "stoves/files/readings.csv").read_bytes() == readings


def test_the_same_files_give_the_same_bytes_in_another_folder_and_another_process(tmp_path: Path) -> None:
    sites = []
    for place, seed in (("a", "1"), ("b/deeper", "2")):
        (tmp_path / place).mkdir(parents=True)
        folder = write_campaign(tmp_path / place)
        command = "from reportgen.cli import main; main()"
        subprocess.run(
            [sys.executable, "-c", command, "compile", str(folder), "--out", str(tmp_path / place / "site")],
            cwd=ROOT,
            env={"PYTHONHASHSEED": seed, "PATH": "", "TZ": "Asia/Tokyo" if seed == "1" else "UTC"},
            check=True,
            capture_output=True,
        )
        sites.append(files(tmp_path / place / "site"))
    assert {".html", ".json", ".csv", ".parquet", ".bib"} <= {Path(path).suffix for path in sites[0]}
    assert sites[0] == sites[1]


def test_all_mistakes_of_all_campaigns_are_told_in_one_run_and_the_old_site_stays(tmp_path: Path) -> None:
    (tmp_path / "content").mkdir()
    (tmp_path / "content/publication.yaml").write_text("title: Boil and Tell\n")
    write_campaign(tmp_path)
    (tmp_path / "stoves").rename(tmp_path / "pots")
    write_campaign(tmp_path)
    built = compile_site(tmp_path)
    before = files(built.out)
    assert built.campaigns == 2
    for name in ("pots", "stoves"):
        path = tmp_path / name / "campaign.yaml"
        path.write_text(path.read_text().replace("contenders:", "contendres:"))
    with pytest.raises(Refused) as refused:
        compile_site(tmp_path)
    errors = [f for f in refused.value.findings if f.severity == "error"]
    assert {f.place.file for f in errors} == {"pots/campaign.yaml", "stoves/campaign.yaml"}
    assert files(built.out) == before


def test_an_error_names_its_place_and_leaves_no_site(tmp_path: Path) -> None:
    findings = refusal(tmp_path, SMALLEST.replace("unit: g", "unti: g"), readings=SMALLEST_READINGS)
    assert ("campaign.yaml", 8) in [(f.place.file, f.place.line) for f in findings]
    assert all(f.says and f.place.file for f in findings)


def test_the_audit_writes_nothing(tmp_path: Path) -> None:
    folder = write_campaign(tmp_path)
    before = files(tmp_path)
    found = audit_path(folder)
    assert files(tmp_path) == before
    assert found
    assert all(f.severity != "error" for f in found)


def test_no_file_of_the_authors_is_lost_to_a_site_put_in_its_place(tmp_path: Path) -> None:
    folder = write_campaign(tmp_path)
    before = files(folder)
    with pytest.raises(Refused):
        compile_site(folder, folder)
    assert {name: data for name, data in files(folder).items() if not name.startswith(".kept")} == before


def test_who_waits_hears_of_every_step_of_every_campaign(tmp_path: Path) -> None:
    heard: list[Progress] = []
    compile_site(write_campaign(tmp_path), None, heard.append)
    steps = [p.step for p in heard]
    assert (
        steps.index("reading the declarations")
        < steps.index("reading the measurements")
        < steps.index("drawing charts")
    )
    assert heard[-1].of == 0


WORKSPACE = {
    "content/publication.yaml": "title: Boil and Tell\n",
    "content/how-we-test.md": "# How we test\n\nIn rounds.\n",
}


def workspace(place: Path, **texts: str) -> Path:
    for name, text in {**WORKSPACE, **texts}.items():
        (place / name).parent.mkdir(parents=True, exist_ok=True)
        (place / name).write_text(text)
    return write_campaign(place)


def test_a_campaigns_text_may_name_the_sites_own_pages_and_an_unknown_one_is_an_error(tmp_path: Path) -> None:
    folder = workspace(tmp_path)
    (folder / "conclusions.md").write_text("See [how](page:how-we-test).\n")
    built = compile_site(tmp_path)
    assert 'href="../about/how-we-test.html"' in (built.out / "stoves/index.html").read_text(encoding="utf-8")
    (folder / "conclusions.md").write_text("See\n[how](page:how-we-tset).\n")
    with pytest.raises(Refused) as refused:
        compile_site(tmp_path)
    (error,) = [f for f in refused.value.findings if f.severity == "error"]
    assert (error.place.file, error.place.line) == ("stoves/conclusions.md", 2)
    assert "how-we-test" in error.do


def test_a_text_of_the_site_that_leads_nowhere_is_an_error_of_the_audit_too(tmp_path: Path) -> None:
    workspace(tmp_path, **{"content/about.md": "# About\n\nSee [us](page:abuot).\n"})
    (error,) = [f for f in audit_path(tmp_path) if f.severity == "error"]
    assert (error.place.file, error.place.line) == ("content/about.md", 3)


def test_a_picture_that_a_text_shows_stands_on_the_site(tmp_path: Path) -> None:
    folder = write_campaign(tmp_path)
    (folder / "photo.png").write_bytes(photograph(kind="PNG"))
    (folder / "conclusions.md").write_text("![The stoves](photo.png)\n")
    built = compile_site(folder)
    assert look((built.out / "stoves/files/photo.png").read_bytes()) == look(photograph(kind="PNG"))


@pytest.mark.parametrize("name", ["notes.pdf", "two words.pdf", "50 % more.pdf"])
def test_a_file_that_a_text_leads_to_stands_on_the_site_whatever_its_name(tmp_path: Path, name: str) -> None:
    folder = write_campaign(tmp_path)
    (folder / name).write_bytes(b"%PDF-1.4 of no pages")
    (folder / "conclusions.md").write_text(f"See [our notes](<{name}>).\n")
    site = compile_site(folder).out
    assert (site / "stoves/files" / name).is_file()
    assert list(links(read_site(site))) == []


def test_mistakes_in_settings_texts_and_campaigns_are_told_together(tmp_path: Path) -> None:
    folder = workspace(tmp_path, **{"content/publication.yaml": "titel: x\n"})
    (tmp_path / "content/about.md").write_bytes(b"# About \xff\n")
    (folder / "campaign.yaml").write_text("title: x\ncontenders: [a, b]\nmeasure:\n  gas: one reding, g\n")
    with pytest.raises(Refused) as refused:
        compile_site(tmp_path)
    places = {f.place.file for f in refused.value.findings if f.severity == "error"}
    assert places >= {"content/publication.yaml", "content/about.md", "stoves/campaign.yaml"}


def test_mistakes_in_language_theme_and_texts_are_told_together(tmp_path: Path) -> None:
    folder = workspace(tmp_path, **{"content/publication.yaml": "title: x\nlanguage: fr\ntheme: nowhere\n"})
    (tmp_path / "content/languages").mkdir()
    (tmp_path / "content/languages/fr.yaml").write_text("language: fr\nname: français\nphrases:\n  limit.abve: x\n")
    (folder / "conclusions.md").write_text("See [how](page:how-we-tset).\n")
    with pytest.raises(Refused) as refused:
        compile_site(tmp_path)
    rules = {f.rule for f in refused.value.findings if f.severity == "error"}
    assert rules == {"unknown-phrase", "no-theme", "unknown-reference"}


def test_a_broken_template_of_the_sites_pages_hides_no_other_mistake(tmp_path: Path) -> None:
    folder = workspace(tmp_path, **{"content/publication.yaml": "title: x\ntheme: ours\n"})
    (tmp_path / "themes/ours/templates/wide").mkdir(parents=True)
    (tmp_path / "themes/ours/theme.yaml").write_text("based on: reading-room\n")
    (tmp_path / "themes/ours/templates/wide/archive.html").write_text("{{ view.nothing }}\n")
    (folder / "conclusions.md").write_text("See [how](page:how-we-tset).\n")
    with pytest.raises(Refused) as refused:
        compile_site(tmp_path)
    rules = {f.rule for f in refused.value.findings if f.severity == "error"}
    assert rules == {"broken-template", "unknown-reference"}
