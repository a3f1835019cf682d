"""How one contender stood to others, where only an order was seen, in words."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from reportgen.wording.language import say
from reportgen.wording.listing import and_list

Said = tuple[str, str, bool, str]  # told (less, more, alike, both ways), degree ("", a little, much), follows, a name

_ORDER = ("less", "more", "alike", "both ways")


def stood(told: str, degree: str, follows: bool, names: Sequence[str]) -> str:
    """ "a little less than Ostler and Tamsin", "about like Ostler", "so less than Brindle" (it follows)."""
    key = "-".join(told.split())
    if follows and told in ("less", "more"):
        return say(f"order.{key}.follows", names=and_list(names))
    kind = f".{'-'.join(degree.split())}" if degree and told in ("less", "more") else ""
    return say(f"order.{key}{kind}", names=and_list(names))


def in_short(told: str, letters: str) -> str:
    """For where there is room for letters alone: "less than B C"."""
    return say(f"order.in-short.{'-'.join(told.split())}", letters=letters)


def stood_to_all(said: Iterable[Said], one_after_another: bool = False) -> str:
    """All of it, what was seen first: "less than Ostler; about like Tamsin; so less than Brindle". With commas between
    for `one_after_another`, inside a longer list."""
    groups: dict[tuple[bool, int, str, str], list[str]] = {}
    for told, degree, follows, name in said:
        groups.setdefault((follows, _ORDER.index(told), degree, told), []).append(name)
    ordered = sorted(groups.items(), key=lambda g: g[0][:2])
    return say("order.several.of-one" if one_after_another else "order.several").join(
        stood(told, degree, follows, names) for (follows, _, degree, told), names in ordered
    )
