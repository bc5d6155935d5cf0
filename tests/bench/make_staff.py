#!/usr/bin/env python3
"""Writes one staff of single notes, four bars a line, half of it in \\relative.
usage: make_staff.py NOTES FILE"""
import sys

notes, target = int(sys.argv[1]), sys.argv[2]
bars = notes // 8 // 2


def bar(number, marks):
    """Eight notes that wander through the scale without leaving the octave; another bar for each number."""
    steps = [(number * 3 + i * (2 + number % 5)) % 7 for i in range(8)]
    return "8 ".join("cdefgab"[s] + marks for s in steps) + "8"


def lines(marks):
    return "\n".join(f"  {bar(n, marks)} |" for n in range(bars))


with open(target, "w", encoding="utf-8") as out:
    out.write(f'\\version "2.24.0"\n\\new Staff {{\n{lines(chr(39))}\n')
    out.write(f"  \\relative c' {{\n{lines('')}\n  }}\n}}\n")
