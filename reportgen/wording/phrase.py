"""What an entry of a language's table may be: plain words with gaps, or forms by plural category."""

from __future__ import annotations

from collections.abc import Mapping

Forms = Mapping[str, str]
