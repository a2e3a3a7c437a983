"""Words that are words, but not the ones meant."""
