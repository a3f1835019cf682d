"""Site-wide pages from one `Card` a campaign, and the writing of the site.

In: pages and cards. Out: a folder, exchanged whole. Never sees whole campaigns.
"""
