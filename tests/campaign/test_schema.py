"""The published schemas and the reader say yes and no to the same files.

The schemas are held by `jsonschema`, an independent implementation of JSON Schema draft 2020-12; the text reaches
it as an editor would hand it over, by the core schema of YAML 1.2 (numbers, true, false and null; all else text).
"""

import re

import jsonschema
import pytest
import yaml

from reportgen.campaign.schema import FILE_KINDS, SHAPES, schema_of
from reportgen.campaign.yaml_reader import read
from reportgen.campaign.yaml_text import compose
from tests.campaign.written_examples import SHARED, SHORT_FORMS, SMALLEST, SPLIT

KIND_OF_FILE = {
    r"campaign\.yaml$": "campaign", r"contenders/": "contender", r"tests/[^/]+\.yaml$": "test", r"methods/": "method",
    r"instruments\.yaml$": "instruments", r"instruments/": "instrument", r"constants\.yaml$": "constants",
    r"verdict\.yaml$": "verdict", r"publication\.yaml$": "publication",
}  # fmt: skip
EXAMPLES = [
    (kind, text)
    for files in (SMALLEST, SHORT_FORMS, SPLIT, SHARED)
    for rel, text in files.items()
    for pattern, kind in KIND_OF_FILE.items()
    if rel.endswith(".yaml") and re.search(pattern, rel)
]
CAMPAIGN = "title: T\ncontenders: {a: A}\nreadings: r.csv\n"
ACCEPTED = [
    ("campaign", CAMPAIGN + "measure:\n  x: {kind: grade, grades: [poor, fair, good], over passes: middle}\n"),
    ("campaign", CAMPAIGN + "measure:\n  run: {kind: run to a limit, unit: min, until: 10 %, better: higher}\n"),
    ("campaign", CAMPAIGN + "measure:\n  x: bench-scale, lower, one reading, g\n"),
    ("campaign", CAMPAIGN + "measure: {x: count}\nrunning: {contender: a, since: 2026-05-02}\n"),
    ("campaign", CAMPAIGN + "measure: {x: count}\ninstruments: {g: bench-scale, dial: '0.01 mm, up to 10 mm'}\n"),
    ("campaign", "title: T\ncontenders: contenders.csv\nmeasure: {x: count}\nreadings: [a.csv, b.csv]\n"),
    ("campaign", "title: T\ncontenders: {a: A}\nmeasure: {x: count}\nreadings: {table: [[contender, x], [a, 3]]}\n"),
    ("campaign", "title: T\ncontenders: {a: A}\nmeasure: {x: count}\nreadings: |\n  contender,x\n  a,3\n"),
    ("campaign", "title: 2026\ncontenders: {a: 0123, b: 5, c: true}\nmeasure: {x: count}\nreadings: r.csv\n"),
    ("campaign", CAMPAIGN + "measure: {x: count}\ntested: 2026\n"),
    ("campaign", CAMPAIGN + "measure: {x: count}\ncaveats: One room, one day.\n"),
    ("campaign", CAMPAIGN + "measure: {x: count}\naccept: {rule: unequal-passes, because: one canister ran out}\n"),
    ("instruments", "a: 0.1 g\nb: up to 130 dB\nc: 0.1 °C, accuracy ±(0.3 °C + 0.5 % of reading)\n"),
    ("instruments", "a: {accuracy: ±0.5 % + 2 digits, range: -50 °C to 300 °C}\nb: 1 g, by hand, shared nothing\n"),
    ("instruments", "a: {accuracy: class 1.6, range: 0 bar to 10 bar}\nb: 1 s, by hand, reaction 0.15 s\n"),
    ("instruments", "a: {clock: ±50 ppm}\nb: {clock: 2 s per day}\nc: 1 lx, clock ±1 min a month\nd: {clock: 0.01%}\n"),
    ("instruments", "a: {accuracy: ±(0.2 % of range + 1 digit), drift: 0.2 % a year, repeatability: 1 g from 5 readings}\n"),
    ("instrument", "calibration: {correction: {1 g: 0.1 g, 2 g: -0.2 g}, between: one line, uncertainty: 0.1 g, k: 2}\n"),
    ("instrument", "calibration: {correction: -0.4 % of reading, u: 0.1 %, degrees: 9, expires: 2027-04}\n"),
    ("method", "title: M\nrepeatability: {gas burned: '0.9 g, a guess', source: by eye}\nscatter: relative\n"),
    ("contender", "title: A\npaid: 89 EUR\nlisted: 90 to 120 USD\nfacts: {Max. heat (W): 2400}\n"),
    ("contender", "title: A\nclaims: [Never rusts, {says: Weighs 300 g, quantity: w, is: 300 g, within: 5 g}]\n"),
    ("verdict", "we say: Take either.\n"),
    ("constants", "g: {value: 9.80665, source: ISO 80000-3, u: 0.00001 m/s²}\n"),
]  # fmt: skip
REFUSED = [
    ("campaign", "contenders: {a: A}\nmeasure: {x: count}\n"),
    ("campaign", CAMPAIGN + "mesure: {x: count}\n"),
    ("campaign", CAMPAIGN + "measure: {x: {kind: wieghed}}\n"),
    ("campaign", CAMPAIGN + "measure: {x: wieghed}\n"),
    ("campaign", CAMPAIGN + "measure: {x: {kind: count, matters: much}}\n"),
    ("campaign", CAMPAIGN + "measure: [x, y]\n"),
    ("campaign", CAMPAIGN + "measure: {x: count}\ntested: last spring\n"),
    ("campaign", CAMPAIGN + "measure: {x: count}\ntitle2: T\n"),
    ("campaign", "title: [T]\ncontenders: {a: A}\nmeasure: {x: count}\n"),
    ("campaign", CAMPAIGN + "measure: {x: count}\nexclude: {contender: a}\n"),
    ("campaign", CAMPAIGN + "measure: {x: count}\naccept: {rule: x}\n"),
    ("campaign", CAMPAIGN + "measure: {x: count}\nassumed: {fill: 5 g}\n"),
    ("campaign", CAMPAIGN + "measure: {x: count}\nfilms: {main: on the shelf}\n"),
    ("instruments", "a: fine\n"),
    ("instruments", "a: {resolution: fine}\n"),
    ("instruments", "a: {accuracy: about ±3 g}\n"),
    ("instruments", "a: {by hand: sometimes}\n"),
    ("instruments", "a: {accuracy: class II}\n"),
    ("instruments", "a: {drift: 0.1 g}\n"),
    ("instruments", "a: {clock: 50}\n"),
    ("instruments", "a: {clock: 2 s}\n"),
    ("instruments", "a: {repeatability: 0.1 g from ten readings}\n"),
    ("instrument", "calibration: {between: a curve}\n"),
    ("instrument", "calibration: {u: -0.1 g}\n"),
    ("instruments", "a: {range: 2000}\n"),
    ("method", "title: M\nrepeatability: {gas burned: little}\n"),
    ("method", "title: M\nrepeatability: {gas burned: 0.9 g, passes: many}\n"),
    ("method", "title: M\nscatter: pooled\n"),
    ("contender", "title: A\npaid: 89\n"),
    ("contender", "title: A\npaid: 89 euros\n"),
    ("contender", "maker: M\n"),
    ("contender", "title: A\nclaims: [{quantity: w}]\n"),
    ("verdict", "groups: {a: {weight: -3, criteria: {x: {worst: 1 g, best: 2 g}}}}\n"),
    ("verdict", "groups: {a: {weight: 3, criteria: {x: {worst: 1 g}}}}\n"),
    ("verdict", "use: {per: litre, cost: x, times: often}\n"),
    ("constants", "g: {value: 9.81}\n"),
    ("publication", "title: T\naddress: example.org\n"),
    ("test", "title: T\n"),
    ("test", "title: T\nquantities: {x: {formula: a - b}}\nmethod: ''\n"),
]  # fmt: skip


