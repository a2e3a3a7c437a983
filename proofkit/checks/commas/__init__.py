"""Commas that part what is said from what is added: lists, asides, relative clauses."""
