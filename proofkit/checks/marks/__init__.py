"""Stray, doubled and wrong marks."""
