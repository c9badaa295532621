"""Rules on what few patterns have: loops, charms, colourways, several hangers, steps of their own, rules that they weigh or allow."""
