"""The style sheet: what the book decided, or mostly does, for whoever proofreads it next."""
