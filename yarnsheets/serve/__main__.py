"""`python -m yarnsheets.serve` is the command `yarnsheets`."""

from __future__ import annotations

import sys

from yarnsheets.serve import main

sys.exit(main())
