"""Vibration by the phone: what its sensor felt goes through calc into How fast?, if the maker wants it."""

from __future__ import annotations

import re

from tests.browser.maker import Maker

#: A phone on a headstock that moves to and fro five times a second, 0.3 m/s2 root mean square, beside gravity.
SHAKEN = """(() => {
  document.querySelector('[data-component=meter]').dataset.seconds = '7';
  window.shaking = setInterval(() => {
    const x = 0.3 * Math.SQRT2 * Math.cos(2 * Math.PI * 5 * performance.now() / 1000);
    dispatchEvent(new DeviceMotionEvent('devicemotion', { accelerationIncludingGravity: { x, y: 0, z: 9.81 } }));
  }, 16);
  return true;
})()"""


def test_a_vibration_that_was_felt_is_taken_over(chromium: Maker) -> None:
    chromium.go("how-fast/")
    before = chromium.eval("document.querySelector('[data-component=meter]').getBoundingClientRect().height")
    chromium.eval(SHAKEN)
    chromium.tap("button", "Measure for half a minute")
    chromium.wait_text("Take it only if", css="[data-part=said]", timeout=40)
    chromium.eval("(clearInterval(window.shaking), 1)")
    found = re.search(r"([\d.]+) mm/s at (\d+) rpm", chromium.text("[data-part=said]"))
    assert found, chromium.text("[data-part=said]")
    assert abs(int(found[2]) - 300) <= 10  # five a second
    assert abs(float(found[1]) - 9.55) <= 0.6  # 0.3 / (2 pi 5)
    assert chromium.eval("document.querySelector('[data-component=meter]').getBoundingClientRect().height") == before
    chromium.tap("button", "Take it over")
    chromium.wait_value("vibration", f"{found[1]} mm/s")
    assert chromium.value("felt") == "measured" and chromium.value("felt_speed") == f"{found[2]} rpm"


def test_a_device_without_a_sensor_says_so(chromium: Maker) -> None:
    chromium.go("how-fast/")
    chromium.eval("(document.querySelector('[data-component=meter]').dataset.seconds = '1', 1)")
    chromium.tap("button", "Measure for half a minute")
    chromium.wait_text("some phones give none", css="[data-part=said]")
    assert chromium.eval("document.querySelector('[data-component=meter] [data-part=take]').disabled")
