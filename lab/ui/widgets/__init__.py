"""widgets"""
