"""A raw file as its page shows it: its rows as they stand, or windows around what was read."""
