"""Words that stand twice."""
