"""reportgen: from a tester's files to a site that a sceptic can check.

One direction, plain frozen data between stages::

    sources → campaign → readings → evaluation → pages → site
    (files)   (declared) (observed) (computed,    (told)  (written)
                                     decided)
"""

__version__ = "0.1.0"
