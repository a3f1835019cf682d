"""What was in the box, in words: what stood there, what was missing, what was noted."""

from __future__ import annotations

import re

from reportgen.campaign.declared import Contender
from reportgen.wording.language import say
from reportgen.wording.listing import commas
from reportgen.wording.sentence import capital, sentence


def found_in(contender: Contender) -> str:
    """The items that were there, with what was noted of them: "pouch, hose (one metre)"."""
    return commas([item_found(contender, item) for item in contender.there])


def received(contender: Contender) -> tuple[str, ...]:
    """What was seen when it was unpacked: the author's words, what the box lacked, what was noted of its items."""
    box = contender.in_the_box
    missing = [item_found(contender, item) for item in contender.missing]
    others = [item for item in box if item not in (*contender.there, *contender.missing)]
    noted = [say("box.words", item=capital(item), said=box[item]) for item in others]
    lacks = [say("box.missing", items=commas(missing))] if missing else []
    mended = [say("put-right", done=contender.put_right)] if contender.put_right else []
    return (*contender.as_received, *(sentence(line) for line in (*mended, *lacks, *noted)))


def item_found(contender: Contender, item: str) -> str:
    """An item with what was noted of it besides that it was there, or missing."""
    said = contender.in_the_box[item]
    rest = re.sub(r"^(?:there|missing)\b[\s,;:]*", "", said)
    return say("box.item", item=item, said=rest) if rest else item
