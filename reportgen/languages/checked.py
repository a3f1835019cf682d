"""A file's phrases against the program's own table: keys, gaps and plural forms, each mistake with its place."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from reportgen.campaign.did_you_mean import nearest
from reportgen.campaign.given import Entry, Given
from reportgen.finding import Finding, Place
from reportgen.languages.by_cldr import Known
from reportgen.languages.files import LanguageFile
from reportgen.wording.language import ENGLISH
from reportgen.wording.phrase import CATEGORIES, NUMBER_GAPS, Forms, forms_of, gaps_of


def phrases_in(file: LanguageFile, known: Known, told: list[Finding]) -> dict[str, str | Forms]:
    """What the file says, by key; what can't be used is left out and told, what is blank and isn't in English lacks."""
    found: dict[str, str | Forms] = {}
    for entry in file.written.phrases:
        key = entry.name.value
        source = ENGLISH.phrases.get(key)
        if source is not None and _blank(entry) and all(words.strip() for words in forms_of(source)):
            continue
        wrong = [_unknown(entry)] if source is None else list(_wrong(entry, source, known))
        told.extend(wrong)
        if not wrong:
            found[key] = _said(entry, isinstance(source, str))
    return found


def _said(entry: Entry[Given[str] | tuple[Entry[Given[str]], ...]], plain: bool) -> str | Forms:
    if isinstance(entry.value, Given):
        return entry.value.value if plain else {"other": entry.value.value}
    return {form.name.value: form.value.value for form in entry.value}


def _blank(entry: Entry[Given[str] | tuple[Entry[Given[str]], ...]]) -> bool:
    said = (entry.value,) if isinstance(entry.value, Given) else tuple(form.value for form in entry.value)
    return any(not words.value.strip() for words in said)


def _unknown(entry: Entry[object]) -> Finding:
    key = entry.name.value
    meant = nearest(key, ENGLISH.phrases)
    do = f"Did you mean “{meant}”?" if meant else "Take it out; the handbook tells how to list all keys."
    return Finding("error", "unknown-phrase", entry.name.at, f"the program has no phrase “{key}”", do=do)


def _wrong(
    entry: Entry[Given[str] | tuple[Entry[Given[str]], ...]], source: str | Forms, known: Known
) -> Iterator[Finding]:
    key = entry.name.value
    if isinstance(entry.value, Given):
        if not isinstance(source, str) and set(known.categories) != {"other"}:
            yield _forms_wanted(key, entry.at, known)
        else:
            yield from _gaps_wrong(key, entry.value, source)
        return
    if isinstance(source, str):
        yield Finding(
            "error", "phrase-without-number", entry.at, f"“{key}” depends on no number, so it has one form",
            do="Write the words after the colon.",
        )  # fmt: skip
        return
    said: Mapping[str, Given[str]] = {form.name.value: form.value for form in entry.value}
    for form in entry.value:
        if form.name.value not in CATEGORIES:
            yield Finding(
                "error", "no-plural-form", form.name.at, f"“{form.name.value}” is no plural form",
                do=f"There is: {', '.join(c for c in CATEGORIES if c in {*known.categories, 'other'})}.",
            )  # fmt: skip
        else:
            yield from _gaps_wrong(key, form.value, source, form.name.value)
    missing = [c for c in CATEGORIES if c in {*known.categories, "other"} and c not in said]
    if missing:
        yield Finding(
            "error", "plural-form-missing", entry.name.at,
            f"“{key}” lacks {'forms' if len(missing) > 1 else 'the form'} {', '.join(missing)}",
            f"In this language {'; '.join(_used(c, known) for c in missing)} (CLDR, plural rules).",
            "Write it below the others.",
        )  # fmt: skip


def _gaps_wrong(key: str, words: Given[str], source: str | Forms, form: str = "") -> Iterator[Finding]:
    """Gaps that the program doesn't fill would stop it; gaps left out would lose what they tell."""
    at = words.at
    try:
        there = gaps_of(words.value)
    except ValueError:
        yield Finding(
            "error", "broken-gap", at, "a brace here has no partner, or holds more than a name",
            do="Write a gap as {name}, and a brace that is meant as {{ or }}.",
        )  # fmt: skip
        return
    known = frozenset().union(*map(gaps_of, forms_of(source)))
    needed = frozenset.intersection(*map(gaps_of, forms_of(source))) - (NUMBER_GAPS if form else frozenset())
    for gap in sorted(there - known):
        meant = nearest(gap, known)
        has = f"It has: {', '.join(f'{{{g}}}' for g in sorted(known))}." if known else "It has none."
        yield Finding(
            "error", "unknown-gap", at, f"“{key}” has no gap {{{gap}}}",
            do=f"Did you mean {{{meant}}}?" if meant else has,
        )  # fmt: skip
    for gap in sorted(needed - there):
        yield Finding(
            "error", "gap-missing", at, f"“{key}” doesn't say {{{gap}}}",
            f"What fills it would be lost to readers. In English: {_shown(source, form)}",
            f"Put {{{gap}}} where it belongs.",
        )  # fmt: skip


def _forms_wanted(key: str, at: Place, known: Known) -> Finding:
    needed = [c for c in CATEGORIES if c in {*known.categories, "other"}]
    return Finding(
        "error", "plural-form-missing", at, f"“{key}” depends on a number and has one form alone",
        f"In this language {'; '.join(_used(c, known) for c in needed)} (CLDR, plural rules).",
        f"Write a line for each: {', '.join(needed)}.",
    )  # fmt: skip


def _used(category: str, known: Known) -> str:
    numbers = known.categories.get(category)
    return f"“{category}” stands for {', '.join(map(str, numbers))} …" if numbers else f"“{category}” is for the rest"


def _shown(source: str | Forms, form: str) -> str:
    return f"“{source}”" if isinstance(source, str) else f"“{source.get(form, source['other'])}”"
