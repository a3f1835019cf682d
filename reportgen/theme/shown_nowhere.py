"""What an author's template writes and no page shows: nothing at all, a block nobody asks for, text beside blocks."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import cache
from typing import TYPE_CHECKING

from reportgen.campaign.did_you_mean import nearest
from reportgen.finding import Finding, Place

if TYPE_CHECKING:
    from jinja2.nodes import Node, Template


def shown_nowhere(
    own: Iterable[str], templates: Mapping[str, str], pages: Iterable[str], origin: str
) -> Iterator[Finding]:
    """Each with its line; `pages` are the templates of whole pages. A template that can't be read is told elsewhere."""
    whole = frozenset(pages)
    tree = cache(lambda name: _tree(templates[name]) if name in templates else None)
    for name in sorted(own):
        if name not in whole and "extends" not in templates[name]:
            continue  # a part of pages, which nothing here is about
        read = tree(name)
        if read is None:
            continue
        base = _base(read)
        file = f"{origin}/templates/{name}"
        if tree(base) is not None:
            yield from _lost(read, base, [block for above in _up(base, tree) for block in _blocks(above)], file)
        elif not base and name in whole and not any(map(_writes, read.body)):
            yield _told(file, 1, "nothing stands in this template", "write it, or take the file away")


def _up(name: str, tree: Callable[[str], Template | None]) -> Iterator[Template]:
    """The template of that name, the one it extends, and so on; each once, where they extend each other in a ring."""
    there: set[str] = set()
    while name not in there and (read := tree(name)) is not None:
        yield read
        there.add(name)
        name = _base(read)


def _lost(tree: Template, base: str, blocks: list[str], file: str) -> Iterator[Finding]:
    from jinja2.nodes import Block

    there = ", ".join(sorted(set(blocks)))
    for node in tree.body:
        if isinstance(node, Block) and node.name not in blocks:
            meant = nearest(node.name, blocks)
            do = f"did you mean “{meant}”?" if meant else f"name it after one that is there: {there}"
            yield _told(file, node.lineno, f"“{base}” has no block “{node.name}”", do)
        elif not isinstance(node, Block) and _writes(node):
            says = f"this stands outside the blocks, and “{base}” shows what stands in them alone"
            yield _told(file, _begins(node), says, f"put it into a block: {there}")


def _tree(text: str) -> Template | None:
    from jinja2 import Environment, TemplateSyntaxError

    try:
        return Environment(autoescape=True).parse(text)
    except TemplateSyntaxError:
        return None


def _base(tree: Template) -> str:
    """The template that this one extends; "" where it extends none, or one that only the page tells."""
    from jinja2.nodes import Const, Extends

    named = (node.template for node in tree.find_all(Extends))
    return next((str(name.value) for name in named if isinstance(name, Const)), "")


def _blocks(tree: Template) -> Iterator[str]:
    from jinja2.nodes import Block

    return (block.name for block in tree.find_all(Block))


def _writes(node: Node) -> bool:
    """Whether the node, where it stands at the top of a template, puts anything onto the page."""
    from jinja2 import nodes

    if isinstance(node, nodes.Output):
        return any(not isinstance(piece, nodes.TemplateData) or piece.data.strip() for piece in node.nodes)
    return not isinstance(
        node, nodes.Macro | nodes.Assign | nodes.AssignBlock | nodes.Import | nodes.FromImport | nodes.Extends
    )


def _begins(node: Node) -> int:
    """The line of the first thing in it that can be seen."""
    from jinja2 import nodes

    for piece in node.nodes if isinstance(node, nodes.Output) else ():
        if not isinstance(piece, nodes.TemplateData):
            return piece.lineno
        if piece.data.strip():
            return piece.lineno + piece.data[: -len(piece.data.lstrip())].count("\n")
    return node.lineno


def _told(file: str, line: int, says: str, do: str) -> Finding:
    return Finding("error", "theme-file", Place(file, line), says, "as it stands no page shows it", do)
