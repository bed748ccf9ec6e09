"""Pictures of a tool that is built on a finger."""
