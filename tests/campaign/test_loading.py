"""What the short ways of writing come to, and where shared things are found."""

from decimal import Decimal

import pytest

from reportgen.campaign.kinds import KINDS
from reportgen.campaign.load import load_campaign, load_publication
from reportgen.finding import Place
from reportgen.sources import find_workspace
from tests.campaign.written_examples import write

HEAD = "title: T\ncontenders: {a: A, b: B}\n"


def load(root, text, files=(), folder="stoves"):
    write(
        root,
        {"content/publication.yaml": "title: P\n", f"{folder}/r.csv": "", f"{folder}/campaign.yaml": text},
        dict(files),
    )
    ws = find_workspace(root)
    publication, _ = load_publication(ws)
    return load_campaign(ws, folder, publication)


@pytest.mark.parametrize(
    "line",
    [
        "weighed before and after, g, lower, bench-scale", "bench-scale, g, lower, weighed before and after",
        "lower, weighed before and after, g, bench-scale", "g, bench-scale, lower, weighed   before and after",
    ],
)  # fmt: skip
def test_the_pieces_of_a_measure_come_in_any_order(line, tmp_path):
    q = load(tmp_path, HEAD + f"readings: r.csv\nmeasure:\n  gas: {line}\n").campaign.quantity("gas")
    assert (q.kind, q.unit, q.better, q.instrument) == ("weighed before and after", "g", "lower", "bench-scale")


@pytest.mark.parametrize("line", ["timed, s, stopwatch", "timed, stopwatch, s", "stopwatch, timed, s"])
def test_an_instrument_with_a_plain_name_is_told_from_the_unit(line, tmp_path):
    q = load(tmp_path, HEAD + f"readings: r.csv\nmeasure: {{t: '{line}'}}\n").campaign.quantity("t")
    assert (q.unit, q.instrument) == ("s", "stopwatch")


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_reads_the_columns_its_formula_names(kind, tmp_path):
    rest = ", s" if KINDS[kind].needs_unit else ""
    body = f"{{kind: {kind}, grades: [poor, good]}}" if kind == "grade" else f"'{kind}{rest}'"
    head = HEAD + "laboratory: {name: Lachter, report: attachments/report.pdf}\n"
    campaign = load(tmp_path, head + f"readings: r.csv\nmeasure: {{the thing: {body}}}\n").campaign
    q, test = campaign.quantity("the-thing"), campaign.test("the-thing")
    assert set(q.reads) == {c.name for c in test.columns}
    assert all(name in q.formula for name in q.reads)
    headings = {
        "weighed before and after": ("the thing before", "the thing after"),
        "share lost": ("the thing before", "the thing after"),
        "rise": ("the thing start", "the thing end"),
        "level over background": ("the thing", "the thing background"),
    }
    assert tuple(c.heading for c in test.columns) == headings.get(kind, ("the thing",))


def test_scalars_stay_what_was_written(tmp_path):
    text = HEAD.replace("{a: A, b: B}", "{a: NO, b: 5:31, c: 0123, d: 1e3, e: ~, f: 2026-05-02}")
    campaign = load(tmp_path, text + "readings: r.csv\nmeasure: {x: count}\n").campaign
    assert [c.title for c in campaign.contenders] == ["NO", "5:31", "0123", "1e3", "~", "2026-05-02"]


def test_one_thing_may_stand_without_its_dash(tmp_path):
    text = (
        HEAD
        + "readings: r.csv\nmeasure: {x: count}\ncaveats: One room.\ncautions: Hot.\nexclude: {pass: 2, because: z}\n"
    )
    campaign = load(tmp_path, text).campaign
    assert campaign.caveats[0].says == "One room."
    assert campaign.cautions == ("Hot.",)
    assert campaign.exclusions[0].about.pass_ == "2"
    assert campaign.exclusions[0].decided == "not noted"


@pytest.mark.parametrize(
    "readings",
    ['|\n  contender,x\n  a,3\n\n  b,"4"\n', "\n  table:\n    - [contender, x]\n    - [a, 3]\n    - [b, '4']\n"],
)
def test_a_table_in_the_declaration_keeps_cells_and_lines(readings, tmp_path):
    declared = load(tmp_path, f"title: T\ncontenders: {{a: A, b: B}}\nmeasure: {{x: count}}\nreadings: {readings}")
    (source,) = declared.campaign.test("x").sources
    assert source.rows == (("contender", "x"), ("a", "3"), ("b", "4"))
    text = (tmp_path / "stoves/campaign.yaml").read_text().splitlines()
    for (_, cell), line in zip(source.rows, source.row_lines, strict=True):
        assert cell in text[line - 1]


