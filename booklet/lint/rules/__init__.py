"""One rule a module, named for the fault it finds."""
