"""Checks of verse: the line that stumbles, the rhyme that fails, the refrain that differs."""
