"""All that CI checks, in one command: python -m tests."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parent.parent

# Two at a time: most tests wait for a browser. In CI nothing may be left out for want of a tool:
# the fixtures fail there where they skip here.
CHECKS = {
    "rules": ["ruff", "check"],
    "format": ["ruff", "format", "--check"],
    "types": ["mypy"],
    "tests": ["pytest", "-n", "2", "--dist", "loadfile"],
}


def main() -> int:
    """Run every check, also after one has failed; the exit code is 0 if none has."""
    failed = []
    for name, command in CHECKS.items():
        print(f"\n== {name}: {' '.join(command)}", flush=True)
        if subprocess.run([sys.executable, "-m", *command], cwd=ROOT, check=False).returncode:
            failed.append(name)
    print("\nAll checks passed." if not failed else f"\nFailed: {', '.join(failed)}.", flush=True)
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
