"""attempts"""
