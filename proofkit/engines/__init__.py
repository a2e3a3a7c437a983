"""The language model and the grammar engine: where they come from, and what they remember."""
