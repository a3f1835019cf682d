"""What readers load who explore a chart: a script a chart, from what it was drawn from, in words of the language.

Nothing of it is in a page; a chart whose script is missing is whole without it.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass

from reportgen.addresses import explored_file
from reportgen.marks import mark_of
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.theme import render
from reportgen.wording.language import speaking

_SAYS = ("exploring", "close", "walk", "ways", "shown", "nothing")
_OVER_TIME = ("time", "closer", "wider", "earlier", "later", "whole")


@dataclass(frozen=True)
class Explored:
    """`chart`, `people` and `says` are JSON: `Figure.explored`, the contenders in their order, the words by name."""

    address: str
    chart: str
    people: str
    says: str


def explored_files(told: Told) -> Mapping[str, bytes]:
    """For every chart that can be explored the file that gives what it takes, by its address on the site."""
    with speaking(told.publication.speaks):
        people = [
            {"title": c.title, "letter": mark_of(n).letter, "css": mark_of(n).css_class}
            for n, c in enumerate(told.campaign.contenders)
        ]
        made = {}
        for figure in told.figures.values():
            if figure.explored:
                address = explored_file(told.campaign.id, figure.address)
                view = Explored(figure.address, figure.explored, _json(people), _json(_says()))
                made[address] = render(told.theme, "explored.js", view, address).encode()
        return made


def _says() -> dict[str, str]:
    said = {name: words(f"exploring.{name}") for name in (*_SAYS, *_OVER_TIME)}
    gaps = {"from": "{from}", "to": "{to}", "unit": "{unit}"}  # filled by the script, from ticks that are printed here
    return {**said, "view": words("exploring.view", **gaps)}


def _json(of: object) -> str:
    return json.dumps(of, ensure_ascii=False, separators=(",", ":"))
