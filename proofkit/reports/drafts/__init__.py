"""The drafts of a book, each in a row: as a table, as data, and in a sentence."""
