"""The commands, one module each: they read a workspace, check it, and hand it to the part that does the work."""
