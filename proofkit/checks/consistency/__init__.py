"""One thing done in two ways: names, compounds, capitals, marks."""
