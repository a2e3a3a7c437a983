"""Checks of how much there is to read, on a spread, in a sentence, in the book."""
