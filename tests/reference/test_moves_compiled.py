#!/usr/bin/env python3
"""Results of transformations (tests/property/test_moves.c) through the compiler: it must hear note for note what the proof
claims, which is the program's own reading of the result. SW_COMPILED says how many (a long run: SW_COMPILED=60)."""
import os
import sys

import compiled

sys.exit(compiled.judge_kept("test_moves", "SW_MOVES_KEEP", {"SW_MOVES": os.environ.get("SW_MOVES", "8")},
                             int(os.environ.get("SW_COMPILED", "4"))))
