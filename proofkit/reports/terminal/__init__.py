"""The report on the author's screen: the only report that knows of colour and width."""
