"""proofkit: a proofreading assistant for the manuscripts of children's books."""

__version__ = "0.1.0"
