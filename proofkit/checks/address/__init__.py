"""Address: the names by which one character speaks to another."""
