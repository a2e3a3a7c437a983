"""What the words around a word say of it: which of two words that are taken for each other is meant."""
