"""Lint: everything that a careful technical editor would check, one rule a module.

In: a workspace of patterns, with the findings of its reading. Out: findings, sorted, and reports of them.
A rule reads the drawn chart, the written strands and the piece; it changes nothing.
"""
