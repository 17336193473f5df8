# Stitch counts of whole yokes against an integer program.
add_glpsol_tests(pieces 600 60)
