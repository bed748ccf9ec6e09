"""The hanging bar in free build."""
