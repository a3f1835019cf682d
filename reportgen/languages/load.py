"""From a tag to a whole language: its files over those they are based on, CLDR under them, English under all."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

from reportgen.finding import Finding, Place, Refused
from reportgen.languages.files import OWN, SOURCE, LanguageFile, files_of, tags
from reportgen.languages.written import WITHOUT_CAPITAL
from reportgen.sources import Workspace
from reportgen.wording.apart import formulas_apart, from_the_left
from reportgen.wording.english import inside as without_capital
from reportgen.wording.language import ENGLISH, Language
from reportgen.wording.phrase import Forms


def load_language(ws: Workspace | None, tag: str, asked_at: Place) -> tuple[Language, tuple[Finding, ...]]:
    """The language of a publication and what there is to say about it; English where there is no file for it.

    `asked_at` is where the publication names it. Raises `Refused` with every mistake in its files.
    """
    told: list[Finding] = []
    files = files_of(ws, tag, told)
    if not files:
        if tag.partition("-")[0].lower() == SOURCE:
            return ENGLISH, tuple(told)
        return _in_english(tag), (*told, _no_file(tag, asked_at, ws))
    language = _laid_over(files, told)
    if any(f.severity == "error" for f in told):
        raise Refused(told)
    if language.lacking:
        told.append(_lacking(language, files[0], asked_at))
    return language, tuple(told)


def _in_english(tag: str) -> Language:
    """English on pages whose own words are in another language, and run as that one does."""
    from reportgen.languages.by_cldr import known

    of_cldr = known(tag)
    if of_cldr is None or not of_cldr.right_to_left:
        return ENGLISH
    return replace(ENGLISH, phrases=_kept_apart(), right_to_left=True)


def _kept_apart() -> dict[str, str | Forms]:
    """The English table for pages that run from right to left: each phrase is one piece that runs its own way."""
    return {key: _each(entry, _apart) for key, entry in ENGLISH.phrases.items()}


def _each(entry: str | Forms, made: Callable[[str], str]) -> str | Forms:
    return made(entry) if isinstance(entry, str) else {form: made(words) for form, words in entry.items()}


def _apart(words: str) -> str:
    return from_the_left(words) if re.search("[A-Za-z]", re.sub(r"{\w+}", "", words)) else words


def _laid_over(files: tuple[LanguageFile, ...], told: list[Finding]) -> Language:
    from reportgen.languages.by_cldr import known
    from reportgen.languages.checked import phrases_in

    nearest = files[0]
    english = nearest.tag.partition("-")[0].lower() == SOURCE
    of_cldr = known(nearest.tag)
    if of_cldr is None:
        at = nearest.written.language.at
        raise Refused([*told, _unknown_language(nearest.tag, at)])
    said: dict[str, str | Forms] = {}
    for file in reversed(files):
        said |= phrases_in(file, known(file.tag) or of_cldr, told)
    if of_cldr.right_to_left:
        said = {key: _each(entry, formulas_apart) for key, entry in said.items()}
    of_itself: dict[str, str | Forms] = {} if english else of_cldr.phrases()
    writes_days = english or "day" in said
    return Language(
        tag=nearest.tag,
        phrases={**(_kept_apart() if of_cldr.right_to_left else ENGLISH.phrases), **of_itself, **said},
        plural=of_cldr.plural,
        decimal_sign=ENGLISH.decimal_sign if english else of_cldr.decimal_sign,
        small_numbers=_small_numbers(files, english),
        inside=_inside(files, english),
        day=None if writes_days else of_cldr.day,
        month=None if english or "day.month" in said else of_cldr.month,
        right_to_left=of_cldr.right_to_left,
        name=nearest.written.name.value,
        lacking=() if english else tuple(key for key in ENGLISH.phrases if key not in said and key not in of_itself),
        digest=_digest(files),
    )


def _small_numbers(files: tuple[LanguageFile, ...], english: bool) -> tuple[str, ...]:
    own = next((f.written.small_numbers for f in files if f.written.small_numbers), ())
    return tuple(n.value for n in own) or (ENGLISH.small_numbers if english else ())


def _inside(files: tuple[LanguageFile, ...], english: bool) -> Callable[[str], str]:
    chosen = [f.written.titles_inside_a_sentence for f in files]
    said = next((c.value for c in chosen if c is not None), WITHOUT_CAPITAL if english else "")
    return without_capital if said == WITHOUT_CAPITAL else _as_it_stands


def _as_it_stands(title: str) -> str:
    return title


def _digest(files: tuple[LanguageFile, ...]) -> str:
    """A text that tells two states of the files apart."""
    return "\n".join(repr(file.written) for file in files)


def _no_file(tag: str, at: Place, ws: Workspace | None) -> Finding:
    return Finding(
        "warning", "no-language", at, f"there is no language file for “{tag}”",
        "The author's own words stand as they are; what the program says is in English.",
        f"Write {OWN}/{tag}.yaml (the handbook tells how), or choose among: {', '.join(tags(ws))}.",
    )  # fmt: skip


def _unknown_language(tag: str, at: Place) -> Finding:
    return Finding(
        "error", "unknown-language", at, f"“{tag}” is no language that CLDR knows",
        "Its plural forms, its decimal sign and the way its lines run come from there.",
        "Write the tag that Unicode's list of locales has for it.",
    )  # fmt: skip


def _lacking(language: Language, nearest: LanguageFile, asked_at: Place) -> Finding:
    lacking = language.lacking
    one = len(lacking) == 1
    return Finding(
        "warning", "phrases-missing", Place(nearest.path) if nearest.own else asked_at,
        f"{language.name} lacks {len(lacking)} of {len(ENGLISH.phrases)} phrases, the first is “{lacking[0]}”",
        f"{'It is' if one else 'They are'} said in English until then.",
        f"Write {'it' if one else 'them'} in {OWN}/{language.tag}.yaml.",
    )  # fmt: skip
