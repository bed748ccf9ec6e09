"""outline"""
