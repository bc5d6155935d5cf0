#!/usr/bin/env python3
"""Results of random edits (tests/property/test_edits.c) through the compiler: it must hear note for note what the proof
claims, which is the program's own reading of the result. SW_COMPILED says how many (a long run:
SW_EDITS=9000 SW_COMPILED=300)."""
import os
import sys

import compiled

sys.exit(compiled.judge_kept("test_edits", "SW_EDITS_KEEP", {"SW_EDITS": os.environ.get("SW_EDITS", "400")},
                             int(os.environ.get("SW_COMPILED", "6"))))
