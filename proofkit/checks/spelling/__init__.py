"""Words spelt wrong, run together or pulled apart."""
