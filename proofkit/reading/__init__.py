"""How hard the text is to read, and for whom."""
