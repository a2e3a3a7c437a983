"""Stet: what the author lets stand, how it is known again in the next draft, and how it is kept."""
