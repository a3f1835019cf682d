"""What YAML would swallow without a word, caught from the text: each message says to quote it."""

from __future__ import annotations

import re

import yaml

from reportgen.campaign.yaml_text import Document
from reportgen.finding import Place

QUOTE = "Quote it: put the whole text in double quotes."


def check_scalar(document: Document, node: yaml.ScalarNode, *, sentence: bool) -> None:
    """A `#` after a plain scalar cuts it. With a word right behind it, it was meant as text; behind a sentence and
    one space, it may have been."""
    if node.style or node.end_mark.line >= len(document.lines):
        return
    rest = document.lines[node.end_mark.line][node.end_mark.column :]
    cut = re.match(r"(\s+)#(\S?)", rest)
    if cut is None:
        return
    place = Place(document.file, node.end_mark.line + 1, node.end_mark.column + cut.start() + len(cut[1]) + 1)
    if cut[2] and cut[2] not in "#!-=":
        document.error("cut-by-hash", place, "YAML drops everything from the # on", do=QUOTE
                       + " For a comment, put a space after the #.")  # fmt: skip
    elif sentence and cut[1] == " ":
        document.warning("cut-by-hash", place, "YAML drops everything from the # on", do=QUOTE
                         + " For a comment, put two spaces before the #.")  # fmt: skip


def check_empty(document: Document, key: yaml.Node) -> bool:
    """Whether nothing stands after a key because a # cut it off (`serial: #4711`); then that is told."""
    line = key.end_mark.line
    if line >= len(document.lines):
        return False
    cut = re.match(r"\s*:\s+(?=#\S)", document.lines[line][key.end_mark.column :])
    if cut is None:
        return False
    place = Place(document.file, line + 1, key.end_mark.column + cut.end() + 1)
    document.error("cut-by-hash", place, "YAML drops everything from the # on", do=QUOTE)
    return True


def report_wrong_shape(document: Document, node: yaml.Node, wanted: str) -> None:
    """A list, mapping or text where another shape is wanted, with the usual slip behind it."""
    place = document.place(node)
    if isinstance(node, yaml.MappingNode):
        keys = [k for k, _ in node.value if isinstance(k, yaml.ScalarNode)]
        says = f"a mapping stands here; {wanted}"
        if keys and (" " in keys[0].value or len(node.value) == 1):
            do = f"If the colon after “{keys[0].value}” belongs to the text: quote it, the whole text in double quotes."
        else:
            do = "Write one text, without keys."
    elif isinstance(node, yaml.SequenceNode):
        says = f"a list stands here; {wanted}"
        do = "Take out the dashes or brackets. If a bracket belongs to the text, quote it."
    else:
        says = f"the text “{node.value}” stands here; {wanted}" if node.value else f"nothing stands here; {wanted}"
        do = "Put a space after the colon." if re.match(r"\S+:\S", node.value) else "Indent the keys below this line."
    document.error("wrong-shape", place, says, do=do)
