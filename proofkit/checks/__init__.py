"""The checks: one folder per family, one file per check; registry.py lists them."""
