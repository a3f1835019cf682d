"""English, third part of its table: what was met among the readings and is told wherever it bears, one sentence each.

The key is `met.` and the code of `wording/met.py`. Texts in the gaps are quoted as the author typed them.
"""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

MET: Mapping[str, str | Forms] = {
    # notations
}
