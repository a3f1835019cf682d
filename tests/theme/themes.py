"""The themes that come with the program."""

OURS = ("reading-room", "field-book")
