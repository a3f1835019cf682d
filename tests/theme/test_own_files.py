"""A mistake in an author's theme is told with its file and line, and with what to do; a theme that is right says nothing.

What a browser leaves out: CSS Syntax 3, 5.4 (an unclosed block takes all that follows into itself; an unclosed string ends its
declaration, 4.3.5); CSS Custom Properties 1, 3.1 (a declaration that asks for a property nobody set is invalid).
"""

from __future__ import annotations

from pathlib import Path

import pytest

from reportgen.finding import Finding, Refused
from reportgen.sources import Workspace
from reportgen.theme import load_theme

BASED = {"theme.yaml": "based on: reading-room\n"}


def told(folder: Path, files: dict[str, str], publication: str = "title: T\ntheme: ours\n") -> list[Finding]:
    """What there is to say about a theme `ours` of these files."""
    for name, text in {
        "content/publication.yaml": publication,
        **{f"themes/ours/{n}": t for n, t in files.items()},
    }.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text)
    try:
        load_theme(Workspace(folder, ()), "ours")
    except Refused as refused:
        return list(refused.findings)
    return []


@pytest.mark.parametrize(
    ("style", "line", "says"),
    [
        ("a { color: red }\n.b {\n  color: blue;\n", 2, "the brace opened here isn’t closed"),
        ("@media print {\n  a { b: c }\n\n.d { e: f }\n", 1, "the brace opened here isn’t closed"),
        ("a { b: c }\n}\n", 2, "this brace closes nothing"),
        ("a { b: c }\n/* why\n", 2, "a comment begins here and doesn’t end"),
        ('a::before {\n  content: "x;\n}\n', 2, "a quote begins here and doesn’t end on its line"),
        ("a {\n  color: var(--folow);\n}\n", 2, "nothing sets “--folow”"),
        ("/* for: parts/grd.html */\na { b: c }\n", 1, "it is for “parts/grd.html”, and there is no such template"),
    ],
)
def test_what_a_browser_would_leave_out_is_told_with_its_line(tmp_path: Path, style: str, line: int, says: str) -> None:
    (finding,) = told(tmp_path, {**BASED, "styles/95-ours.css": style})
    assert (finding.rule, str(finding.place), finding.says) == (
        "theme-file",
        f"themes/ours/styles/95-ours.css:{line}",
        says,
    )


@pytest.mark.parametrize(
    ("file", "meant"),
    [
        ("templates/campain.html", "campaign.html"),
        ("templates/parts/caveats.html", "parts/caveat.html"),
        ("template/campaign.html", "templates"),
        ("style/95-ours.css", "styles"),
        ("theme.yml", "theme.yaml"),
    ],
)
def test_a_misspelt_name_is_told_with_the_one_that_was_meant(tmp_path: Path, file: str, meant: str) -> None:
    (finding,) = told(tmp_path, {**BASED, file: "x"})
    assert (finding.rule, finding.place.file, finding.do) == (
        "theme-file",
        f"themes/ours/{file}",
        f"did you mean “{meant}”?",
    )


def test_a_colour_that_is_nearly_another_is_told_so(tmp_path: Path) -> None:
    (finding,) = told(tmp_path, {**BASED, "styles/95-ours.css": "a { color: var(--folow) }"})
    assert finding.do == "did you mean “--follow”?"


def test_a_file_of_styles_is_known_by_its_name(tmp_path: Path) -> None:
    (finding,) = told(tmp_path, {**BASED, "styles/95-ours.scss": "a { b: c }"})
    assert finding.says == "styles are files whose names end in .css"


def test_all_that_is_wrong_with_a_theme_is_told_at_once(tmp_path: Path) -> None:
    files = {**BASED, "styles/95.css": "a {", "styles/96.css": "}", "templates/campain.html": "", "picture.png": ""}
    assert len(told(tmp_path, files)) == 4


