# SPDX-License-Identifier: Apache-2.0
"""The report in a real browser, and what it carries. Exit status 77: skipped, because something is missing."""

import hashlib
import os
import pathlib
import re
import subprocess
import sys
import tempfile

SOURCE = pathlib.Path(os.environ.get("NOONHOUSE_SOURCE_DIR", pathlib.Path(__file__).resolve().parents[2]))
BUILD = pathlib.Path(os.environ.get("NOONHOUSE_BUILD_DIR", SOURCE / "build"))
sys.path.insert(0, str(SOURCE / "tests/support"))
from browser import Browser, find_browser  # noqa: E402

WIDTHS = (360, 1100)  # a phone and a desk [px]

# Asked of the page once its charts are drawn.
DRAWN = "new Promise(r => (function wait() { document.documentElement.dataset.drawn ? r() : setTimeout(wait, 20); })())"
QUESTIONS = """(async () => {
  const root = document.documentElement;
  const all = (what, within) => Array.from((within || document).querySelectorAll(what));
  const wide = all('main *').filter(e => !e.closest('.scroll') &&
    e.getBoundingClientRect().right > root.clientWidth + 1).map(e => e.tagName + '.' + e.className);
  const blank = canvas => {
    const pixels = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height).data;
    for (let i = 3; i < pixels.length; i += 4) if (pixels[i]) return false;
    return true;
  };
  const press = (place, key) => {
    place.focus();
    place.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
    return new Promise(done => setTimeout(() => done(place.parentElement.querySelector('output').textContent), 100));
  };
  const line = await press(document.querySelector('.chart.lines [tabindex]'), 'Home');
  const heights = await press(document.querySelector('.chart.heights canvas'), 'End');
  document.querySelector('.strip button.failure').click();
  return {
    line, heights, drawn: Number(root.dataset.drawn), places: all('.plot').length, scroll: root.scrollWidth,
    wide: wide.slice(0, 5), blank: all('canvas').filter(blank).length,
    chain: all('.note:not([hidden]) li').map(e => e.textContent), tables: all('details table').length,
    unnamed: all('button, [tabindex]').filter(e => !e.getAttribute('aria-label') && !e.textContent.trim()).length,
    paper: getComputedStyle(document.body).backgroundColor,
  };
})()"""


def skip(why):
    print(f"skipped: {why}")
    sys.exit(77)


def check(holds, what):
    if not holds:
        print(f"FAILED: {what}")
        sys.exit(1)


def carried_text(name):
    """What stands between the marks of a raw string literal."""
    text = (SOURCE / "tools/report" / name).read_text(encoding="utf-8")
    return re.fullmatch(r'R"(\w+)\((.*)\)\1"\n', text, re.DOTALL).group(2)


def check_carried_files():
    origin = (SOURCE / "tools/report/uplot_origin.txt").read_text(encoding="utf-8")
    for name in ("uplot.js.inc", "uplot.css.inc"):
        digest = hashlib.sha256(carried_text(name).encode("utf-8")).hexdigest()
        check(f"{digest}  {name}" in origin, f"{name} has the digest written in uplot_origin.txt, not {digest}")


def make_page(folder):
    program = BUILD / "tests" / "report_page_program"
    if not program.exists():
        skip(f"{program} is not built")
    pages = []
    for name in ("first.html", "second.html"):
        subprocess.run([program, folder / name], check=True)
        pages.append((folder / name).read_bytes())
    check(pages[0] == pages[1], "the same records give the same bytes")
    return pages[0].decode("utf-8")


def check_stands_alone(page):
    """Nothing in the page's own markup points out of it, and no text of the records became markup."""
    markup = re.sub(r"<script.*?</script>|<style>.*?</style>", "", page, flags=re.DOTALL)
    for target in re.findall(r'(?:src|href)="([^"]*)"', markup):
        check(target.startswith("#"), f"no link out of the page, but {target}")
    check(page.count("<script") == page.count("</script>") == 3, "only the page's own three scripts")
    check("<img" not in page, "no markup from a name")
    check(not re.search(r"url\(|@import", page), "no style loads anything")


def check_answer(answer, complaints, at, width):
    check(not complaints, at + f"no complaint, but {complaints}")
    check(answer["scroll"] <= width, at + f"no sideways scroll, but {answer['scroll']} px wide")
    check(not answer["wide"], at + f"nothing reaches out of the page, but {answer['wide']}")
    check(answer["drawn"] == answer["places"] > 0, at + "every chart is drawn")
    check(answer["blank"] == 0, at + f"no chart is blank, but {answer['blank']}")
    check(answer["line"].startswith("day 1 00:00: low, 0.20 m "), at + f"keys read a line chart: {answer['line']!r}")
    check(answer["heights"].startswith("day "), at + f"keys read a picture of heights: {answer['heights']!r}")
    check(any("no rain since" in cause for cause in answer["chain"]),
          at + f"a failure shows its chain: {answer['chain']}")
    check(answer["unnamed"] == 0, at + "everything that takes the focus has a name")
    check(answer["tables"] > 0, at + "tables stand behind the charts")


def check_in_browser(path, address):
    papers = set()
    with Browser(path) as browser:
        for width in WIDTHS:
            for dark in (False, True):
                browser.open(address, width, 900, dark)
                browser.evaluate(DRAWN)
                answer = browser.evaluate(QUESTIONS)
                check_answer(answer, browser.complaints, f"at {width} px, {'dark' if dark else 'light'}: ", width)
                papers.add(answer["paper"])
    check(len(papers) == 2, f"light and dark differ: {papers}")


def main():
    check_carried_files()
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        check_stands_alone(make_page(folder))
        browser = find_browser()
        if browser is None:
            skip("no chromium to load the page (the checks without one passed)")
        check_in_browser(browser, (folder / "first.html").as_uri())
    print("the page stands alone, draws and reads at", WIDTHS, "px, light and dark")


if __name__ == "__main__":
    main()
