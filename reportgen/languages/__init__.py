"""Language files → the language a publication speaks.

Comes in: a tag, the files of the program and of the workspace. Goes out: a `Language` whose table is complete, and
findings. Must never know what a phrase is for.
"""

from reportgen.languages.load import load_language

__all__ = ["load_language"]