def test_a_grid_of_contenders_reads_as_their_files_would(tmp_path):
    grid = (
        "id,title,maker,bought where,bought date,paid,listed,as received,fact lid\n"
        'a,"A, the first",Maker,a shop,2026-05-02,89.00 EUR,90 to 120 USD,dent; scratch,glass\n'
        "b,B,,,not noted,,,,\n"
    )
    text = "title: T\ncontenders: contenders.csv\nreadings: r.csv\nmeasure: {x: count}\n"
    declared = load(tmp_path, text, {"stoves/contenders.csv": grid})
    a, b = declared.campaign.contenders
    assert (a.title, a.maker, a.bought_where, a.bought_on.text) == ("A, the first", "Maker", "a shop", "2026-05-02")
    assert [(p.sort, p.text) for p in a.prices] == [("paid", "89.00 EUR"), ("listed", "90 to 120 USD")]
    assert a.prices[0].date.text == "2026-05-02"
    assert a.as_received == ("dent", "scratch")
    assert a.facts == {"lid": "glass"}
    assert b.bought_on.text == "not noted"
    assert declared.at("contender/b") == Place("stoves/contenders.csv", 3)


def test_an_instrument_may_be_described_where_it_is_used(tmp_path):
    text = (
        HEAD + "readings: r.csv\nmeasure: {depth: 'one reading, mm, dial', mass: 'one reading, g', t: 'timed, s'}\n"
        "instruments: {dial: '0.01 mm, up to 10 mm, accuracy ±0.02 mm', g: kitchen-scale, s: {by hand: yes}}\n"
    )
    campaign = load(tmp_path, text).campaign
    assert campaign.instruments["dial"].resolution.value == Decimal("0.01")
    assert campaign.instruments["dial"].origin == "stoves/campaign.yaml"
    assert campaign.test("mass").columns[0].instrument == "kitchen-scale"
    assert campaign.instruments["kitchen-scale"].origin == "ready-made"
    assert (campaign.quantity("t").unit, campaign.test("t").columns[0].instrument) == ("s", "")


def test_a_units_instrument_gives_way_to_a_named_one(tmp_path):
    text = (
        HEAD
        + "readings: r.csv\nmeasure: {a: 'one reading, g', b: 'one reading, g, letter-scale'}\ninstruments: {g: bench-scale}\n"
    )
    campaign = load(tmp_path, text).campaign
    assert campaign.test("a").columns[0].instrument == "bench-scale"
    assert campaign.test("b").columns[0].instrument == "letter-scale"


def test_shared_things_are_looked_up_in_the_campaign_then_the_workspace_then_the_program(tmp_path):
    measure = HEAD + "readings: r.csv\nmeasure: {t: 'timed, s, stopwatch'}\n"
    assert load(tmp_path / "1", measure).campaign.instruments["stopwatch"].origin == "ready-made"
    workspace = {"shared/instruments.yaml": "stopwatch: 0.1 s\n"}
    assert (
        load(tmp_path / "2", measure, workspace).campaign.instruments["stopwatch"].origin == "shared/instruments.yaml"
    )
    campaign = {**workspace, "stoves/instruments/stopwatch.yaml": "resolution: 1 s\n"}
    found = load(tmp_path / "3", measure, campaign).campaign.instruments["stopwatch"]
    assert (found.origin, found.resolution.text) == ("stoves/instruments/stopwatch.yaml", "1 s")


def test_a_method_without_a_version_is_the_newest(tmp_path):
    files = {f"shared/methods/way.{n}.yaml": f"title: W{n}\norder: rounds\n" for n in (2, 10, 9)}
    text = (
        HEAD
        + "readings: r.csv\nmeasure:\n  x: {kind: count, method: way}\n  y: {kind: count, method: 'way, version 2'}\n"
    )
    campaign = load(tmp_path, text, files).campaign
    assert (campaign.test("x").method_version, campaign.test("y").method_version) == (10, 2)
    assert sorted(campaign.methods) == ["way.10", "way.2"]
    assert campaign.test("x").order == "rounds"


def test_what_a_test_says_comes_before_what_its_method_says(tmp_path):
    files = {"shared/methods/way.1.yaml": "title: W\norder: rounds\nscatter: own\nchained: yes\n"}
    text = (
        HEAD
        + "readings: r.csv\nmeasure:\n  x: {kind: count, method: way, order: as it came, scatter: common, chained: no}\n"
    )
    test = load(tmp_path, text, files).campaign.test("x")
    assert (test.order, test.scatter, test.chained) == ("as it came", "common", False)


def test_a_formula_may_name_columns_of_its_own(tmp_path):
    text = (
        HEAD
        + "readings: r.csv\nmeasure:\n  held: {formula: full - empty, unit: g, columns: {full: 'jar full, g', empty: jar empty}}\n"
    )
    campaign = load(tmp_path, text).campaign
    assert campaign.quantity("held").reads == ("full", "empty")
    assert [(c.name, c.heading, c.unit) for c in campaign.test("held").columns] == [
        ("full", "jar full", "g"), ("empty", "jar empty", ""),
    ]  # fmt: skip


