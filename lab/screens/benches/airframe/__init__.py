"""The airframe on the screen of free build."""
