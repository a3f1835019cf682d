"""An SVG as vl-convert writes it → one as a page wants it: small, still the same in every process, named for readers.

Out go sizes, white ground, empty groups, per-mark labels for screen readers (the whole picture has one), fonts (the
page's own applies) and digits nobody can see. Style attributes are refused: the pages' policy forbids them.
"""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET  # reads only what our own converter wrote

SVG = "http://www.w3.org/2000/svg"
_NUMBER = re.compile(r"-?(?:\d+\.\d*|\.\d+|\d+)(?:e-?\d+)?")
_DROPPED = frozenset(
    {
        "aria-label",
        "aria-roledescription",
        "aria-hidden",
        "role",
        "font-family",
        "version",
        "stroke-miterlimit",
        "class",
    }
)
_HANDED_DOWN = ("fill", "fill-opacity", "font-size", "font-weight", "stroke", "stroke-dasharray", "stroke-linecap",
                "stroke-opacity", "stroke-width", "text-anchor")  # fmt: skip

_NUMBERS = frozenset(
    ("d", "transform", "x", "y", "x1", "x2", "y1", "y2", "width", "height", "stroke-dasharray", "stroke-width")
)
_USUAL = {"opacity": "1", "fill-opacity": "1", "stroke-opacity": "1", "stroke-width": "0", "stroke-linecap": "butt",
          "text-anchor": "start", "font-weight": "400"}  # fmt: skip


class Untidy(ValueError):
    """The SVG holds something no page may carry."""


def tidy(svg: str, kind: str, alt: str) -> str:
    """The drawing with `kind` as its class and `alt` as its name for those who don't see it.

    Raises Untidy for a style attribute, script, link, image or clip path in it (their ids count up in a process).
    """
    drawn = ET.fromstring(svg)
    view = _short("d", drawn.attrib["viewBox"])
    root = ET.Element("svg", {"xmlns": SVG, "class": f"drawing {kind}", "viewBox": view, "role": "img"})
    root.set("aria-label", alt)
    for child in drawn:
        kept = _clean(child)
        if kept is not None:
            root.append(kept)
    return ET.tostring(root, encoding="unicode", short_empty_elements=True).replace(" />", "/>")


def _clean(element: ET.Element) -> ET.Element | None:
    name = element.tag.removeprefix(f"{{{SVG}}}")
    if name not in {"g", "path", "text", "tspan", "line", "rect"}:
        raise Untidy(f"<{name}> in a chart")
    if "style" in element.attrib or any(a.endswith("href") for a in element.attrib):
        raise Untidy(f"<{name}> carries a style or a link")
    if element.get("display") == "none" or element.get("fill") == "white":
        return None
    kept = ET.Element(name, {a: _short(a, v) for a, v in element.attrib.items() if a not in _DROPPED and v != ""})
    layer = re.search(r"([\w-]+)_marks", element.get("class", ""))
    if layer:
        kept.set("class", f"d-{layer[1].replace('_', '-')}")  # d-: a page's own classes stay away
    if kept.get("transform") == "translate(0,0)":
        del kept.attrib["transform"]
    kept.text = element.text
    kept.extend([made for child in element if (made := _clean(child)) is not None])
    if name == "g":
        return _group(kept)
    if element.get("class") in {"background", "foreground"}:
        return None
    for paint in ("fill", "stroke"):
        if kept.get(paint) == "transparent":  # what Vega-Lite calls no ink; the root hands down `none`
            del kept.attrib[paint]
    for name, usual in _USUAL.items():
        if kept.get(name) == usual:
            del kept.attrib[name]
    return kept


def _group(group: ET.Element) -> ET.Element | None:
    """A group without children goes; one that says nothing gives its only child; shared ink moves up to it."""
    if not len(group):
        return None
    if len(group) == 1 and not group.attrib:
        return group[0]
    if len(group) == 1 and group[0].tag == "g" and not (group.attrib.keys() & group[0].attrib.keys()):
        merged = ET.Element("g", {**group.attrib, **group[0].attrib})
        merged.extend(group[0])
        return merged
    if group.get("class"):
        for name in _HANDED_DOWN:
            said = {child.get(name) for child in group}
            if len(said) == 1 and None not in said:
                group.set(name, said.pop() or "")
                for child in group:
                    del child.attrib[name]
    return group


def _short(name: str, value: str) -> str:
    """Numbers to a hundredth of a pixel, and sizes without their unit; colours and names as they are."""
    if name in _NUMBERS:
        return _NUMBER.sub(lambda m: str(round(float(m[0]), 2) + 0.0).removesuffix(".0"), value)
    return value.removesuffix("px") if name == "font-size" else value
