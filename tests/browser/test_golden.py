"""The worker in each browser answers as this Python does, to the last letter and the last bit that is shown."""

from __future__ import annotations

import json

from tests.browser import calc_says
from tests.browser.maker import Maker

GOLDEN: tuple[tuple[str, str, dict[str, str]], ...] = (
    ("how-fast", "metric", {"diameter": "350"}),
    ("how-fast", "imperial", {"diameter": "13 3/4", "condition": "solid", "balance": "even", "lathe": "heavy"}),
    ("how-fast", "metric", {"diameter": "500", "operation": "paste", "condition": "filled", "balance": "weight", "weight": "120", "weight_radius": "180"}),
    ("how-fast", "metric", {"diameter": "500", "operation": "sand", "condition": "solid", "balance": "known", "eccentricity": "2,5", "far_end": "live"}),
    ("how-fast", "imperial", {"operation": "buff", "wheel": "8", "wheel_marked": "3450"}),
    ("how-fast", "metric", {"diameter": "300", "speeds": "steps", "steps": "200 400 650 1000", "condition": "filled", "balance": "done"}),
    ("how-fast", "metric", {"diameter": "14"}),
    ("how-fast", "metric", {"diameter": "two feet"}),
    ("how-fast", "metric", {}),
    ("how-much-to-weigh", "metric", {"total": "1300", "ratio": "100:45", "by": "weight"}),
    ("how-much-to-weigh", "imperial", {"total": "2 lb 3 oz", "ratio": "2:1", "by": "weight", "capacity": "11 lb", "step": "0.1"}),
    ("how-much-to-weigh", "metric", {"known": "volume", "volume": "2000", "ratio": "2:1", "by": "volume", "density_a": "1.12", "density_b": "0.97"}),
    ("how-much-to-weigh", "metric", {"total": "9000", "ratio": "100:30", "by": "weight", "capacity": "3000", "bucket": "4", "working": "40"}),
    ("how-much-to-weigh", "metric", {"total": "1300", "ratio": "100:45", "by": "weight", "in_a": "950"}),
    ("before-a-pour", "metric", {"depth": "60", "sheet_depth": "50", "mass": "5000", "working": "40", "handling": "35"}),
    ("before-a-pour", "imperial", {"depth": "1", "sheet_depth": "2", "room": "70", "lowest": "64", "highest": "82"}),
)

ALL = """(async (questions) => {
  const app = document.querySelector('script[type=module]').src;
  const { DeskClient } = await import(app.replace('app.js', 'desk-client.js'));
  const desk = new DeskClient();
  const answers = [];
  for (const [id, units, inputs] of questions) answers.push(await desk.call('answer', { id, inputs, units, confirmed: {} }));
  desk.stop();
  return answers;
})"""


def test_the_worker_answers_as_this_python_does(maker: Maker) -> None:
    maker.go("about/")
    answers = maker.eval(f"{ALL}({json.dumps(GOLDEN)})")
    for (question, units, inputs), answer in zip(GOLDEN, answers, strict=True):
        assert answer == calc_says.answer(question, units, **inputs), (question, inputs)
