"""A theme's folder, laid over the one it is based on."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TYPE_CHECKING, TypeVar

import yaml

from reportgen.campaign.did_you_mean import nearest
from reportgen.campaign.yaml_text import compose
from reportgen.finding import Finding, Place, Refused, refuse
from reportgen.theme.folder import ThemeFolder, asked_at, based_on_at, carried_themes, theme_files
from reportgen.theme.own_files import lacks, stray, styles_unread, templates_unused
from reportgen.theme.sheets import page_templates, paper_sheet, sheets, sheets_below
from reportgen.theme.shown_nowhere import shown_nowhere

if TYPE_CHECKING:
    from jinja2 import Environment

    from reportgen.sources import Workspace

DEFAULT = "reading-room"
ABOUT = ("title", "based on", "says")  # what a theme.yaml says
Held = TypeVar("Held", str, bytes)


@dataclass(frozen=True)
class Theme:
    """A theme, complete: what it lacked has come from the theme it is based on.

    `templates` and `styles` map a name to its text; `static` maps a site address to bytes, the style sheets among
    them. `origins` say where each template stands, for messages; `own` are those of them that an author wrote.
    """

    name: str
    title: str
    templates: Mapping[str, str]
    styles: Mapping[str, str]
    files: Mapping[str, bytes]
    origins: Mapping[str, str]
    own: frozenset[str] = frozenset()

    def sheet_of(self, template: str) -> str:
        """The site's address of the style sheet of the pages of that template."""
        return f"static/{self.name}/{template.removesuffix('.html').replace('/', '-')}.css"

    def sheet_below(self, template: str) -> str:
        """The address of their second sheet, for what stands below the first picture; "" where they have none."""
        return self.sheet_of(f"{template.removesuffix('.html')}-below.html") if template in self._below else ""

    @cached_property
    def _below(self) -> Mapping[str, str]:
        return sheets_below(self.styles, self.templates)

    @property
    def paper_sheet(self) -> str:
        """The site's address of the style sheet for print, the same for every page."""
        return f"static/{self.name}/on-paper.css"

    @cached_property
    def static(self) -> Mapping[str, bytes]:
        """Everything the site must hold for its pages to look right: address → bytes."""
        return {
            **{self.sheet_of(page): sheet.encode() for page, sheet in sheets(self.styles, self.templates).items()},
            **{self.sheet_below(page): sheet.encode() for page, sheet in self._below.items()},
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
    theme, where its `theme.yaml` can't be read, where themes are based on each other in a ring, and where a file of
    an author's theme can't do what it is there for.
    """
    way = _way_down(ws, name)
    theme = Theme(name, way[0].about.get("title", name), {}, {}, {}, {})
    findings: list[Finding] = []
    for laid in reversed(way):
        under, theme = theme, _laid_over(theme, laid.folder)
        if not laid.folder.carried:
            findings += _looked_through(laid.folder, under, theme)
    if not way[-1].folder.carried and (
        lacking := sorted(set(page_templates(load_theme(None).templates)) - set(theme.templates))
    ):
        findings.append(lacks(lacking, way[-1].folder.origin, DEFAULT))
    if findings:
        raise Refused(findings)
    return theme


@dataclass(frozen=True)
class _Laid:
    """One theme of those that lie over each other, and what its `theme.yaml` says."""

    folder: ThemeFolder
    about: Mapping[str, str]


def _way_down(ws: Workspace | None, name: str) -> list[_Laid]:
    """The theme, the one it is based on, and so on."""
    way: list[_Laid] = []
    wanted, carried_only = name, False
    while wanted:
        folder = theme_files(ws, wanted, carried_only)
        if folder is None and not carried_only:
            meant = nearest(wanted, carried_themes())
            raise refuse(
                "no-theme",
                based_on_at(way[-1].folder) if way else asked_at(ws),
                f"there is no theme “{wanted}”",
                "a page can't be set without one",
                f"did you mean “{meant}”?"
                if meant
                else f"name a folder under themes/ or one of {', '.join(carried_themes())}"
                + ("" if way else f", or leave `theme:` out for “{DEFAULT}”"),
            )
        if folder is None or any(_same(folder, laid.folder) for laid in way):
            raise refuse(
                "theme-ring",
                based_on_at(way[-1].folder),
                f"the theme “{wanted}” is based on itself",
                do="take `based on:` out of one of the themes in the ring",
            )
        about = _about(folder.files.get("theme.yaml", b""), f"{folder.origin}/theme.yaml")
        way.append(_Laid(folder, about))
        base = about.get("based on", "")
        carried_only, wanted = base == wanted and not folder.carried, base
    return way


def _same(one: ThemeFolder, other: ThemeFolder) -> bool:
    return (one.origin, one.carried) == (other.origin, other.carried)


def _laid_over(base: Theme, folder: ThemeFolder) -> Theme:
    """The theme with the files of one more folder, which take the place of those of the same name."""
    texts = {path: _text(data, f"{folder.origin}/{path}") for path, data in folder.files.items() if _is_text(path)}
    origins = {name: f"{folder.origin}/templates/{name}" for name in _under("templates", texts)}
    return replace(
        base,
        templates={**base.templates, **_under("templates", texts)},
        styles={**base.styles, **_under("styles", texts)},
        files={**base.files, **_under("static", folder.files)},
        origins={**base.origins, **origins},
        own=base.own if folder.carried else base.own | set(origins.values()),
    )


def _is_text(path: str) -> bool:
    return path.startswith("templates/") or (path.startswith("styles/") and path.endswith(".css"))


def _under(folder: str, files: Mapping[str, Held]) -> dict[str, Held]:
    return {path.removeprefix(f"{folder}/"): data for path, data in files.items() if path.startswith(f"{folder}/")}


def _looked_through(folder: ThemeFolder, under: Theme, theme: Theme) -> Iterator[Finding]:
    """What is wrong with the files of an author's folder, which lies over the theme `under`."""
    texts = dict.fromkeys(folder.files, "")
    yield from stray(folder.files, folder.origin)
    if under.templates:
        yield from templates_unused(_under("templates", texts), under.templates, theme.templates, folder.origin)
    yield from shown_nowhere(
        _under("templates", texts), theme.templates, page_templates(under.templates or theme.templates), folder.origin
    )
    own = [name for name in _under("styles", texts) if name.endswith(".css")]
    yield from styles_unread(own, theme.styles, theme.templates, folder.origin)


def _about(data: bytes, origin: str) -> Mapping[str, str]:
    document = compose(_text(data, origin), origin)
    if document.findings:
        raise Refused(document.findings)
    root = document.root
    if root is None:
        return {}
    said = root.value if isinstance(root, yaml.MappingNode) else [(root, root)]
    for key, value in said:
        if key.value not in ABOUT or not isinstance(value, yaml.ScalarNode):
            raise refuse(
                "theme-unreadable",
                document.place(key),
                "a theme says only `title`, `based on` and `says`, each a line of text",
                do="take anything else out",
            )
    return {key.value: value.value for key, value in said}


def _text(data: bytes, origin: str) -> str:
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError:
        raise refuse("theme-unreadable", Place(origin), "this file isn't UTF-8", do="save it as UTF-8") from None
