"""The files of a new campaign, as text. Nothing here asks anyone or touches the disk."""

from __future__ import annotations

import json
import posixpath
import re
from collections.abc import Iterable
from dataclasses import dataclass
from importlib.resources import files
from string import Template

from reportgen.addresses import as_id
from reportgen.cli import begin_tables
from reportgen.cli.begin_tables import tables_of

SCHEMAS = ".schemas"
PLAIN = re.compile(r"[A-Za-zÀ-ÿ][\w À-ÿ()/²³.,?!%°’–-]*")  # what YAML reads as the text it is
NOT_TEXT = frozenset({"yes", "no", "true", "false", "null", "on", "off", "y", "n"})
_LABORATORY = f"""
# Who analysed the samples, and the report that says so. Values are typed beside the page they stand on.
laboratory:
  name: not noted
  report: {begin_tables.REPORT}
"""


@dataclass(frozen=True)
class Asked:
    """What a new campaign is to hold. `contenders` as ``id: Name`` or a name; `measures` as ``name: kind, unit, …``."""

    title: str
    contenders: tuple[str, ...]
    measures: tuple[str, ...]


def campaign_yaml(asked: Asked, schema: str) -> str:
    """campaign.yaml, with notes; `schema` is the way from it to its schema."""
    from reportgen.campaign.kinds import KINDS

    tables = tables_of(measure(said)[1] for said in asked.measures)
    return _filled(
        "campaign.yaml",
        schema=schema,
        title=in_yaml(asked.title),
        contenders=_mapping(contender(said) for said in asked.contenders),
        measures="\n".join(_written(said, asked) for said in asked.measures),
        readings=tables[0] if len(tables) == 1 else f"[{', '.join(tables)}]",
        laboratory=_LABORATORY if begin_tables.LABORATORY in tables else "",
        kinds=", ".join(KINDS),
    )


def publication_yaml(title: str, schema: str) -> str:
    """content/publication.yaml, with notes."""
    return _filled("publication.yaml", schema=schema, title=in_yaml(title))


def schema_files() -> dict[str, str]:
    """Path from the workspace → text, for every kind of file that has a schema."""
    from reportgen.campaign.schema import FILE_KINDS, schema_of

    return {schema_path(kind): json.dumps(schema_of(kind), indent=1) + "\n" for kind in FILE_KINDS}


def schema_path(kind: str) -> str:
    """Where the schema of a kind of file stands, from the workspace."""
    return posixpath.join(SCHEMAS, f"{as_id(kind)}.json")


def contender(said: str) -> tuple[str, str]:
    """``ostler: Ostler Mk II`` or ``Ostler Mk II`` → id and name; the id is empty where it would hold nothing."""
    short, colon, name = said.partition(":")
    return as_id(short), (name if colon else short).strip()


def measure(said: str) -> tuple[str, str]:
    """``boil time: timed, s, lower`` → name and what is said of it, empty where there is no colon."""
    name, _, rest = said.partition(":")
    return name.strip(), rest.strip()


def _written(said: str, asked: Asked) -> str:
    """One entry of `measure:`: a line, or as many as its kind takes."""
    from reportgen.campaign import short
    from reportgen.campaign.shape import NotThat

    name, rest = measure(said)
    ids = [id or as_id(name) for id, name in map(contender, asked.contenders)]
    try:
        lines = begin_tables.in_full(begin_tables.kind_of(rest), short.measure(rest), ids)
    except NotThat:
        lines = ()
    if not lines:
        return f"  {in_yaml(name)}: {in_yaml(rest)}"
    return "\n".join((f"  {in_yaml(name)}:", *(f"    {line}" for line in lines)))


def in_yaml(text: str) -> str:
    """`text` as one YAML scalar: plain where that can't be misread, else in double quotes (YAML 1.2, 7.3.1)."""
    plain = PLAIN.fullmatch(text) and not text.endswith(" ") and text.lower() not in NOT_TEXT
    return text if plain else json.dumps(text, ensure_ascii=False)


def _mapping(pairs: Iterable[tuple[str, str]]) -> str:
    return "\n".join(f"  {in_yaml(key)}: {in_yaml(value)}" for key, value in pairs)


def _filled(name: str, **words: str) -> str:
    return Template((files("reportgen.cli") / "begin_files" / name).read_text(encoding="utf-8")).substitute(words)
