"""Verse: its lines, its rhymes, its metre, and the lines that stumble."""
