"""What came to readings besides being taken.

Slips put right, records that disagree, incidents, runs still going, one reading for all.
"""