def as_an_editor_reads_it(node):
    if isinstance(node, yaml.MappingNode):
        return {k.value: as_an_editor_reads_it(v) for k, v in node.value}
    if isinstance(node, yaml.SequenceNode):
        return [as_an_editor_reads_it(v) for v in node.value]
    text = node.value
    if node.style:
        return text
    if text in ("", "~", "null"):
        return None
    if text in ("true", "false"):
        return text == "true"
    if re.fullmatch(r"[-+]?[0-9]+", text):
        return int(text)
    if re.fullmatch(r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?", text):
        return float(text)
    return text


def judged(kind, text):
    """(the reader accepts it, the schema accepts it)."""
    document = compose(text, "x.yaml")
    read(document, document.root, SHAPES[kind])
    errors = [f for f in document.findings if f.severity == "error"]
    validator = jsonschema.Draft202012Validator(schema_of(kind))
    return not errors, validator.is_valid(as_an_editor_reads_it(compose(text, "x.yaml").root))


@pytest.mark.parametrize("kind", FILE_KINDS)
def test_each_schema_is_a_schema(kind):
    jsonschema.Draft202012Validator.check_schema(schema_of(kind))


@pytest.mark.parametrize(("kind", "text"), EXAMPLES + ACCEPTED)
def test_reader_and_schema_accept_the_same(kind, text):
    assert judged(kind, text) == (True, True)


@pytest.mark.parametrize(("kind", "text"), REFUSED)
def test_reader_and_schema_refuse_the_same(kind, text):
    assert judged(kind, text) == (False, False)


def test_every_key_says_what_it_is_for():
    for kind in FILE_KINDS:
        schema = schema_of(kind)
        records = [schema, *schema["$defs"].values()]
        for record in records:
            for part in (record, *record.get("anyOf", ())):
                for name, said in part.get("properties", {}).items():
                    assert len(said["description"]) > 5, (kind, name)
