"""The stack of beams in free build."""
