"""YAML text → a tree of nodes in which every scalar is still the text that was written.

No tag is resolved, no alias unfolded. What can't be read as YAML at all becomes one finding with a remedy.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

import yaml

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
        raise _broken(error, document) from error
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
                    _report_alias(document, child, node)
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


def _report_alias(document: Document, node: yaml.Node, parent: yaml.Node) -> None:
    place = document.place(node)
    says = "what stands here is used again elsewhere through an alias (*name)"
    why = "Then one line of the file would stand for another, and messages couldn't say where a value is."
    document.error("alias", place, says, why, "Write it out in both places.")
    del parent


def _report_anchor(document: Document, node: yaml.ScalarNode) -> None:
    line, column = node.start_mark.line, node.start_mark.column
    if node.style is None and line < len(document.lines) and document.lines[line][column : column + 1] == "&":
        word = document.lines[line][column:].split()[0]
        says = f"YAML takes {word} for an anchor and drops it"
        document.error("anchor", document.place(node), says, do="Quote it: put the whole text in double quotes.")


def _report_tag(document: Document, node: yaml.Node) -> None:
    if node.tag != STRANGE:
        says = f"YAML takes {node.tag} for a tag and drops it"
        document.error("tag", document.place(node), says, do="Quote it: put the whole text in double quotes.")
    node.tag = STRANGE


def _broken(error: yaml.MarkedYAMLError, document: Document) -> Any:
    mark = error.problem_mark or error.context_mark
    line, column = (mark.line, mark.column) if mark else (0, 0)
    problem = error.problem or "this can't be read"
    says, do = _remedy(problem, error.context or "", line, column, document.lines)
    opened = error.context_mark
    if "flow" in (error.context or "") and opened is not None and opened.line != line:
        line, column = opened.line, opened.column
    return refuse(
        "broken-yaml", Place(document.file, min(line, max(len(document.lines) - 1, 0)) + 1, column + 1), says, do=do
    )


def _remedy(problem: str, context: str, line: int, column: int, lines: list[str]) -> tuple[str, str]:
    here = lines[line] if line < len(lines) else ""
    quote = "Quote it: put the whole text in double quotes."
    if "\t" in here[: column + 1] and not here[:column].strip():
        return "the line is indented with a tab", "Indent with spaces; YAML takes no tabs there."
    if "mapping values are not allowed" in problem:
        return (
            "there is a second colon where none can be, or this line is indented deeper than the one above",
            "A colon inside text: quote it (put the text in double quotes). Else line it up with its neighbours; "
            "a key needs a space after its colon.",
        )
    if "cannot start any token" in problem:
        return f"a text can't begin with {here[column : column + 1]!r} in YAML", quote
    if "block scalar" in context:
        return "after > or | YAML expects the end of the line", 'Write "over 999" in words, or ' + quote[
            0
        ].lower() + quote[1:]
    if "alias" in context or "undefined alias" in problem:
        return "YAML takes a * at the beginning for an alias", quote
    if "anchor" in context:
        return "YAML takes a & at the beginning for an anchor", quote
    if "sequence entries" in problem or "keys are not allowed" in problem:
        return f"a text can't begin with {here[column : column + 1]!r} in YAML", quote
    if "quoted scalar" in context and "escape" in problem:
        return "a backslash in double quotes means something else in YAML", "Use single quotes around it."
    if "quoted scalar" in context:
        return (
            "a quotation mark is opened and never closed",
            "Close it; write '' for an apostrophe inside single quotes.",
        )
    if "flow" in context:
        return (
            "a bracket or brace is opened here and not closed as it should be",
            "Close it, put commas between the pieces, and quote any text inside that holds a comma or a colon.",
        )
    if "single document" in context:
        return "there is a second document here, after ---", "Keep one document in a file."
    if "simple key" in context or "expected ':'" in problem:
        return "this line is neither a key with a value nor part of a text", (
            "Write `key: value` with a space after the colon, or quote the text above if this line belongs to it."
        )
    if "indicator" in problem or "expected key" in problem:
        do = "Line it up with its neighbours: everything that belongs together begins in the same column."
        if line and " #" in lines[line - 1]:
            do += " If the # in the line above belongs to the text, quote it."
        return "this line doesn't fit the ones above", do
    return (
        f"this is not YAML ({problem})",
        "Compare it with its neighbours; text with special characters goes in quotes.",
    )
