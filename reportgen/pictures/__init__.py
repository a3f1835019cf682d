"""Bytes of a photograph → pictures for pages: sized, upright, in sRGB, telling nothing of place and camera.

Comes in: a file's bytes. Goes out: what it is (`look`), the sizes pages need (`sizes_of`), the pictures (`draw`,
`cleaned`); and of a drawing, the same in pixels (`set_in_pixels`). The same bytes and the same library give the same
pictures. Must never know files, campaigns, pages.
"""

from reportgen.pictures.drawn import cleaned, draw
from reportgen.pictures.look import Look, NotAPicture, begins_like_one, look
from reportgen.pictures.set import set_in_pixels
from reportgen.pictures.sizes import Size, sizes_of

__all__ = ["Look", "NotAPicture", "Size", "begins_like_one", "cleaned", "draw", "look", "set_in_pixels", "sizes_of"]
