"""Every slip of an author's: one message, with its place and its remedy, and as many in one run as there are."""

import pytest

from reportgen.campaign.load import load_campaign, load_publication
from reportgen.finding import Refused
from reportgen.sources import find_workspace
from tests.campaign.written_examples import write

HEAD = "title: T\ncontenders: {a: A, b: B}\nreadings: r.csv\n"
GOOD = HEAD + "measure: {x: count}\n"


def findings(root, files, folder="stoves"):
    """What there is to say about the campaign `stoves` of a workspace with these files."""
    base = {"content/publication.yaml": "title: P\n", "stoves/r.csv": "contender,x\n"}
    for rel, text in {**base, **files}.items():
        path = root / rel
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
    ws = find_workspace(root / folder)
    publication, _ = load_publication(ws)
    try:
        return load_campaign(ws, folder, publication).findings
    except Refused as refused:
        return refused.findings


def of_yaml(root, text):
    return findings(root, {"stoves/campaign.yaml": text})


ONE_MESSAGE = {
    "a misspelt key": (HEAD + "mesure: {x: count}\n", "unknown-key", 4, 1, "measure"),
    "a misspelt key below": (HEAD + "measure:\n  x:\n    kind: count\n    beter: lower\n", "unknown-key", 7, 5, "better"),
    "a misspelt kind": (HEAD + "measure: {x: {kind: cuont}}\n", "wrong-value", 4, 21, "count"),
    "a misspelt kind in one line": (HEAD + "measure:\n  x: cuont\n", "wrong-value", 5, 6, "count"),
    "an unknown contender": (GOOD + "exclude: {contender: c, because: z}\n", "unknown-contender", 5, 22, "a, b"),
    "an unknown quantity": (GOOD + "caveats: {about: xx, says: z}\n", "unknown-quantity", 5, 18, "x"),
    "an unknown instrument": (HEAD + "measure: {x: 'timed, s, stopwach'}\n", "unknown-instrument", 4, 14, "stopwatch"),
    "an unknown method": (HEAD + "measure: {x: {kind: count, method: singl}}\n", "unknown-method", 4, 36, "methods/"),
    "an unknown version": (
        HEAD + "measure: {x: {kind: count, method: 'single-reading, version 9'}}\n", "unknown-method", 4, 36, "version 1",
    ),
    "a claim of nothing measured": (
        "title: T\ncontenders: {a: {title: A, claims: {says: s, quantity: z}}}\nreadings: r.csv\nmeasure: {x: count}\n",
        "unknown-quantity", 2, 56, "x",
    ),
    "a missing file of readings": (GOOD.replace("r.csv", "rr.csv"), "missing-file", 3, 11, "stoves/r.csv"),
    "a path out of the workspace": (GOOD.replace("r.csv", "../../r.csv"), "leaves-workspace", 3, 11, "Copy"),
    "an absolute path": (GOOD.replace("r.csv", "/etc/hostname"), "leaves-workspace", 3, 11, "Copy"),
    "a missing contender's file": (GOOD.replace("{a: A, b: B}", "{a: A, b: B}").replace("{a: A, b: B}", "[a]"),
                                   "missing-file", 2, 14, "contenders/a.yaml"),
    "a quantity twice": (HEAD + "measure: {gas burned: count, gas-burned: count}\n", "duplicate-name", 4, 30, "another name"),
    "a key twice": (GOOD + "title: U\n", "duplicate-key", 5, 1, "Put the two together"),
    "a missing key": (GOOD.replace("title: T\n", ""), "missing-key", 1, 1, "title:"),
    "nothing after a key": (GOOD + "place:\n", "nothing-written", 5, 1, "not noted"),
    "a list for a mapping": (HEAD + "measure: [x, y]\n", "wrong-shape", 4, 10, "brackets"),
    "a mapping for a text": (GOOD.replace("title: T", "title: {a: b}"), "wrong-shape", 1, 8, "quote it"),
    "a list at the top": ("- a\n- b\n", "wrong-shape", 1, 1, "dashes"),
    "a text at the top": ("hello\n", "wrong-shape", 1, 1, "Indent"),
    "an empty file": ("", "empty-file", 0, 0, "title"),
    "comments alone": ("# nothing yet\n", "empty-file", 0, 0, "title"),
    "a tab": (HEAD + "measure:\n\tx: count\n", "broken-yaml", 5, 1, "spaces"),
    "a bracket left open": (GOOD + "show: [g, oz\nplace: here\n", "broken-yaml", 5, 7, "Close"),
    "a quotation mark left open": (GOOD + "place: 'here\n", "broken-yaml", 5, 8, "Close"),
    "an apostrophe in single quotes": (GOOD + "place: 'a friend's cellar'\n", "broken-yaml", 5, 18, "twice"),
    "no space after a colon": ("title:T\ncontenders: {a: A}\n", "broken-yaml", 1, 6, "space after"),
    "a second document": (GOOD + "---\na: b\n", "broken-yaml", 5, 1, "one document"),
    "a control character": (GOOD + "place: \a\n", "broken-yaml", 5, 8, "Delete"),
    "a percent sign in front": (GOOD + "place: %here\n", "broken-yaml", 5, 8, "Quote"),
    "a star in front": (GOOD + "place: *here*\n", "broken-yaml", 5, 8, "Quote"),
    "a greater-than sign": (GOOD + "place: >999\n", "broken-yaml", 5, 8, "over 999"),
    "lists far too deep": ("[" * 5000, "broken-yaml", 1, 1001, "flatter"),
    "dashes far too deep": ("- " * 5000 + "a", "broken-yaml", 1, 1999, "flatter"),
    "an ampersand in front": (GOOD + "place: &c here\n", "anchor", 5, 8, "Quote"),
    "an exclamation mark in front": (GOOD + "place: !here now\n", "tag", 5, 8, "Quote"),
    "a merge key": (GOOD + "<<: {place: here}\n", "merge-key", 5, 1, "Write the keys out"),
    "a second colon": (GOOD + "caveats:\n  - says: Note: hot\n", "broken-yaml", 6, 15, "quote it"),
    "a colon in a list of texts": (GOOD + "cautions:\n  - Warning: hot\n", "wrong-shape", 6, 5, "quote it"),
    "a comma in braces": (
        GOOD + "incidents:\n  - {what: leaked, then stopped, contender: a}\n", "comma-in-braces", 6, 20, "Quote it",
    ),
    "a hash in a sentence": (GOOD + "question: Is it #1 today\n", "cut-by-hash", 5, 17, "Quote it"),
    "a hash that may be a comment": (GOOD + "question: Is it # one\n", "cut-by-hash", 5, 17, "Quote it"),
    "a hash right after the colon": (GOOD + "place: #3, the cellar\n", "cut-by-hash", 5, 8, "Quote it"),
    "a number beyond all numbers": (
        HEAD + "measure: {x: {kind: timed, unit: s, matters: 1e99999 s}}\n", "wrong-value", 4, 46, "unit",
    ),
    "a contender called all": (GOOD.replace("a: A,", "all: A,"), "reserved-name", 2, 14, "another id"),
    "a decimal comma": (HEAD + "measure: {x: {kind: timed, unit: s, matters: '1,5 s'}}\n", "wrong-value", 4, 46, "point"),
    "no unit where one is needed": (HEAD + "measure: {x: timed}\n", "quantity-without-unit", 4, 11, "unit: s"),
    "no grades": (HEAD + "measure: {x: grade}\n", "grade-without-grades", 4, 11, "grades:"),
    "no headline": (
        HEAD + "tests:\n  t: {title: T, quantities: {p: count, q: count}}\n", "headline-missing", 5, 3, "headline: p",
    ),
    "a log column's name": (HEAD + "measure: {value: count}\n", "name-of-a-log-column", 4, 11, "longer name"),
    "a name in other letters": (GOOD.replace("a: A,", "Б: B,"), "name-without-letters", 2, 14, "title:"),
    "no contenders": (GOOD.replace("{a: A, b: B}", "{}"), "no-contenders", 1, 1, "contenders:"),
    "no measurement": (HEAD, "no-tests", 1, 1, "measure:"),
    "no readings": (GOOD.replace("readings: r.csv\n", ""), "no-readings", 3, 11, "readings:"),
    "no such day": (GOOD + "tested: 2026-02-30\n", "wrong-value", 5, 9, "day"),
    "a date in words": (GOOD + "tested: last spring\n", "wrong-value", 5, 9, "2026-05-02"),
    "an exclusion of everything": (GOOD + "exclude: {because: z}\n", "exclusion-of-everything", 5, 10, "pass:"),
    "a key of a later version": (GOOD + "sessions: 2\n", "later-version", 5, 1, "Take it out"),
    "anchors of no width": (
        GOOD + "verdict: {groups: {g: {criteria: {x: {worst: 1 g, best: 1 g}}}}}\n", "anchors-alike", 5, 57, "apart",
    ),
}  # fmt: skip


