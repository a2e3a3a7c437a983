"""From the author's file to a Book: one file per format, each bytes in, blocks out."""
