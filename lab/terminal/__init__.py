"""terminal"""
