"""The Word copy: the manuscript as it is, with a comment at each issue."""
