"""The papers that go to the proofreader with the manuscript, made from a report."""
