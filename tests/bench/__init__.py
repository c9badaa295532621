"""Measurements that are run by hand: what lint finds, and how long it takes."""
