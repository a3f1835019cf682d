"""Files that hold cells rather than text: XLSX, ODS, Parquet → the cells of one sheet → a table.

Cells keep their place (sheet, row, column) and what sort they are, until readings are made of them. Knows no campaign.
"""