@pytest.mark.parametrize("slip", ONE_MESSAGE)
def test_a_slip_gets_one_message_with_its_place_and_remedy(slip, tmp_path):
    text, rule, line, column, remedy = ONE_MESSAGE[slip]
    (finding,) = of_yaml(tmp_path, text)
    assert (finding.rule, finding.place.line, finding.place.column) == (rule, line, column)
    assert finding.place.file == "stoves/campaign.yaml"
    assert remedy in finding.do
    assert finding.says


def test_many_slips_in_many_files_are_found_in_one_run(tmp_path):
    found = findings(tmp_path, {
        "stoves/campaign.yaml": HEAD.replace("{a: A, b: B}", "[a, b]") + "tests: [t]\nmeasure: {x: {kind: cuont}}\nplase: P\n",
        "stoves/contenders/a.yaml": "titel: A\n",
        "stoves/contenders/b.yaml": "title: B\npaid: much\n",
        "stoves/tests/t.yaml": "title: T\nquantities: {q: {formula: q, better: up}}\nexclude: {contender: c, because: z}\n",
        "stoves/verdict.yaml": "must: {quantity: zz, at most: 3 g}\n",
        "shared/instruments.yaml": "dial: coarse\n",
        "shared/methods/m.1.yaml": "title: M\nscatter: pooled\n",
    })  # fmt: skip
    assert {(f.rule, str(f.place)) for f in found} == {
        ("wrong-value", "stoves/campaign.yaml:5:21"),
        ("unknown-key", "stoves/campaign.yaml:6:1"),
        ("unknown-key", "stoves/contenders/a.yaml:1:1"),
        ("wrong-value", "stoves/contenders/b.yaml:2:7"),
        ("wrong-value", "stoves/tests/t.yaml:2:38"),
        ("unknown-contender", "stoves/tests/t.yaml:3:22"),
        ("unknown-quantity", "stoves/verdict.yaml:1:18"),
        ("wrong-value", "shared/instruments.yaml:1:7"),
        ("wrong-value", "shared/methods/m.1.yaml:2:10"),
    }


