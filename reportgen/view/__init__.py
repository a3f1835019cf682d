"""The site shown on this machine while it is being written: compiled, served, compiled anew on every change.

The server hangs its own part under each page it sends: the script that follows changes, and what there is to say just
now, beside the sentence it is about where that stands on the page. Neither ever reaches a file. While there are
mistakes, the last good site is what is shown.
"""

from reportgen.view.following import changes
from reportgen.view.serving import serving
from reportgen.view.shown import Outcome, Shown, compiled, findings_of, says_the_same

__all__ = ["Outcome", "Shown", "changes", "compiled", "findings_of", "says_the_same", "serving"]
