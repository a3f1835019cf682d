"""A theme's folder → templates, style sheet.

In: theme files. Out: a template environment. Never knows campaigns.

How a page is rendered::

    theme = load_theme(workspace, "reading-room")
    html = render(theme, "campaign.html", view, "stoves/index.html")

A template sees `view` (the page kind's frozen view), `kind` (the template's own name: "campaign", "wide/archive"),
`root` (the relative way from the page to the site's root, "" or "../../"), `style_sheet` and `paper_sheet` (the site's
addresses of the sheet of this kind of page and of the one for print) and `say` (an interface phrase in the
publication's language). Every view has a field `frame: Frame`: title, publication, contents, footer. Links in a
view are relative already (`addresses.from_to`). A page's template begins ``{% extends "base.html" %}`` and fills
the blocks `head_matter` (more for the head, may stay away) and `text`; parts are imported as
``{% from "parts/caveat.html" import caveat_box %}``. An unknown name is an error, and all text is escaped unless
it comes as markup (an object with ``__html__``).

A theme folder holds `theme.yaml` (`title`, `based on`), `templates/`, `styles/` (joined in the order of their names
into a sheet for each kind of page: `sheets.py`) and `static/`. What it lacks comes from the theme it is based on.
"""

from reportgen.theme.frame import Frame, Link, Shared
from reportgen.theme.load import Theme, load_theme
from reportgen.theme.render import render
from reportgen.theme.terms import Term

__all__ = ["Frame", "Link", "Shared", "Term", "Theme", "load_theme", "render"]
