"""The tool that is built on a finger, in free build."""
