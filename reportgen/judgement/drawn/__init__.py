"""Joint draws where first order leaves out too much: what they change of an interval or a chance (JCGM 101)."""
