"""The mend as an integer program in CPLEX LP form, and designs to mend, written from the rule alone: of any limit + 1
stitches side by side, round the edge, one is main and one is contrast."""
import re


def design(rows, limit, times=1):
    """Rows as lists of 0 (main) and 1 (contrast), row 1 first."""
    lines = "".join('  "' + "".join(".#"[stitch] for stitch in row) + '",\n' for row in reversed(rows))
    return f"""format = 1
[machine]
profile = "plastic-by-hand"
[[yarn]]
key = "A"
[[yarn]]
key = "B"
[repeat]
width = {len(rows[0])}
rows = [
{lines}]
[[band]]
rows = {len(rows)}
main = "A"
contrast = "B"
[piece]
stitches = 40
times = {times}
[rules]
longest_float = {limit}
"""


def random_row(dice, width):
    row, colour = [], dice.randrange(2)
    for _ in range(width):
        colour ^= dice.random() < 0.25
        row.append(int(colour))
    return row


def longest_run(row):
    """Round the edge; a row of one colour has no float."""
    if len(set(row)) < 2:
        return 0
    start = next(at for at in range(len(row)) if row[at] != row[at - 1])
    turned = row[start:] + row[:start]
    return max(len(run) for run in re.findall("0+|1+", "".join(map(str, turned))))


def windows(name, width, limit):
    for first in range(width):
        terms = " + ".join(f"{name}_{(first + step) % width}" for step in range(limit + 1))
        yield f" {terms} >= 1"
        yield f" {terms} <= {limit}"


def flips(name, row):
    """A variable for each stitch that is 1 where it is changed, and the constraints that tie it to its colour."""
    lines = []
    for column, drawn in enumerate(row):
        sign, side = ("+", 1) if drawn else ("-", 0)
        lines.append(f" {name}c_{column} {sign} {name}x_{column} = {side}")
    return lines


def parts_within(names, row, limit):
    """Of any limit + 1 stitches side by side that one float passes, it is caught on one; elsewhere nothing is caught.
    `names` are 1 where the float behind that stitch is caught."""
    width, lines = len(row), []
    free = set(range(width))
    for first in range(width):
        passed = [(first + step) % width for step in range(limit + 1)]
        if limit < width and len(set(row)) == 2 and len({row[column] for column in passed}) == 1:
            lines.append(" " + " + ".join(names[column] for column in passed) + " >= 1")
            free -= set(passed)
    return lines + [f" {names[column]} = 0" for column in sorted(free)]


def pairs_of(height, width, stacked):
    """Variables that are 1 where stitches of neighbouring rows on the same or the next needle are both chosen, round the
    edge too, and the constraints that make them so; the stitches' own are r0c_0 and so on."""
    pairs, lines = [], []
    for number in range(height if stacked else height - 1):
        above = (number + 1) % height
        for column in range(width):
            for step in (-1, 0, 1):
                pair = f"p{number}_{column}_{step + 1}"
                lines.append(f" r{number}c_{column} + r{above}c_{(column + step) % width} - {pair} <= 1")
                pairs.append(pair)
    return pairs, lines


def runs_of(name, width, limit):
    """A variable for each place and length, up to the limit, that is 1 where a run of one colour lies there, as (length,
    variable); and the constraints that tie them to the colours, the stitches' own being r0x_0 and so on."""
    runs, lines = [], []
    over = {column: [] for column in range(width)}
    for first in range(width):
        for length in range(1, min(limit, width - 1) + 1):
            run = f"{name}z_{first}_{length}"
            runs.append((length, run))
            stitches = [(first + step) % width for step in range(length)]
            for column in stitches:
                over[column].append(run)
            for left, right in zip(stitches, stitches[1:]):
                lines += [f" {name}x_{left} - {name}x_{right} + {run} <= 1", f" {name}x_{right} - {name}x_{left} + {run} <= 1"]
            for outside, inside in ((first - 1) % width, first), ((first + length) % width, stitches[-1]):
                lines += [f" {name}x_{outside} + {name}x_{inside} - {run} >= 0",
                          f" {name}x_{outside} + {name}x_{inside} + {run} <= 2"]
    return runs, lines + [" " + " + ".join(over[column]) + " = 1" for column in range(width)]


def program_of_block(rows, limit):
    """Rows that have a float that is too long, all in one program: the fewest changes."""
    changes, constraints, binaries = [], [], []
    for number, row in enumerate(rows):
        if longest_run(row) <= limit:
            continue
        name = f"r{number}"
        own = [f"{name}c_{column}" for column in range(len(row))]
        changes += own
        binaries += own + [f"{name}x_{column}" for column in range(len(row))]
        constraints += list(windows(name + "x", len(row), limit)) + flips(name, row)
    return ("Minimize\n cost: " + " + ".join(changes) + "\nSubject To\n" + "\n".join(constraints) + "\nBinary\n"
            + "\n".join(" " + name for name in binaries) + "\nEnd\n")
