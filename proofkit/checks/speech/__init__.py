"""Quotation marks, and the sentences that bring speech in."""
