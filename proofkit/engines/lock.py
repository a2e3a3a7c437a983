"""Make the lock file of the grammar engine: ``python -m proofkit.engines.lock``.

It resolves the engine's server and languages with jgo, keeps the files that checking English needs,
and writes each one's version, size and SHA-256 beside this module. Run it to move to another
version of the engine, then ask the engine something: a file too few shows only when a text is
checked, not when the server starts.
"""

from __future__ import annotations

import hashlib
import tempfile
from pathlib import Path

from jgo.maven import Artifact, MavenContext

from proofkit.engines.jars import LOCK_FILE

_VERSION = "6.8"
# The server's word counts ask for Spanish, Catalan and Portuguese beside English.
_ROOTS = ("languagetool-server", "language-en", "language-es", "language-ca", "language-pt")
# Found by watching which files Java loads classes and data from while it checks sixty pages of
# English; the answers are those of the complete set of some 170 files.
NEEDED = frozenset({
    "commons-lang3", "commons-logging", "commons-pool2", "commons-text", "english-pos-dict",
    "failureaccess", "fastutil-core", "grpc-api", "guava", "hppc", "indriya", "jackson-core",
    "jakarta.xml.bind-api", "jcl-over-slf4j", "language-ca", "language-detector", "language-en",
    "language-es", "language-pt", "languagetool-core", "languagetool-gui-commons",
    "languagetool-server", "logback-classic", "logback-core", "morfologik-fsa",
    "morfologik-fsa-builders", "morfologik-speller", "morfologik-stemming", "mybatis",
    "opennlp-chunk-models", "opennlp-postag-models", "opennlp-tokenize-models", "opennlp-tools",
    "opentelemetry-api", "opentelemetry-context", "opentelemetry-semconv",
    "resilience4j-circuitbreaker", "segment", "simpleclient", "simpleclient_guava",
    "simpleclient_tracer_common", "simpleclient_tracer_otel", "slf4j-api", "unit-api",
    "uom-lib-common",
})  # fmt: skip
_TIMEOUT = 60
_HEAD = """\
# The files of the grammar engine that checking English needs, verified when they are fetched.
# Made by: python -m proofkit.engines.lock

version = "{version}"
"""
_ENTRY = """
[[jar]]
group = "{group}"
artifact = "{artifact}"
version = "{version}"
size = {size}
sha256 = "{sha256}"
"""


def write_lock(file: Path = LOCK_FILE) -> None:
    """Resolve the engine, fetch the files that are needed, and write the lock file."""
    with tempfile.TemporaryDirectory() as folder:
        context = MavenContext(repo_cache=Path(folder), timeout=_TIMEOUT)
        found = {a.artifactId: a for a in _resolved(context) if a.artifactId in NEEDED}
        lacking = sorted(NEEDED - found.keys())
        if lacking:
            raise SystemExit(f"The engine's own list no longer has: {', '.join(lacking)}")
        entries = [_entry(found[name]) for name in sorted(found)]
    file.write_text(_HEAD.format(version=_VERSION) + "".join(entries), encoding="utf-8")


def _resolved(context: MavenContext) -> list[Artifact]:
    roots = [context.create_dependency(f"org.languagetool:{root}:{_VERSION}") for root in _ROOTS]
    inputs, others = context.resolver.resolve(roots)
    return [dependency.artifact for dependency in (*inputs, *others)]


def _entry(artifact: Artifact) -> str:
    content = artifact.resolve().read_bytes()
    return _ENTRY.format(
        group=artifact.groupId,
        artifact=artifact.artifactId,
        version=artifact.version,
        size=len(content),
        sha256=hashlib.sha256(content).hexdigest(),
    )


if __name__ == "__main__":
    write_lock()
