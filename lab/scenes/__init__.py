"""scenes"""
