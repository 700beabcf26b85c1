# SPDX-License-Identifier: Apache-2.0
"""A headless Chromium spoken to over its debugging pipe: for tests that load a page of ours."""

import json
import os
import select
import shutil
import subprocess
import tempfile
import time

ARGUMENTS = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
             "--disable-background-networking", "--disable-component-update", "--disable-sync",
             "--remote-debugging-pipe", "about:blank"]


def find_browser():
    """The path of a Chromium, or None."""
    return shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")


class Browser:
    """One browser with one page. Use it in a with statement: its process and its profile go at the end."""

    def __init__(self, path, patience_s=120.0):
        self.profile = tempfile.TemporaryDirectory(ignore_cleanup_errors=True)
        self.patience_s = patience_s
        self.complaints = []
        self.waiting = b""
        self.last_id = 0
        read_commands, self.write_end = os.pipe()
        self.read_end, write_answers = os.pipe()

        def take_ends():  # the browser reads commands from descriptor 3 and answers on 4
            spare = [os.dup2(read_commands, 50), os.dup2(write_answers, 51)]
            os.dup2(spare[0], 3)
            os.dup2(spare[1], 4)

        self.process = subprocess.Popen([path, f"--user-data-dir={self.profile.name}", *ARGUMENTS], close_fds=False,
                                        preexec_fn=take_ends, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(read_commands)
        os.close(write_answers)
        pages = [t for t in self.send("Target.getTargets")["targetInfos"] if t["type"] == "page"]
        self.session = None
        self.session = self.send("Target.attachToTarget", targetId=pages[0]["targetId"], flatten=True)["sessionId"]
        for domain in ("Page", "Runtime", "Log"):
            self.send(f"{domain}.enable")

    def __enter__(self):
        return self

    def __exit__(self, *_):
        os.close(self.write_end)  # the browser ends when its pipe does
        try:
            self.process.wait(timeout=20)
        except subprocess.TimeoutExpired:
            self.process.kill()
            self.process.wait()
        os.close(self.read_end)
        self.profile.cleanup()

    def send(self, method, **parameters):
        """Sends one command and returns its result; what the page complains of meanwhile is kept."""
        self.last_id += 1
        message = {"id": self.last_id, "method": method, "params": parameters}
        if getattr(self, "session", None):
            message["sessionId"] = self.session
        os.write(self.write_end, json.dumps(message).encode() + b"\0")
        while True:
            answer = self._receive()
            if answer.get("id") == self.last_id:
                if "error" in answer:
                    raise RuntimeError(f"{method}: {answer['error']['message']}")
                return answer["result"]

    def open(self, address, width, height, dark=False):
        """Loads a page at a window size [px]; waits until it has loaded."""
        self.complaints.clear()
        self.send("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=1,
                  mobile=width < 600)
        self.send("Emulation.setEmulatedMedia",
                  features=[{"name": "prefers-color-scheme", "value": "dark" if dark else "light"}])
        self.send("Page.navigate", url=address)
        self.evaluate("new Promise(r => document.readyState === 'complete' ? r() : addEventListener('load', r))")

    def evaluate(self, script):
        """The value of an expression in the page; promises are awaited."""
        result = self.send("Runtime.evaluate", expression=script, awaitPromise=True, returnByValue=True)
        if "exceptionDetails" in result:
            details = result["exceptionDetails"]
            raise RuntimeError(details.get("exception", {}).get("description", details["text"]))
        return result["result"].get("value")

    def _receive(self):
        until = time.monotonic() + self.patience_s
        while b"\0" not in self.waiting:
            if not select.select([self.read_end], [], [], max(0.0, until - time.monotonic()))[0]:
                raise TimeoutError("the browser does not answer")
            part = os.read(self.read_end, 1 << 16)
            if not part:
                raise RuntimeError("the browser has gone")
            self.waiting += part
        text, self.waiting = self.waiting.split(b"\0", 1)
        message = json.loads(text)
        self._note(message)
        return message

    def _note(self, message):
        """Keeps console warnings and errors, exceptions, and what the browser itself logs as an error."""
        method, what = message.get("method"), message.get("params", {})
        if method == "Runtime.consoleAPICalled" and what["type"] in ("error", "warning", "assert"):
            self.complaints.append("console: " + " ".join(str(a.get("value")) for a in what["args"]))
        elif method == "Runtime.exceptionThrown":
            self.complaints.append("exception: " + what["exceptionDetails"]["text"])
        elif method == "Log.entryAdded" and what["entry"]["level"] in ("error", "warning"):
            self.complaints.append("log: " + what["entry"]["text"])
