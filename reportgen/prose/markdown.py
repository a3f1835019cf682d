"""CommonMark with references into the results → a text for a page.

The parser makes the markup; here only its tokens are changed: a reference gets the address it leads to and the words
that were computed, a chart's place is cut out, headings get anchors.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from reportgen.addresses import as_id
from reportgen.campaign.declared import ProseFile
from reportgen.finding import Finding
from reportgen.prose.parsing import Spots, parser, tokens, words_within
from reportgen.prose.reference import Answer, Reference, Resolve, split
from reportgen.prose.text import Heading, Piece, Text

if TYPE_CHECKING:
    from markdown_it.token import Token

_LOWEST_HEADING = 6


def render(prose: ProseFile, resolve: Resolve, *, first_line: int = 1, top_heading: int = 2, anchors: str = "") -> Text:
    """The text of a prose file, its references answered by `resolve`.

    `first_line` is where the text begins in its file (a text inside YAML begins further down). `top_heading` is the
    level its highest heading gets on the page, whose title is level 1; `anchors` stands before the headings' anchors
    where several texts share a page. Wrong references are findings of the text, never exceptions.
    """
    found = _with_file_names(tokens(prose.text))
    headings = _name_headings(found, top_heading, anchors)
    spots = Spots(prose.path, prose.text, first_line)
    findings: list[Finding] = []
    pieces: list[Piece] = []
    waiting: list[Token] = []
    charts: list[Token] = []
    for token in found:
        if token.children:
            answers = list(_answer(token, resolve, spots))
            findings += [a.finding for a in answers if a.finding is not None]
            if token.level == 1 and waiting[-1].type == "paragraph_open":
                charts = _cut_charts(token)
            token.children = [t for child in token.children for t in _opened(child)]
        waiting.append(token)
        if charts and token.type == "paragraph_close":
            if not waiting[-2].children:
                del waiting[-3:]
            pieces += [Piece(_markup(waiting)), *(_chart_piece(c) for c in charts)]
            waiting, charts = [], []
    pieces.append(Piece(_markup(waiting)))
    return Text(tuple(p for p in pieces if p.markup), tuple(headings), tuple(findings))


def _with_file_names(found: list[Token]) -> list[Token]:
    """A fenced block that names its file (```yaml campaign.yaml) gets the name above it, as a reader needs it."""
    return [t for token in found for t in (*_file_name(token), token)]


def _file_name(block: Token) -> list[Token]:
    from markdown_it.token import Token

    named = block.info.split()[1:2] if block.type == "fence" else []
    if not named or "." not in named[0]:
        return []
    opening = Token("paragraph_open", "p", 1, attrs={"class": "file-name"}, map=block.map)
    name = Token("inline", "", 0, content=named[0], children=[Token("code_inline", "code", 0, content=named[0])])
    return [opening, name, Token("paragraph_close", "p", -1)]


def _answer(block: Token, resolve: Resolve, spots: Spots) -> Iterator[Answer]:
    children = block.children or []
    kept: list[Token] = []
    inside = False  # a link whose words the program replaced
    for n, child in enumerate(children):
        if child.type == "image":
            address = str(child.attrGet("src") or "")
            scheme, target = split(address)
            answer = resolve(Reference(scheme, target, child.content, spots.place(address, block.map), picture=True))
            yield answer
            kept.append(_chart(answer) if scheme else _with_address(child, "src", answer.address))
        elif child.type == "link_open":
            address = str(child.attrGet("href") or "")
            scheme, target = split(address)
            words = words_within(children, n)
            answer = resolve(Reference(scheme, target, words, spots.place(address, block.map)))
            yield answer
            kept.append(_with_address(child, "href", answer.address))
            inside = answer.printed != words
            if inside:
                kept.append(_words(answer.printed))
        elif child.type == "link_close":
            inside = False
            kept.append(child)
        elif not inside:
            kept.append(child)
    block.children = kept


def _chart(answer: Answer) -> Token:
    """A chart's place: a link to it, its words inside. Where it ends a paragraph the chart itself is to follow."""
    from markdown_it.token import Token

    link = [Token("link_open", "a", 1, attrs={"href": answer.address}), _words(answer.printed)]
    group = Token("inline", "", 0, children=[*link, Token("link_close", "a", -1)])
    group.meta = {"figure": answer.figure, "photo": answer.photo, "words": answer.printed}
    return group


def _cut_charts(paragraph: Token) -> list[Token]:
    """Takes the charts off a paragraph's end."""
    children = paragraph.children or []
    cut: list[Token] = []
    while children and (_stands_alone(children[-1]) or _is_space(children[-1])):
        last = children.pop()
        if _stands_alone(last):
            cut.insert(0, last)
    return cut


def _stands_alone(child: Token) -> bool:
    return bool(child.meta.get("figure") or child.meta.get("photo"))


def _opened(child: Token) -> list[Token]:
    return child.children or [] if child.meta.get("figure") is not None else [child]


def _is_space(token: Token) -> bool:
    return token.type == "softbreak" or (token.type == "text" and not token.content.strip())


def _chart_piece(chart: Token) -> Piece:
    from markdown_it.token import Token

    paragraph = [Token("paragraph_open", "p", 1, block=True), chart, Token("paragraph_close", "p", -1, block=True)]
    return Piece(_markup(paragraph), chart.meta["figure"], chart.meta["words"], chart.meta["photo"])


def _with_address(token: Token, name: str, address: str) -> Token:
    token.attrSet(name, address)
    return token


def _words(words: str) -> Token:
    from markdown_it.token import Token

    return Token("text", "", 0, content=words)


def _markup(found: list[Token]) -> str:
    return str(parser().renderer.render(found, parser().options, {}))


def _name_headings(found: list[Token], top: int, anchors: str) -> list[Heading]:
    highest = min((int(t.tag[1:]) for t in found if t.type == "heading_open"), default=1)
    headings: list[Heading] = []
    taken: dict[str, int] = {}
    for n, token in enumerate(found):
        if token.type not in ("heading_open", "heading_close"):
            continue
        level = min(int(token.tag[1:]) - highest + top, _LOWEST_HEADING)
        token.tag = f"h{level}"
        if token.type == "heading_open":
            words = "".join(c.content for c in found[n + 1].children or [])
            anchor = "-".join(filter(None, (anchors, as_id(words) or "heading")))
            taken[anchor] = taken.get(anchor, 0) + 1
            anchor = anchor if taken[anchor] == 1 else f"{anchor}-{taken[anchor]}"
            token.attrSet("id", anchor)
            headings.append(Heading(level, words, anchor))
    return headings
