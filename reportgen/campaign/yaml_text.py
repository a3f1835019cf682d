"""YAML text → a tree of nodes in which every scalar is still the text that was written.

No tag is resolved, no alias unfolded. What can't be read as YAML at all becomes one finding with a remedy.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

import yaml

from reportgen.campaign.broken_yaml import broken
from reportgen.finding import Finding, Place, refuse

LOADER: Any = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
STRANGE = "!strange"  # the tag of a node that has been reported already
_PLAIN_TAGS = ("tag:yaml.org,2002:str", "tag:yaml.org,2002:map", "tag:yaml.org,2002:seq")


@dataclass
class Document:
    """One YAML file while it is read: its path, its lines, its tree, and the findings so far."""

    file: str
    lines: list[str]
    root: yaml.Node | None = None
    findings: list[Finding] = field(default_factory=list)

    def place(self, node: yaml.Node) -> Place:
        return Place(self.file, node.start_mark.line + 1, node.start_mark.column + 1)

    def error(self, rule: str, place: Place, says: str, why: str = "", do: str = "") -> None:
        self.findings.append(Finding("error", rule, place, says, why, do))

    def warning(self, rule: str, place: Place, says: str, why: str = "", do: str = "") -> None:
        self.findings.append(Finding("warning", rule, place, says, why, do))


def compose(text: str, file: str) -> Document:
    """The tree of a YAML file. Raises Refused where it is no YAML; aliases and tags are findings of the document."""
    document = Document(file, text.splitlines())
    try:
        document.root = yaml.compose(text, Loader=LOADER)
    except yaml.MarkedYAMLError as error:
        raise broken(error, file, document.lines) from error
    except yaml.reader.ReaderError as error:
        before = text[: error.position]
        place = Place(file, before.count("\n") + 1, error.position - before.rfind("\n"))
        code = error.character if isinstance(error.character, int) else ord(error.character)
        says = f"there is a character here that no text file should hold (U+{code:04X})"
        raise refuse(
            "broken-yaml", place, says, do="Delete it; it usually comes from copying out of another program."
        ) from error
    except RecursionError as error:
        raise refuse("broken-yaml", Place(file), "lists within lists, far too deep", do="Write it flatter.") from error
    if document.root is not None:
        _cut_aliases_and_tags(document, document.root)
    return document


def _cut_aliases_and_tags(document: Document, root: yaml.Node) -> None:
    """Refuse what makes one piece of text stand for another; each node is visited once, so nothing unfolds."""
    seen = {id(root)}
    waiting = [root]
    while waiting:
        node = waiting.pop()
        if node.tag not in _PLAIN_TAGS:
            _report_tag(document, node)
            continue
        if isinstance(node, yaml.ScalarNode):
            _report_anchor(document, node)
            continue
        for children in _children(node):
            for i, child in enumerate(children):
                if id(child) in seen:
                    children[i] = _stand_in(child)
                    _report_alias(document, child)
                else:
                    seen.add(id(child))
                    waiting.append(child)
        if isinstance(node, yaml.MappingNode):
            node.value = [tuple(pair) for pair in node.value]


def _children(node: yaml.Node) -> list[list[yaml.Node]]:
    if isinstance(node, yaml.MappingNode):
        node.value = [list(pair) for pair in node.value]
        return list(node.value)
    return [node.value]


def _stand_in(node: yaml.Node) -> yaml.Node:
    return yaml.ScalarNode(STRANGE, "", node.start_mark, node.end_mark)


def _report_alias(document: Document, node: yaml.Node) -> None:
    place = document.place(node)
    says = "what stands here is used again elsewhere through an alias (*name)"
    why = "Then one line of the file would stand for another, and messages couldn't say where a value is."
    document.error("alias", place, says, why, "Write it out in both places.")


def _report_anchor(document: Document, node: yaml.ScalarNode) -> None:
    line, column = node.start_mark.line, node.start_mark.column
    if not node.style and line < len(document.lines) and document.lines[line][column : column + 1] == "&":
        word = document.lines[line][column:].split()[0]
        says = f"YAML takes {word} for an anchor and drops it"
        document.error("anchor", document.place(node), says, do="Quote it: put the whole text in double quotes.")


def _report_tag(document: Document, node: yaml.Node) -> None:
    if node.tag != STRANGE:
        says = f"YAML takes {node.tag} for a tag and drops it"
        document.error("tag", document.place(node), says, do="Quote it: put the whole text in double quotes.")
    node.tag = STRANGE
