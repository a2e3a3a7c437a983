"""How a book reads, for eyes and for programs."""
