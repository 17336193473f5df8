"""Integer programs solved by glpsol, the solver of the GNU Linear Programming Kit: a reference that knows nothing of ours."""
import re
import subprocess


def optimum(text, folder, *options, timeout=250):
    """The least value of the objective 'cost' of a program in CPLEX LP form; None where nothing meets its constraints."""
    model, answer = folder / "model.lp", folder / "answer.txt"
    model.write_text(text)
    done = subprocess.run(["glpsol", "--lp", model, *options, "-o", answer], capture_output=True, text=True, timeout=timeout)
    said = answer.read_text()
    if "INTEGER OPTIMAL" in said:
        return float(re.search(r"Objective:\s+cost = (\S+)", said)[1])
    if "INTEGER EMPTY" in said or "UNDEFINED" in said or "no integer feasible" in done.stdout.lower():
        return None
    raise AssertionError(done.stdout)
