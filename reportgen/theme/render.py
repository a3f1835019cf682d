"""A view through a template → a page."""

from __future__ import annotations

import posixpath

from reportgen.finding import Place, Refused, refuse
from reportgen.theme.finished import finished
from reportgen.theme.load import Theme
from reportgen.theme.sheets import BELOW


def render(theme: Theme, template: str, view: object, page_address: str) -> str:
    """The page at `page_address` (from the site's root): `template` of the theme, filled from `view`.

    The same view gives the same text. Raises `Refused` with the template's file and line where one is missing,
    is broken, asks for what isn't there, or is an author's and reckons with what can't be reckoned with.
    """
    from jinja2 import TemplateError

    try:
        html = theme.environment.get_template(template).render(
            view=view,
            kind=template.removesuffix(".html"),
            root=way_to_root(page_address),
            style_sheet=theme.sheet_of(template),
            paper_sheet=theme.paper_sheet,
        )
        html = finished(theme.environment, html)
        html = _with_rules_below(html, theme.sheet_below(template), way_to_root(page_address))
    except Exception as problem:  # a template's own code raises whatever it meets; not an author's goes on up
        asked_otherwise = isinstance(problem, TypeError) and theme.own  # of a macro that an author's template replaced
        if (
            not isinstance(problem, TemplateError)
            and _line(theme, problem).file not in theme.own
            and not asked_otherwise
        ):
            raise
        raise _broken(theme, template, problem) from problem
    return html.rstrip() + "\n"


def _with_rules_below(html: str, sheet: str, root: str) -> str:
    """The page with its second sheet, if it has one, where the template wants it."""
    return html.replace(BELOW, f'<link rel="stylesheet" href="{root}{sheet}">' if sheet else "", 1)


def way_to_root(page_address: str) -> str:
    """``stoves/tests/noise.html`` is two folders down: ``../../``."""
    folder = posixpath.dirname(page_address)
    return "../" * (folder.count("/") + 1) if folder else ""


def _broken(theme: Theme, template: str, problem: Exception) -> Refused:
    """The innermost template line that the error passed through."""
    from jinja2 import TemplateNotFound, TemplateSyntaxError

    place = _line(theme, problem)
    if isinstance(problem, TemplateSyntaxError):
        place = Place(problem.filename or place.file, problem.lineno)
    if isinstance(problem, TemplateNotFound):
        says = f"the theme has no template “{problem.name}”"
    elif isinstance(problem, RecursionError):
        says = "this template comes back to itself without an end"
    else:
        says = f"this template can't be used: {problem}"
    do = "mend that line, or take the file away if the theme is based on another: that one's then serves"
    if place.file and theme.own and place.file not in theme.own:
        do = "compare what the theme replaces with what it replaces: this line draws on it"
    return refuse(
        "broken-template",
        place if place.file else Place(theme.origins.get(template, f"themes/{theme.name}/templates/{template}")),
        says,
        "a page can't be set with it",
        do,
    )


def _line(theme: Theme, problem: Exception) -> Place:
    """The innermost line of a template that the error passed through; no file where it passed through none."""
    place, known = Place(""), set(theme.origins.values())
    trace = problem.__traceback__
    while trace is not None:
        if trace.tb_frame.f_code.co_filename in known:
            place = Place(trace.tb_frame.f_code.co_filename, trace.tb_lineno)
        trace = trace.tb_next
    return place
