"""benches"""
