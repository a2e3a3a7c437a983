"""Spaces: too many, too few, on the wrong side of a mark."""
