"""Formulas: their text to a tree, and the tree to a value by any engine: first order, draws, how far it bends."""