def test_a_theme_that_is_right_says_nothing(tmp_path: Path) -> None:
    files = {
        **BASED,
        "readme.md": "Ours",
        "static/marks/ours.svg": "<svg/>",
        "styles/95-ours.css": '/* for: wide/*.html */\n:root { --ours: 1em }\na::before { content: "}"; margin: var(--ours) var(--x, 0) }',
        "templates/changes.html": '{% extends "base.html" %}{% from "parts/ours.html" import line %}',
        "templates/parts/ours.html": "{% macro line() %}{% endmacro %}",
    }
    assert told(tmp_path, files) == []


def test_our_own_themes_have_nothing_wrong_with_them(tmp_path: Path) -> None:
    own = Path(load_theme.__code__.co_filename).parents[2] / "themes"
    for theme in sorted(p.name for p in own.iterdir()):
        files = {p.relative_to(own / theme).as_posix(): p.read_text() for p in (own / theme).rglob("*") if p.is_file()}
        assert told(tmp_path / theme, files) == []


def test_an_unknown_theme_is_told_where_the_publication_asks_for_it(tmp_path: Path) -> None:
    (tmp_path / "content").mkdir()
    (tmp_path / "content/publication.yaml").write_text("# ours\ntitle: T\ntheme: nowhere\n")
    with pytest.raises(Refused) as refused:
        load_theme(Workspace(tmp_path, ()), "nowhere")
    (finding,) = refused.value.findings
    assert str(finding.place) == "content/publication.yaml:3:8"
    assert "field-book, reading-room" in finding.do


def test_a_ring_is_told_where_it_closes(tmp_path: Path) -> None:
    (tmp_path / "themes/theirs").mkdir(parents=True)
    (tmp_path / "themes/theirs/theme.yaml").write_text("title: Theirs\nbased on: ours\n")
    (finding,) = told(tmp_path, {"theme.yaml": "based on: theirs\n"})
    assert (finding.rule, str(finding.place)) == ("theme-ring", "themes/theirs/theme.yaml:2:11")


def test_a_theme_that_is_based_on_nothing_and_lacks_pages_is_told_which(tmp_path: Path) -> None:
    (finding,) = told(tmp_path, {"theme.yaml": "title: Ours\n", "templates/base.html": "x"})
    assert (finding.rule, finding.place.file) == ("theme-lacks", "themes/ours/theme.yaml")
    assert "campaign.html" in finding.says
    assert "base.html" not in finding.says


@pytest.mark.parametrize(
    ("template", "line", "says"),
    [
        ("", 1, "nothing stands in this template"),
        ("\n{# later #}\n", 1, "nothing stands in this template"),
        ('{% extends "base.html" %}\n{% block txt %}a{% endblock %}\n', 2, "“base.html” has no block “txt”"),
        (
            '{% extends "base.html" %}\n\n<p>a</p>\n{% block text %}{% endblock %}\n',
            3,
            "this stands outside the blocks",
        ),
        ('{% extends "base.html" %}\n{% if view %}<p>a</p>{% endif %}\n', 2, "this stands outside the blocks"),
    ],
)
def test_what_a_template_writes_and_no_page_shows_is_told_with_its_line(
    tmp_path: Path, template: str, line: int, says: str
) -> None:
    """Template inheritance: the one that extends puts its blocks in the place of the base's, and nothing else."""
    (finding,) = told(tmp_path, {**BASED, "templates/campaign.html": template})
    assert str(finding.place).startswith(f"themes/ours/templates/campaign.html:{line}")
    assert finding.says.startswith(says)
    assert finding.do


@pytest.mark.parametrize(
    "template",
    [
        '{% extends "base.html" %}\n{% set a = 1 %}\n{% block text %}{% block inner %}b{% endblock %}{% endblock %}\n',
        '{# mine #}\n{% from "parts/sign.html" import sign %}\n<p>a page all of its own</p>\n',
    ],
)
def test_a_template_whose_blocks_are_all_asked_for_says_nothing(tmp_path: Path, template: str) -> None:
    assert told(tmp_path, {**BASED, "templates/campaign.html": template}) == []


def test_a_part_may_be_emptied(tmp_path: Path) -> None:
    assert told(tmp_path, {**BASED, "templates/parts/formerly.html": ""}) == []
