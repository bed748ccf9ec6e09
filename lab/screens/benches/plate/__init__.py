"""The hung plate on the screen of free build."""
