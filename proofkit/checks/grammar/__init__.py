"""Grammar: the words and forms that go together, and those that don't."""
