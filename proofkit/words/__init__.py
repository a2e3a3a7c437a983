"""What is known of words: dictionaries, spelling variants, frequency, and the book's own words."""
