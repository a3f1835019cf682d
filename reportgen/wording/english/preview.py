"""English, part of its table: pictures and words for links that are shared."""

from __future__ import annotations

from collections.abc import Mapping

PREVIEW: Mapping[str, str] = {
    "page.preview.tested": "Tested {day}",
    "page.preview.more": "{n} were measured",
    "page.preview.alt": "“{title}”, the answer in words, and the results of one test: {quantity}.",
    "page.preview.alt.plain": "“{title}” and the answer in words.",
    "site.preview.alt": "{title}: the newest comparisons by their titles.",
}
