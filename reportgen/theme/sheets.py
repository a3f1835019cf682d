"""Which rules a page needs: its style sheet is put together from those files of `styles/` that serve its templates.

A file serves every page, unless it begins with a line that names the templates it is for::

    /* for: parts/grid.html, wide/*.html */

Then it goes only into the sheets of pages whose template is one of these, or draws on one of them, at any depth. A
file whose name ends in ``-below.css`` is for what stands below the first picture of a page: where a template has the
mark `BELOW`, these make a second sheet, which comes there, so that nothing above waits for it. Elsewhere they are like
others. One whose name ends in ``-print.css`` is for paper: all of them together are a sheet that a screen need not wait
for. In each, files stand in the order of their names.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from fnmatch import fnmatchcase
from functools import cache

from reportgen.theme.tight import tight

BELOW = "<!-- below -->"
_FOR = re.compile(r"\s*/\*\s*for:(.*?)\*/", re.DOTALL)
_DRAWS_ON = re.compile(r"""\{%[-+]?\s*(?:extends|include|import|from)\s+["']([^"']+)["']""")


@cache
def served(style: str) -> tuple[str, ...]:
    """The templates that a file of styles names as those it is for; none where it serves every page."""
    found = _FOR.match(style)
    return tuple(name for name in re.split(r"[\s,]+", found[1]) if name) if found else ()


def on_paper(name: str) -> bool:
    """Whether the file of that name is for print alone."""
    return name.endswith("-print.css")


def is_below(name: str) -> bool:
    """Whether the file of that name is for what stands below the first picture."""
    return name.endswith("-below.css")


def drawn_on(templates: Mapping[str, str], template: str) -> frozenset[str]:
    """The template and all that it draws on."""
    seen: set[str] = set()
    ahead = [template]
    while ahead:
        name = ahead.pop()
        if name not in seen:
            seen.add(name)
            ahead += names_in(templates.get(name, ""))
    return frozenset(seen)


@cache
def names_in(template: str) -> tuple[str, ...]:
    """The templates that this one names: what it extends, includes or imports from."""
    return tuple(_DRAWS_ON.findall(template))


def styles_for(styles: Mapping[str, str], templates: Mapping[str, str], template: str) -> Iterator[str]:
    """The names of the files that serve pages of this template on a screen, in order, those for below among them."""
    parts = drawn_on(templates, template)
    for name in sorted(styles):
        patterns = served(styles[name])
        if not on_paper(name) and (
            not patterns or any(fnmatchcase(part, pattern) for part in parts for pattern in patterns)
        ):
            yield name


def page_templates(templates: Mapping[str, str]) -> tuple[str, ...]:
    """The templates that set whole pages of a site."""
    return tuple(sorted(n for n in templates if n.endswith(".html") and not n.startswith(("parts/", "view/"))))


def sheets(styles: Mapping[str, str], templates: Mapping[str, str]) -> dict[str, str]:
    """The sheet of each kind of page, by its template."""
    return _sheets(styles, templates, lambda name, template: not (is_below(name) and BELOW in templates[template]))


def sheets_below(styles: Mapping[str, str], templates: Mapping[str, str]) -> dict[str, str]:
    """The second sheet of each kind of page that has one, by its template."""
    made = _sheets(styles, templates, lambda name, template: is_below(name) and BELOW in templates[template])
    return {template: sheet for template, sheet in made.items() if sheet.strip()}


def _sheets(
    styles: Mapping[str, str], templates: Mapping[str, str], wanted: Callable[[str, str], bool]
) -> dict[str, str]:
    small = {name: tight(text) for name, text in styles.items()}

    def sheet(template: str) -> str:
        names = (name for name in styles_for(styles, templates, template) if wanted(name, template))
        return "".join(small[name] for name in names) + "\n"

    return {template: sheet(template) for template in page_templates(templates)}


def paper_sheet(styles: Mapping[str, str]) -> str:
    """The sheet for print."""
    return "\n".join(tight(text) for name, text in sorted(styles.items()) if on_paper(name)) + "\n"