def test_a_name_of_a_test_stands_for_its_quantities(tmp_path):
    text = (
        HEAD + "readings: r.csv\ntests: {two: {title: T, headline: p, quantities: {p: count, q: count},"
        " caveats: {about: two, says: z}}}\nmeasure: {x: count}\ncaveats: {about: [two, x], says: z}\n"
    )
    campaign = load(tmp_path, text).campaign
    assert campaign.caveats[0].about.quantities == ("p", "q", "x")
    assert campaign.test("two").caveats[0].about.quantities == ()


def test_what_a_campaign_says_of_all_tests_reaches_each(tmp_path):
    text = (
        HEAD + "readings: r.csv\nmeasure: {x: count, y: {kind: count, conditions: wind}}\n"
        "conditions: [helper]\nnot yet tested: [b, x]\nrunning: {contender: a, test: y, since: 2026-05-02}\n"
    )
    x, y = load(tmp_path, text).campaign.tests
    assert (x.not_yet_tested, y.not_yet_tested) == (("b", "a"), ("b",))
    assert (x.conditions, y.conditions) == (("helper",), ("wind", "helper"))
    assert (x.running, y.running["a"].text) == ({}, "2026-05-02")


def test_an_answer_given_in_a_test_is_about_that_test(tmp_path):
    text = HEAD + "readings: r.csv\nmeasure: {x: {kind: count, accept: {rule: empty-cell, because: z}}, y: count}\n"
    (accepted,) = load(tmp_path, text).campaign.accepts
    assert (accepted.rule, accepted.about.quantities) == ("empty-cell", ("x",))


def test_caveats_say_which_way_they_push_and_whether_they_block(tmp_path):
    text = (
        HEAD
        + "readings: r.csv\nmeasure: {x: count}\ncaveats: [{says: z, contender: a, pushes: down, so: do not rank}, y]\n"
    )
    blocking, noted = load(tmp_path, text).campaign.caveats
    assert (blocking.pushes, blocking.blocks, blocking.about.contender) == ("down", True, "a")
    assert (noted.pushes, noted.blocks) == ("", False)


def test_a_contender_answers_to_its_other_names(tmp_path):
    text = "title: T\ncontenders: {a: {title: Stove A, also called: [mk2]}}\nreadings: r.csv\nmeasure: {x: count}\n"
    campaign = load(tmp_path, text + "caveats: [{contender: MK2, says: z}, {contender: Stove A, says: y}]\n").campaign
    assert [c.about.contender for c in campaign.caveats] == ["a", "a"]


def test_a_name_that_begins_with_a_digit_takes_an_underscore_in_formulas(tmp_path):
    q = load(tmp_path, HEAD + "readings: r.csv\nmeasure: {0 to 60: 'timed, s, lower'}\n").campaign.quantity("0-to-60")
    assert (q.formula, q.reads, q.title) == ("_0_to_60", ("_0_to_60",), "0 to 60")


def test_a_comment_above_a_test_moves_places_and_nothing_else(tmp_path):
    text = HEAD + "readings: r.csv\nmeasure:\n  x: count\n"
    plain = load(tmp_path, text)
    moved = load(tmp_path, text.replace("measure:", "# a comment\nmeasure:"))
    assert moved.campaign == plain.campaign
    assert moved.at("test/x").line == plain.at("test/x").line + 1


def test_a_past_campaign_knows_that_it_is_one(tmp_path):
    text = HEAD + "readings: r.csv\nmeasure: {x: count}\n"
    campaign = load(tmp_path, text, folder="content/archive/burners").campaign
    assert campaign.archived
    assert campaign.id == "burners"


def test_prose_beside_a_contender_is_its_paragraph(tmp_path):
    text = HEAD + "readings: r.csv\nmeasure: {x: count}\n"
    declared = load(
        tmp_path, text, {"stoves/contenders/a.md": "A *good* one.\n", "stoves/README.md": "x", "stoves/end.md": "E"}
    )
    assert declared.campaign.contender("a").says == "A *good* one.\n"
    assert [p.id for p in declared.campaign.prose] == ["end"]


def test_the_campaigns_columns_serve_every_test_that_reads_them(tmp_path):
    text = (
        HEAD
        + "readings:\n  file: r.csv\n  contender: stove\n  columns:\n    gas before: 'canister full, g, letter-scale'\n"
        "    gas after: canister empty\n    t: seconds\n"
        "measure:\n  gas: weighed before and after, g, lower\n  t: timed, s, lower, stopwatch\n"
    )
    gas, t = load(tmp_path, text).campaign.tests
    assert [(c.heading, c.unit, c.instrument) for c in gas.columns] == [
        ("canister full", "g", "letter-scale"), ("canister empty", "g", ""),
    ]  # fmt: skip
    assert [(c.name, c.heading, c.unit, c.instrument) for c in t.columns] == [("t", "seconds", "s", "stopwatch")]
    assert gas.sources[0].roles == {"contender": "stove"}
    assert not gas.own_sources
