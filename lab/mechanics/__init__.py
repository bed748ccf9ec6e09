"""mechanics"""
