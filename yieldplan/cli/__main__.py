"""`python -m yieldplan.cli`: the program where its own name is not on the path."""

import sys

from yieldplan.cli.main import main

sys.exit(main())
