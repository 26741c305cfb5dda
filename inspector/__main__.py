"""`python -m inspector` is the command `inspector`."""

import sys

from inspector.cli import main

if __name__ == "__main__":
    sys.exit(main())
