"""Any body seen from the side, from above and from the front, to one scale."""
