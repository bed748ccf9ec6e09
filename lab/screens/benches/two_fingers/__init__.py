"""Two fingers in free build."""
