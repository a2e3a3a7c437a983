"""Capitals that English asks for, whatever the book does elsewhere."""
