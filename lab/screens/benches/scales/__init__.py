"""The scales bench on the screen of free build."""
