"""Whether each file of an author's theme does what it is there for: a misspelt name says nothing and does nothing."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Iterator, Mapping
from fnmatch import fnmatchcase

from reportgen.finding import Finding, Place
from reportgen.theme.readable import properties_asked, properties_set, unclosed
from reportgen.theme.sheets import names_in, served

FOLDERS = ("templates", "styles", "static")
ABOUT = "theme.yaml"
TEXTS = (".md", ".txt", "licence", "license", "readme")


def stray(paths: Iterable[str], origin: str) -> Iterator[Finding]:
    """Files that stand where the program looks for none."""
    for path in sorted(paths):
        folder, _, rest = path.partition("/")
        if folder in FOLDERS and rest:
            if folder == "styles" and not rest.endswith(".css"):
                yield _told(
                    f"{origin}/{path}", "styles are files whose names end in .css", "rename it, or take it away"
                )
        elif path != ABOUT and (rest or not path.lower().endswith(TEXTS)):
            near = _near(folder, (*FOLDERS, ABOUT))
            yield _told(
                f"{origin}/{path}",
                f"a theme has no “{folder}”",
                f"did you mean “{near}”?" if near else "put it into templates/, styles/ or static/, or take it away",
            )


def templates_unused(
    own: Iterable[str], base: Iterable[str], templates: Mapping[str, str], origin: str
) -> Iterator[Finding]:
    """Templates that take no other's place and that no template asks for."""
    known = set(base) | {name for text in templates.values() for name in names_in(text)}
    for name in sorted(set(own) - known):
        near = _near(name, sorted(known))
        yield _told(
            f"{origin}/templates/{name}",
            f"no page is set with a template “{name}”",
            f"did you mean “{near}”?" if near else "name it after the template it is to replace, or import it from one",
        )


def styles_unread(
    own: Iterable[str], styles: Mapping[str, str], templates: Iterable[str], origin: str
) -> Iterator[Finding]:
    """What a browser would leave out of these files of styles, each with its line."""
    known = frozenset[str]().union(*map(properties_set, styles.values()))
    names = sorted(templates)
    for name in sorted(own):
        file, style = f"{origin}/styles/{name}", styles[name]
        broken = False
        for line, says in unclosed(style):
            broken = True
            yield _told(file, says, "close it, or take it away", line, "a browser leaves out what comes after")
        for line, asked in () if broken else properties_asked(style):
            if asked not in known:
                near = _near(asked, sorted(known))
                do = f"did you mean “{near}”?" if near else f"give it a value in a `:root {{ {asked}: … }}`"
                yield _told(file, f"nothing sets “{asked}”", do, line, "a browser leaves this declaration out")
        for pattern in served(style):
            if not any(fnmatchcase(template, pattern) for template in names):
                near = _near(pattern, names)
                do = f"did you mean “{near}”?" if near else "name a template, or take the line away"
                yield _told(file, f"it is for “{pattern}”, and there is no such template", do, 1)


def lacks(templates: Iterable[str], origin: str, usual: str) -> Finding:
    """A theme that is based on nothing lacks templates of whole pages."""
    return Finding(
        "error",
        "theme-lacks",
        Place(f"{origin}/theme.yaml"),
        f"the theme is based on no other, and lacks {', '.join(templates)}",
        "these pages can't be set",
        f"say `based on: {usual}` in its theme.yaml, or add them",
    )


def _near(name: str, known: Iterable[str]) -> str:
    return next(iter(difflib.get_close_matches(name, list(known), n=1, cutoff=0.6)), "")


def _told(file: str, says: str, do: str, line: int = 0, why: str = "as it stands it changes no page") -> Finding:
    return Finding("error", "theme-file", Place(file, line), says, why, do)
