# The mend of whole files against an integer program.
add_glpsol_tests(mending 300 300)
