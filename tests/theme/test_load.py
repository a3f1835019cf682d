"""A theme is laid over what it is based on; what is wrong with it is said with its place."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest

from reportgen.finding import Refused
from reportgen.sources import Workspace
from reportgen.theme import Frame, load_theme, render


@dataclass(frozen=True)
class Bare:
    frame: Frame


PAGE = Bare(Frame("Noise", "Boil and Tell", "../index.html"))


def test_a_theme_holds_only_what_differs_and_the_rest_comes_from_its_base(tmp_path: Path) -> None:
    ws = _themes(tmp_path, ours="title: Ours\nbased on: reading-room\n")
    (tmp_path / "themes/ours/templates").mkdir()
    (tmp_path / "themes/ours/templates/changes.html").write_text("ours for {{ view.frame.title }}")
    theme, base = load_theme(ws, "ours"), load_theme(None)
    assert render(theme, "changes.html", PAGE, "a/changes.html") == "ours for Noise\n"
    assert {k for k in base.templates if theme.templates[k] != base.templates[k]} == {"changes.html"}
    assert theme.sheet_of("changes.html") == "static/ours/changes.css"
    assert theme.static["static/ours/test.css"] == base.static["static/reading-room/test.css"]


def test_a_style_sheet_of_the_same_name_takes_the_place_of_the_bases(tmp_path: Path) -> None:
    ws = _themes(tmp_path, ours="based on: reading-room\n")
    (tmp_path / "themes/ours/styles").mkdir()
    (tmp_path / "themes/ours/styles/10-colours.css").write_text(":root { --c1: teal; }")
    sheet = load_theme(ws, "ours").static["static/ours/base.css"].decode()
    assert "--c1:teal" in sheet
    assert "--c2:" not in sheet
    assert "--measure:" in sheet


def test_a_theme_may_bear_the_name_of_its_base(tmp_path: Path) -> None:
    ws = _themes(tmp_path, **{"reading-room": "title: Mine\nbased on: reading-room\n"})
    theme = load_theme(ws, "reading-room")
    assert theme.title == "Mine"
    assert "base.html" in theme.templates


def test_a_page_finds_the_site_s_root_from_where_it_stands() -> None:
    theme = load_theme(None)
    for address, root in (("index.html", ""), ("stoves/index.html", "../"), ("stoves/tests/noise.html", "../../")):
        page = render(theme, "base.html", PAGE, address)
        assert f'href="{root}static/reading-room/base.css"' in page
        assert f'href="{root}static/reading-room/on-paper.css" media="print"' in page


@pytest.mark.parametrize(
    ("themes", "rule", "place"),
    [
        ({}, "no-theme", "content/publication.yaml"),
        ({"ours": "based on: nowhere\n"}, "no-theme", "themes/ours/theme.yaml:1:11"),
        ({"ours": "based on: theirs\n", "theirs": "based on: ours\n"}, "theme-ring", "themes/theirs/theme.yaml:1:11"),
        ({"ours": "based on: ours\n"}, "theme-ring", "themes/ours/theme.yaml:1:11"),
        ({"ours": "title: T\ncolour: red\n"}, "theme-unreadable", "themes/ours/theme.yaml:2:1"),
        ({"ours": "title: T\nsays: [a, b]\n"}, "theme-unreadable", "themes/ours/theme.yaml:2:1"),
        ({"ours": "- title\n"}, "theme-unreadable", "themes/ours/theme.yaml:1:1"),
        ({"ours": "title: [T\nbased on: reading-room\n"}, "broken-yaml", "themes/ours/theme.yaml:1:8"),
        ({"ours": "title: !!python/name:os T\n"}, "tag", "themes/ours/theme.yaml:1:8"),
    ],
)
def test_a_theme_that_cannot_be_used_is_refused_with_its_place(
    tmp_path: Path, themes: dict[str, str], rule: str, place: str
) -> None:
    with pytest.raises(Refused) as refused:
        load_theme(_themes(tmp_path, **themes), "ours")
    (finding,) = refused.value.findings
    assert (finding.rule, str(finding.place)) == (rule, place)
    assert "unicode string" not in finding.why  # the parser's own words
    assert finding.do


def test_a_base_nearly_named_is_recognised(tmp_path: Path) -> None:
    with pytest.raises(Refused) as refused:
        load_theme(_themes(tmp_path, ours="based on: reading-rom\n"), "ours")
    (finding,) = refused.value.findings
    assert finding.do == "did you mean “reading-room”?"


def test_a_theme_s_title_is_text_whatever_it_looks_like(tmp_path: Path) -> None:
    assert load_theme(_themes(tmp_path, ours="title: 2026-02-30\nbased on: field-book\n"), "ours").title == "2026-02-30"


@pytest.mark.parametrize(
    ("text", "line"), [("fine\n{{ view.frame.colour }}", 2), ("fine\n\n{% if %}", 3), ("{% include 'no.html' %}", 1)]
)
def test_a_broken_template_is_refused_with_its_file_and_line(tmp_path: Path, text: str, line: int) -> None:
    ws = _themes(tmp_path, ours="based on: reading-room\n")
    (tmp_path / "themes/ours/templates").mkdir()
    (tmp_path / "themes/ours/templates/changes.html").write_text(text)
    with pytest.raises(Refused) as refused:
        render(load_theme(ws, "ours"), "changes.html", PAGE, "a/changes.html")
    (finding,) = refused.value.findings
    assert (finding.place.file, finding.place.line) == ("themes/ours/templates/changes.html", line)


@pytest.mark.parametrize(
    "text", ["{{ 1 / 0 }}", "{{ 'a' + 1 }}", "{{ 12 | unbroken }}", "{% include 'changes.html' %}", "{{ 7 | nosuch }}"]
)
def test_what_a_template_can_t_reckon_with_is_refused_with_its_line(tmp_path: Path, text: str) -> None:
    ws = _themes(tmp_path, ours="based on: reading-room\n")
    (tmp_path / "themes/ours/templates").mkdir()
    (tmp_path / "themes/ours/templates/changes.html").write_text(f"fine\n{text}")
    with pytest.raises(Refused) as refused:
        render(load_theme(ws, "ours"), "changes.html", PAGE, "a/changes.html")
    (finding,) = refused.value.findings
    assert (finding.rule, str(finding.place)) == ("broken-template", "themes/ours/templates/changes.html:2")


def test_a_part_that_takes_something_else_than_the_one_it_replaces_is_refused(tmp_path: Path) -> None:
    ws = _themes(tmp_path, ours="based on: reading-room\n")
    (tmp_path / "themes/ours/templates/parts").mkdir(parents=True)
    parts = "{% macro contents() %}x{% endmacro %}{% macro trail() %}x{% endmacro %}"
    (tmp_path / "themes/ours/templates/parts/contents.html").write_text(parts)
    with pytest.raises(Refused) as refused:
        render(load_theme(ws, "ours"), "base.html", PAGE, "a/changes.html")
    (finding,) = refused.value.findings
    assert (finding.rule, finding.place.file) == ("broken-template", "themes/reading-room/templates/base.html")
    assert "contents" in finding.says or "trail" in finding.says


@pytest.mark.parametrize(
    ("call", "says"),
    [
        ('say("archive.off")', "there is no phrase “archive.off”; did you mean “archive.of”?"),
        (
            'say("Words of mine")',
            "there is no phrase “Words of mine”; words of your own stand in a template as they are",
        ),
        ('say("archive.of", date="today")', "the phrase “archive.of” lacks something: contenders"),
        ('say("methods.versions", versions="1")', "lacks something: on.methods.versions has forms: it needs a number"),
    ],
)
def test_a_phrase_that_is_not_there_is_told_with_its_line(tmp_path: Path, call: str, says: str) -> None:
    ws = _themes(tmp_path, ours="based on: reading-room\n")
    (tmp_path / "themes/ours/templates").mkdir()
    (tmp_path / "themes/ours/templates/changes.html").write_text(f"fine\n{{{{ {call} }}}}")
    with pytest.raises(Refused) as refused:
        render(load_theme(ws, "ours"), "changes.html", PAGE, "a/changes.html")
    (finding,) = refused.value.findings
    assert (finding.place.line, finding.says.endswith(says)) == (2, True)


def _themes(place: Path, **themes: str) -> Workspace:
    for name, text in themes.items():
        (place / "themes" / name).mkdir(parents=True)
        (place / "themes" / name / "theme.yaml").write_text(text)
    return Workspace(place, ())


def test_a_field_that_is_not_there_is_told_with_those_that_are(tmp_path: Path) -> None:
    ws = _themes(tmp_path, ours="based on: reading-room\n")
    (tmp_path / "themes/ours/templates").mkdir()
    (tmp_path / "themes/ours/templates/changes.html").write_text("{{ view.frames.title }}")
    with pytest.raises(Refused) as refused:
        render(load_theme(ws, "ours"), "changes.html", PAGE, "a/changes.html")
    (finding,) = refused.value.findings
    assert finding.says == "this template can't be used: Bare has no “frames”; it has frame"
