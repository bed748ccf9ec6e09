"""`python -m lab` is the command `tiltbench`."""

import sys

from lab.app.main import main

if __name__ == "__main__":
    sys.exit(main())
