"""How many small faults, put into pairing and evening one at a time, do the tests of the place notice?

`python -m tests.mutants --sample 350 --seed 1` draws so many of the faults that mutmut's operators make in
every function of `assistant/pairing` and `assistant/evening`, and puts each to the tests that run the line it
stands on, quickest first. mutmut's own runner would start every test of the function for each fault and take
hours; here the tests are collected once, and each fault gets a process forked from there, in which nothing of
both packages has run yet, with the function's code exchanged. Tests that start the program anew cannot see
the fault and are left out.
"""
