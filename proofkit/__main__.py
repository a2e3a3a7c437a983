"""``python -m proofkit``."""

from proofkit.cli.main import run

run()
