"""The template environment of a theme."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from functools import lru_cache, partial

from jinja2 import Environment, FunctionLoader

from reportgen.campaign.did_you_mean import nearest
from reportgen.theme.sections import sections_of
from reportgen.theme.terms import pieces_of
from reportgen.theme.undefined import NotGiven
from reportgen.wording import apostrophe, language


def environment_of(templates: Mapping[str, str], origins: Mapping[str, str]) -> Environment:
    """Templates by name; an unknown name in one is an error with its file and line.

    Equal templates share one environment, so that a process that compiles again translates none of them again.
    """
    return _environment(tuple(sorted((name, text, origins[name]) for name, text in templates.items())))


_BEFORE_UNIT = re.compile(r"(?<=\d) (?=[A-Za-zµΩ°%][A-Za-z²³/·]{0,3}(?![\w]))")


@lru_cache(maxsize=2)
def _environment(named: tuple[tuple[str, str, str], ...]) -> Environment:
    templates = {name: (text, origin) for name, text, origin in named}

    def find(name: str) -> tuple[str, str, Callable[[], bool]] | None:
        if name not in templates:
            return None
        text, origin = templates[name]
        return text, origin, lambda: True

    made = Environment(
        loader=FunctionLoader(find),
        finalize=typeset,
        undefined=NotGiven,
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
        cache_size=-1,
    )
    made.globals["say"] = say
    made.globals["say_of"] = say_of
    made.globals["sections_of"] = sections_of
    made.globals["pieces_of"] = pieces_of
    made.filters["unbroken"] = unbroken
    return made


def typeset(value: object) -> object:
    """Text with its apostrophes as a printer sets them; markup and what a template escapes itself (`| e`) as it is."""
    return apostrophe.typeset(value) if type(value) is str else value


def unbroken(text: str) -> str:
    """An author's text with each number kept on one line with the short unit after it (SI brochure, 5.4.3)."""
    return _BEFORE_UNIT.sub("\u00a0", text)


def say(key: str, /, **gaps: object) -> str:
    """The words of `on.<key>` in the publication's language, escaped; a gap may hold markup, or any printed text.

    Raises jinja2's TemplateRuntimeError where there are no such words, or they have another gap.
    """
    return _filled(partial(language.say, f"on.{key}"), key, gaps)


def say_of(n: int, key: str, /, **gaps: object) -> str:
    """The same for words that depend on a number."""
    return _filled(partial(language.say_of, n, f"on.{key}"), key, gaps)


def _filled(words: Callable[..., str], key: str, gaps: Mapping[str, object]) -> str:
    from jinja2 import TemplateRuntimeError
    from markupsafe import Markup, escape

    if not language.has(f"on.{key}"):
        meant = nearest(key, [k.removeprefix("on.") for k in language.spoken().phrases if k.startswith("on.")])
        do = f"did you mean “{meant}”?" if meant else "words of your own stand in a template as they are"
        raise TemplateRuntimeError(f"there is no phrase “{key}”; {do}")
    try:
        entry = words(**{name: f"{{{name}}}" for name in gaps})
    except KeyError as lacking:
        raise TemplateRuntimeError(f"the phrase “{key}” lacks something: {lacking.args[0]}") from lacking
    return Markup(escape(typeset(entry))).format_map({name: escape(typeset(gap)) for name, gap in gaps.items()})
