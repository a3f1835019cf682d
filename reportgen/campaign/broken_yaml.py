"""What the YAML parser says about a broken file, in an author's words: what is wrong, where, and what mends it."""

from __future__ import annotations

import re
from dataclasses import dataclass

import yaml

from reportgen.finding import Place, Refused, refuse

QUOTE = "Quote it: put the whole text in double quotes."


@dataclass(frozen=True)
class _Slip:
    """The usual slip behind a parser's message. `began`: it lies where the construct began, not where it failed."""

    says: str
    do: str
    began: bool = False
    lines_up: int = 0


def broken(error: yaml.MarkedYAMLError, file: str, lines: list[str]) -> Refused:
    """The one finding for a file that can't be parsed."""
    failed, began = error.problem_mark or error.context_mark, error.context_mark
    line, column = (failed.line, failed.column) if failed else (0, 0)
    slip = _slip(error.problem or "", error.context or "", line, column, lines)
    if slip.began and began is not None:
        line, column = began.line, began.column
    if slip.lines_up:
        line, column = line - slip.lines_up, lines[line - slip.lines_up].find(":")
    place = Place(file, min(line, max(len(lines) - 1, 0)) + 1, column + 1)
    return refuse("broken-yaml", place, slip.says, do=slip.do)


def _slip(problem: str, context: str, line: int, column: int, lines: list[str]) -> _Slip:
    here = lines[line] if line < len(lines) else ""
    above = lines[line - 1] if line else ""
    sign = here[column : column + 1]
    if "\t" in here[: column + 1] and not here[:column].strip():
        return _Slip("the line is indented with a tab", "Indent with spaces; YAML takes no tabs there.")
    if "mapping values are not allowed" in problem:
        if re.match(r"\s*(- )?[A-Za-z][\w ]*:[^\s:/]", above):
            return _Slip("there is no space after the colon", "Put a space after it: `key: value`.", lines_up=1)
        return _Slip(
            "there is a second colon where none can be, or this line is indented deeper than the one above",
            "If the colon belongs to the text, quote it (put the text in double quotes). Else line it up with its "
            "neighbours.",
        )
    if "nesting" in problem:
        return _Slip("lists within lists, far too deep", "Write it flatter.")
    if "block scalar" in context:
        says = "after > or | YAML expects the end of the line"
        return _Slip(says, "Write “over 999” in words, or quote it: put the whole text in double quotes.", began=True)
    if "alias" in context or "undefined alias" in problem:
        return _Slip("YAML takes a * at the beginning for an alias", QUOTE, began="alias" in context)
    if "anchor" in context:
        return _Slip("YAML takes a & at the beginning for an anchor", QUOTE, began=True)
    if any(p in problem for p in ("cannot start any token", "sequence entries", "keys are not allowed")):
        return _Slip(f"a text can't begin with {sign} in YAML", QUOTE)
    if "quoted scalar" in context and "escape" in problem:
        return _Slip("a backslash in double quotes means something else in YAML", "Use single quotes around it.")
    if "quoted scalar" in context:
        do = "Close it; write '' for an apostrophe inside single quotes."
        return _Slip("a quotation mark is opened here and never closed", do, began=True)
    if "flow" in context:
        do = "Close it, put commas between the pieces, and quote any text inside that holds a comma or a colon."
        return _Slip("a bracket or brace is opened here and not closed as it should be", do, began=True)
    if "single document" in context:
        return _Slip("there is a second document here, after ---", "Keep one document in a file.")
    return _misplaced(problem, context, here[:column].strip() != "", above)


def _misplaced(problem: str, context: str, goes_on: bool, above: str) -> _Slip:
    """A line that can be parsed and stands where it can't be."""
    if "simple key" in context or "expected ':'" in problem:
        do = "Write `key: value` with a space after the colon, or quote the text above if this line belongs to it."
        return _Slip("this line is neither a key with a value nor part of a text", do)
    if "expected key" in problem and goes_on:
        do = "Quote the whole text; inside single quotes an apostrophe is written twice ('')."
        return _Slip("the line goes on after its value has ended", do)
    if "indicator" in problem or "expected key" in problem:
        do = "Line it up with its neighbours: everything that belongs together begins in the same column."
        if " #" in above:
            do += " If the # in the line above belongs to the text, quote it."
        return _Slip("this line doesn't fit the ones above", do)
    return _Slip(f"this is not YAML ({problem})", "Compare it with its neighbours, or put quotes around it.")
