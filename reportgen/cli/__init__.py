"""The commands: words in, words out, exit status."""
