"""The needle chart as other programs read it: csv by Python's reader, html by xmllint and an XML parser, pdf by poppler.
usage: check_chart.py csv|txt|html|pdf PUNCHWRIGHT"""

import csv
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as xml

import naive_knitter as naive
from chart_designs import expect, export, harbour_design, runs_text

MACHINES = ["bulky-card-24", "plastic-by-hand"]
XHTML = "{http://www.w3.org/1999/xhtml}"


def check_csv(program, folder):
    for machine in MACHINES:
        design = harbour_design(machine)
        wanted = naive.rows_as_json(design)
        raw = export(program, "needles", design, folder, "chart.csv").read_bytes()
        expect(raw.count(b"\n"), raw.count(b"\r\n"), "RFC 4180 lines end in CR LF")
        records = list(csv.DictReader(raw.decode("utf-8").splitlines(), strict=True))
        expect(len(records), len(wanted), "records")
        for record, row in zip(records, wanted):
            where = f"{machine}, row {row['row']}, "
            expect(record["row"], str(row["row"]), where + "row")
            expect(record["drawn"], str(row["drawn"] or ""), where + "drawn")
            expect(record["travel"], row["travel"], where + "travel")
            expect(record["main"], row["main"], where + "main")
            expect(record["contrast"], row["contrast"] or "", where + "contrast")
            expect(record["all_needles"].split(), row["needles"], where + "all needles")
            expect(record["count"], str(len(row["needles"])), where + "count")
            expect(record["needles"], runs_text(row["needles"]) if row["needles"] else "", where + "runs")
            expect(record["card_row"], str(row.get("card_row") or ""), where + "card row")
            expect(record["why"] == "drawn", row["drawn"] is not None, where + "why")
        expect('Brick "aran" in' in " ".join(record["before"] for record in records), True, "quotes survive")


def check_txt(program, folder):
    design = harbour_design("plastic-by-hand")
    wanted = naive.rows_as_json(design)
    text = export(program, "needles", design, folder, "chart.txt").read_text(encoding="utf-8")
    bed = naive.needles_in_work(design)
    strips = re.findall(r"^\[ \] +\d+ .*?  ([.#]+)\|([.#]+)  ", text, re.MULTILINE)
    expect(len(strips), len(wanted), "strips")
    for (left, right), row in zip(strips, wanted):
        strip = "".join("#" if naive.needle_name(needle) in row["needles"] else "." for needle in bed)
        expect(left + right, strip, f"row {row['row']}, strip")
        expect(len(left), 36, "needles left of the middle")


def check_html(program, folder):
    for machine in MACHINES:
        design = harbour_design(machine)
        wanted = naive.rows_as_json(design)
        page = export(program, "needles", design, folder, "chart.html", title="Buoys <&> \"waves\"")
        subprocess.run(["xmllint", "--noout", page], check=True)
        root = xml.parse(page).getroot()
        boxes = [box for box in root.iter(XHTML + "input") if box.get("aria-label", "").startswith("row ")]
        expect(len(boxes), len(wanted), "boxes to tick")
        lists = [cell.find(XHTML + "div").text for cell in root.iter(XHTML + "td")
                 if cell.get("class") == "needles" and cell.find(XHTML + "div") is not None]
        expect(lists, [runs_text(row["needles"]) for row in wanted], "runs")
        expect(root.find(f".//{XHTML}h1").text, 'Buoys <&> "waves"', "title")
        expect(len(root.findall(f".//{XHTML}script")), 0, "scripts")
        links = [value for node in root.iter() for key, value in node.attrib.items() if key in ("href", "src")]
        expect({link for link in links if not link.startswith("#")}, set(), "links to elsewhere")
        # An HTML reader takes '<div />' for an opening tag: only elements without content may be written so.
        short = set(re.findall(r"<(\w+)[^<>]*/>", page.read_text(encoding="utf-8")))
        expect(short - {"meta", "input", "path", "rect", "use", "svg", "text"}, set(), "elements closed at once")


def pages_of(pdf):
    text = subprocess.run(["pdftotext", "-layout", pdf, "-"], check=True, capture_output=True, text=True).stdout
    return text.rstrip("\f").split("\f")


def check_pdf(program, folder):
    sizes = {"a4": (595.28, 841.89), "letter": (612, 792), "roll": (595.28, 841.89)}
    for machine in MACHINES:
        for paper, size in sizes.items():
            design = harbour_design(machine)
            pdf = export(program, "needles", design, folder, "chart.pdf", paper=paper)
            subprocess.run(["qpdf", "--check", pdf], check=True, stdout=subprocess.DEVNULL)
            info = subprocess.run(["pdfinfo", pdf], check=True, capture_output=True, text=True).stdout
            found = re.search(r"Page size: +([\d.]+) x ([\d.]+)", info)
            expect([abs(float(found[side + 1]) - size[side]) < 0.1 for side in (0, 1)], [True, True], "page size")
            pages = pages_of(pdf)
            for number, page in enumerate(pages, 1):
                for head in ["Harbour band", "Piece L36–R35, 71 needles", "carriage, yarns", "L30", "R30", "stays back",
                             f"page {number} of {len(pages)}", "Care: "]:
                    expect(head in page, True, f"'{head}' on page {number}")
            # Every run of every row, in the order of the page: an ordered search through all the words.
            words = iter(" ".join(pages).split())
            for row in naive.rows_as_json(design):
                for run in runs_text(row["needles"]).split() if row["needles"] else []:
                    expect(run in words, True, f"row {row['row']}: '{run}' in its place")


def check_stay_back(program, folder):
    design = harbour_design("plastic-by-hand")
    bed = [naive.needle_name(needle) for needle in naive.needles_in_work(design)]
    output = export(program, "needles", design, folder, "chart.csv", options=["--stay-back"])
    some = 0
    for record, row in zip(csv.DictReader(output.open(encoding="utf-8", newline="")), naive.rows_as_json(design)):
        back = [needle for needle in bed if needle not in row["needles"]]
        fewer = len(back) < len(row["needles"])
        some += fewer
        text = ("all but " + runs_text(back) if back else "all") if fewer else runs_text(row["needles"])
        text = text if row["needles"] else ""
        expect(record["needles"], text, f"row {row['row']}")
        expect(record["all_needles"].split(), row["needles"], f"row {row['row']}")
    expect(some > 3, True, "rows in which fewer stay back")


if __name__ == "__main__":
    CHECKS = {"csv": check_csv, "txt": check_txt, "html": check_html, "pdf": check_pdf, "stay-back": check_stay_back}
    with tempfile.TemporaryDirectory() as place:
        CHECKS[sys.argv[1]](sys.argv[2], place)
