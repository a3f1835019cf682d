"""What only a whole page knows: the numbers of its figures and tables, and the ways back from its caveats. And what is
true of all of it, whoever wrote it: no number stands apart from its unit.

A template leaves a mark where these belong; a page without marks stays as it is.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING

from reportgen.wording.count import whole
from reportgen.wording.unit import NO_BREAK

if TYPE_CHECKING:
    from jinja2 import Environment

_NUMBER = re.compile(r"<!-- (figure|table) -->")
_RAISED = re.compile(r'<a href="#(caveat-[^"]+)" data-at="([a-z]+)"')
_ELSEWHERE = re.compile(r' data-at="[a-z]+"')
_UNIT = (
    r"(?:[kMGhmµc]?(?:g|m|s|W|J|V|N|Pa|Hz|l|L|lx|lm|Ω|Wh|Ah|bar|B|A)|K|h|min|°C|°F|°|%|‰|ppm|dB|oz|lb|ft|rpm|frames"
    r"|[A-Z]{3}|[€$£])"
)
_BEFORE_UNIT = re.compile(rf"(?<=\d)[ \n](?={_UNIT}(?![\w’'-]))")
_TYPED = re.compile(r"<(pre|code|script|style|svg|math|head)\b.*?<.\1>", re.DOTALL)
_BACK = re.compile(r"<!-- back to (caveat-\S+) -->\n?")


@dataclass(frozen=True)
class Raised:
    """Where the number of a caveat is raised: `sort` is sentence, chart, table or claim; the places of it in order."""

    sort: str
    anchors: tuple[str, ...]


def finished(environment: Environment, html: str) -> str:
    """The page with its numbers and its ways back, its quantities unbroken."""
    return unbroken(_with_ways_back(environment, _numbered(environment, html)))


def _numbered(environment: Environment, html: str) -> str:
    """Figures and tables are counted as they stand, each sort for itself."""
    counts: Counter[str] = Counter()
    say = environment.globals["say"]
    assert callable(say)

    def number(mark: re.Match[str]) -> str:
        counts[mark[1]] += 1
        return str(say(f"{mark[1]}.number", n=whole(counts[mark[1]])))

    return _NUMBER.sub(number, html)


def _with_ways_back(environment: Environment, html: str) -> str:
    """Each raised number gets an anchor of its own, and each caveat a way back to every one of them."""
    if " data-at=" not in html:
        return _BACK.sub("", html)
    raised: dict[str, dict[str, list[str]]] = {}

    def anchored(mark: re.Match[str]) -> str:
        caveat, sort = mark[1], mark[2]
        by_sort = raised.setdefault(caveat, {})
        n = sum(map(len, by_sort.values())) + 1
        anchor = f"to-{caveat}" if n == 1 else f"to-{n}-{caveat}"
        by_sort.setdefault(sort, []).append(anchor)
        return f'<a href="#{caveat}" id="{anchor}"'

    def way_back(mark: re.Match[str]) -> str:
        places = tuple(Raised(sort, tuple(anchors)) for sort, anchors in raised.get(mark[1], {}).items())
        return environment.get_template("parts/way_back.html").render(places=places) if places else ""

    html = _ELSEWHERE.sub("", _RAISED.sub(anchored, html))
    return _BACK.sub(way_back, html)


def unbroken(html: str) -> str:
    """Each number on one line with the unit after it (SI brochure, 5.4.3), but in what is typed as it stands."""
    found = [
        space
        for space in _BEFORE_UNIT.finditer(html)
        if html.rfind("<", 0, space.start()) <= html.rfind(">", 0, space.start())
    ]
    if not found:
        return html
    typed = [(one.start(), one.end()) for one in _TYPED.finditer(html)]
    pieces, at = [], 0
    for space in found:
        n = bisect_right(typed, (space.start(), len(html)))
        if n and typed[n - 1][1] > space.start():
            continue
        pieces += [html[at : space.start()], NO_BREAK]
        at = space.end()
    return "".join((*pieces, html[at:]))