def test_broken_yaml_in_one_file_hides_nothing_in_the_others(tmp_path):
    found = findings(tmp_path, {
        "stoves/campaign.yaml": "title: [T\n",
        "stoves/contenders/a.yaml": "titel: A\n",
        "stoves/verdict.yaml": "must: 'x\n",
    })  # fmt: skip
    files = [f.place.file for f in found]
    assert {"stoves/campaign.yaml", "stoves/contenders/a.yaml", "stoves/verdict.yaml"} == set(files)


def test_an_alias_bomb_is_refused_before_it_unfolds(tmp_path):
    lines = ["a0: &a0 [x, x]"] + [f"a{i}: &a{i} [*a{i - 1}, *a{i - 1}]" for i in range(1, 60)]
    found = of_yaml(tmp_path, GOOD + "\n".join(lines) + "\n")
    assert "alias" in {f.rule for f in found}


def test_an_alias_that_holds_itself_is_refused(tmp_path):
    assert "alias" in {f.rule for f in of_yaml(tmp_path, GOOD + "place: &a [*a]\n")}


def test_a_byte_order_mark_is_no_part_of_the_text(tmp_path):
    assert of_yaml(tmp_path, b"\xef\xbb\xbf" + GOOD.encode()) == ()


def test_lines_may_end_as_on_windows(tmp_path):
    assert of_yaml(tmp_path, GOOD.replace("\n", "\r\n")) == ()


def test_another_encoding_is_named_with_line_and_column(tmp_path):
    (finding,) = of_yaml(tmp_path, GOOD.encode() + "place: Küche\n".encode("latin-1"))
    assert (finding.rule, str(finding.place)) == ("not-utf-8", "stoves/campaign.yaml:5:9")
    assert "UTF-8" in finding.do


def test_utf_16_is_called_by_its_name(tmp_path):
    (finding,) = of_yaml(tmp_path, GOOD.encode("utf-16"))
    assert "UTF-16" in finding.says


@pytest.mark.parametrize("name", ["methods", "instruments", "handbook", "about", "static"])
def test_a_campaign_that_would_hide_a_page_is_refused(name, tmp_path):
    (finding,) = findings(tmp_path, {f"{name}/campaign.yaml": GOOD, f"{name}/r.csv": ""}, folder=name)
    assert finding.rule == "hides-a-page"
    assert finding.place.file == f"{name}/campaign.yaml"


