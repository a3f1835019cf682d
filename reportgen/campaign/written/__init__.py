"""The files as authors write them, one record a shape: the source of types, checks and published schemas.

Each record's fields are its keys; what a key means stands beside it and is printed in the schema.
"""
