"""lesson"""