def test_two_campaigns_of_one_address_are_refused(tmp_path):
    files = {"stoves/campaign.yaml": GOOD, "content/archive/Stoves/campaign.yaml": GOOD}
    (finding,) = findings(tmp_path, files)
    assert finding.rule == "duplicate-campaign"
    assert "content/archive/Stoves" in finding.says


def test_one_id_in_two_files_of_one_place_is_refused(tmp_path):
    found = findings(tmp_path, {
        "stoves/campaign.yaml": GOOD.replace("{a: A, b: B}", "[a]"),
        "stoves/contenders/a.yaml": "title: A\n",
        "shared/instruments.yaml": "dial: 0.1 mm\n",
        "shared/instruments/dial.yaml": "title: Dial\n",
        "stoves/methods/my-way.1.yaml": "title: M\n",
        "stoves/methods/my_way.1.yaml": "title: M\n",
    })  # fmt: skip
    assert [(f.rule, f.place.file) for f in found] == [
        ("described-twice", "shared/instruments/dial.yaml"),
        ("described-twice", "stoves/methods/my_way.1.yaml"),
    ]


def test_a_contender_described_here_and_in_a_file_is_refused(tmp_path):
    (finding,) = findings(tmp_path, {"stoves/campaign.yaml": GOOD, "stoves/contenders/a.yaml": "title: A\n"})
    assert (finding.rule, str(finding.place)) == ("described-twice", "stoves/campaign.yaml:2:14")


def test_a_test_that_is_listed_and_written_nowhere_is_missed(tmp_path):
    for listed in ("[x, y]", "{y: }"):
        found = of_yaml(tmp_path, GOOD + f"tests: {listed}\n")
        assert {f.rule for f in found} == {"missing-file"}
        assert "tests/y.yaml" in found[-1].says


def test_a_file_in_no_list_is_left_out_with_a_warning(tmp_path):
    (finding,) = findings(tmp_path, {"stoves/campaign.yaml": GOOD, "stoves/contenders/c.yaml": "title: C\n"})
    assert (finding.severity, finding.rule, finding.place.file) == (
        "warning",
        "unlisted-file",
        "stoves/contenders/c.yaml",
    )


@pytest.mark.parametrize(
    "rel", ["contenders/c.yml", "tests/t.yml", "verdict.yml", "methods/m.1.yml", "instruments.yml"]
)
def test_a_file_whose_ending_keeps_it_unread_is_named(rel, tmp_path):
    (finding,) = findings(tmp_path, {"stoves/campaign.yaml": GOOD, f"stoves/{rel}": "title: T\n"})
    assert (finding.rule, finding.place.file) == ("wrong-ending", f"stoves/{rel}")


def test_a_method_without_its_version_is_named(tmp_path):
    (finding,) = findings(tmp_path, {"stoves/campaign.yaml": GOOD, "shared/methods/m.yaml": "title: M\n"})
    assert finding.rule == "method-without-version"
    assert "m.1.yaml" in finding.do


def test_a_repeatability_must_say_what_it_was_found_from(tmp_path):
    method = "title: M\nrepeatability: {x: 0.9 g}\n"
    (finding,) = findings(tmp_path, {"stoves/campaign.yaml": GOOD, "shared/methods/m.1.yaml": method})
    assert (finding.rule, finding.place.line) == ("repeatability-without-passes", 2)


def test_a_broken_publication_is_refused_with_its_place(tmp_path):
    write(tmp_path, {"content/publication.yaml": "title: P\naddress: example.org\nshow: g\ntilte: Q\n"})
    with pytest.raises(Refused) as refused:
        load_publication(find_workspace(tmp_path))
    errors = [(f.rule, f.place.line) for f in refused.value.findings if f.severity == "error"]
    assert errors == [("wrong-value", 2), ("unknown-key", 4)]


def test_a_grid_of_contenders_names_its_row(tmp_path):
    files = {
        "stoves/campaign.yaml": GOOD.replace("{a: A, b: B}", "contenders.csv"),
        "stoves/contenders.csv": "id,title,paid,wieght\na,A,89 EUR,1\nb,B,89 euros,2\n,C,,\nd,D,,,5\n",
    }
    assert [(f.rule, str(f.place)) for f in findings(tmp_path, files)] == [
        ("unknown-column", "stoves/contenders.csv:1"),
        ("wrong-value", "stoves/contenders.csv:3"),
        ("missing-id", "stoves/contenders.csv:4"),
        ("row-too-long", "stoves/contenders.csv:5"),
    ]
