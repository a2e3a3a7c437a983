"""A real browser for the tests of what proofkit writes in HTML."""
