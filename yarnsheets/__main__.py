"""The command `yarnsheets`: the worksheets served as pages, or written as files."""

from __future__ import annotations

import sys


def main(argv: list[str] | None = None) -> int:
    """Serve the worksheets, or write a handout of them; give the exit code."""
    words = sys.argv[1:] if argv is None else argv
    if words[:1] == ["handout"]:
        from yarnsheets import handout

        return handout.main(words[1:])
    from yarnsheets import serve

    return serve.main(words)


if __name__ == "__main__":
    sys.exit(main())
