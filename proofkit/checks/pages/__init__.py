"""The page and spread numbers that the author wrote."""
