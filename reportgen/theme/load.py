"""A theme's folder, laid over the one it is based on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

import yaml

from reportgen.finding import Place, refuse
from reportgen.theme.folder import theme_files
from reportgen.theme.sheets import paper_sheet, sheets

if TYPE_CHECKING:
    from jinja2 import Environment

    from reportgen.sources import Workspace

DEFAULT = "reading-room"


@dataclass(frozen=True)
class Theme:
    """A theme, complete: what it lacked has come from the theme it is based on.

    `templates` and `styles` map a name to its text; `static` maps a site address to bytes, the style sheets among
    them. `origins` say where each template stands, for messages.
    """

    name: str
    title: str
    templates: Mapping[str, str]
    styles: Mapping[str, str]
    files: Mapping[str, bytes]
    origins: Mapping[str, str]

    def sheet_of(self, template: str) -> str:
        """The site's address of the style sheet of the pages of that template."""
        return f"static/{self.name}/{template.removesuffix('.html').replace('/', '-')}.css"

    @property
    def paper_sheet(self) -> str:
        """The site's address of the style sheet for print, the same for every page."""
        return f"static/{self.name}/on-paper.css"

    @cached_property
    def static(self) -> Mapping[str, bytes]:
        """Everything the site must hold for its pages to look right: address → bytes."""
        return {
            **{self.sheet_of(page): sheet.encode() for page, sheet in sheets(self.styles, self.templates).items()},
            self.paper_sheet: paper_sheet(self.styles).encode(),
            **{f"static/{name}": data for name, data in self.files.items()},
        }

    @cached_property
    def environment(self) -> Environment:
        """The template environment: undefined names are errors, all text is escaped, nothing depends on the clock."""
        from reportgen.theme.environment import environment_of

        return environment_of(self.templates, self.origins)


def load_theme(ws: Workspace | None, name: str = DEFAULT) -> Theme:
    """The theme `name`: from the workspace's `themes/`, else from those that the program carries.

    An author's theme may bear the name of the one it is based on. Raises `Refused` where there is no such
    theme, where its `theme.yaml` can't be read, or where themes are based on each other in a ring.
    """
    templates: dict[str, str] = {}
    styles: dict[str, str] = {}
    files: dict[str, bytes] = {}
    origins: dict[str, str] = {}
    title = ""
    seen: list[tuple[str, bool]] = []
    wanted, carried_only = name, False
    while wanted:
        folder = theme_files(ws, wanted, carried_only)
        if folder is None:
            raise refuse(
                "no-theme",
                Place(f"themes/{seen[-1][0]}/theme.yaml" if seen else "content/publication.yaml"),
                f"there is no theme “{wanted}”",
                "a page can't be set without one",
                f"name a folder under themes/, or leave `theme:` out for “{DEFAULT}”",
            )
        if (wanted, folder.carried) in seen:
            raise refuse(
                "theme-ring",
                Place(f"{folder.origin}/theme.yaml"),
                f"the theme “{wanted}” is based on itself",
                do="take `based on:` out of one of the themes in the ring",
            )
        seen.append((wanted, folder.carried))
        about = _about(folder.files.get("theme.yaml", b""), f"{folder.origin}/theme.yaml")
        title = title or about.get("title", wanted)
        for path, data in folder.files.items():
            sort, _, rest = path.partition("/")
            if sort == "templates" and rest not in templates:
                templates[rest] = _text(data, f"{folder.origin}/{path}")
                origins[rest] = f"{folder.origin}/{path}"
            elif sort == "styles" and rest.endswith(".css") and rest not in styles:
                styles[rest] = _text(data, f"{folder.origin}/{path}")
            elif sort == "static" and rest not in files:
                files[rest] = data
        base = about.get("based on", "")
        carried_only, wanted = base == wanted and not folder.carried, base
    return Theme(name, title, templates, styles, files, origins)


def _about(data: bytes, origin: str) -> Mapping[str, str]:
    try:
        told = yaml.safe_load(data.decode("utf-8")) or {}
    except (yaml.YAMLError, UnicodeDecodeError) as problem:
        mark = getattr(problem, "problem_mark", None)
        place = Place(origin, mark.line + 1, mark.column + 1) if mark else Place(origin)
        raise refuse("theme-unreadable", place, "this file can't be read as YAML", str(problem), "mend it") from None
    known = {"title", "based on", "says"}
    if not isinstance(told, dict) or not set(told) <= known or not all(isinstance(v, str) for v in told.values()):
        raise refuse(
            "theme-unreadable",
            Place(origin),
            "a theme says only `title`, `based on` and `says`, each a line of text",
            do="take anything else out",
        )
    return told


def _text(data: bytes, origin: str) -> str:
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError:
        raise refuse("theme-unreadable", Place(origin), "this file isn't UTF-8", do="save it as UTF-8") from None
