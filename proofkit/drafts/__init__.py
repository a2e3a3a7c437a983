"""Draft after draft: what a draft was, and what became of each issue from one to the next."""
