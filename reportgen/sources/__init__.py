"""Files of the workspace: listed, read, digested. Refuses ways out of the workspace.

In: a folder. Out: bytes with their paths and digests. Never knows what the files mean.
"""
