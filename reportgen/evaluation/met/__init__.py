"""Readings and declarations looked through for what must be told wherever it bears → caveats that nobody typed.

A thing met a file, one table. Comes in: the campaign and its readings; goes out: caveats with `met` in place of an
author's words, each touching the readings it is about. Never computes, never forms a sentence.
"""
