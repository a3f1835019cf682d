// A reader points at a choice of weights, and the sentence for it is shown. Every sentence was written at compile time.
"use strict";
{
  const SVG = "http://www.w3.org/2000/svg";
  const box = document.querySelector(".pointing");
  const drawing = document.querySelector("svg.drawing.weights");
  const told = JSON.parse(box.querySelector("script").textContent);
  const sliders = [...box.querySelectorAll("input")];
  const printed = [...box.querySelectorAll(".percent")];
  const status = box.querySelector(".pointed");
  const { corners, steps } = told;
  let at = sliders.map((s) => Number(s.value));
  let wish = at; // as the reader left them: how the others share what one leaves

  const ring = ["halo", "ring"].map((name) => {
    const circle = document.createElementNS(SVG, "circle");
    circle.setAttribute("class", name);
    circle.setAttribute("r", "10");
    return drawing.appendChild(circle);
  });

  // Cells are told by the steps of the first group, then of the second.
  function cell([first, second]) {
    if (corners.length === 2) return first;
    return first * (steps + 1) - (first * (first - 1)) / 2 + second;
  }

  function show() {
    const n = cell(at);
    const said = `${told.weights[n]} ${told.says[told.leads[n]]}`;
    if (status.textContent !== said) status.textContent = said;
    at.forEach((count, i) => {
      sliders[i].value = count;
      sliders[i].setAttribute("aria-valuetext", told.percents[count]);
      printed[i].textContent = told.percents[count];
    });
    for (const circle of ring) {
      circle.setAttribute("cx", at.reduce((sum, c, i) => sum + (c / steps) * corners[i][0], 0));
      circle.setAttribute("cy", at.reduce((sum, c, i) => sum + (c / steps) * corners[i][1], 0));
    }
  }

  // Shares become whole steps that add up to `sum`: what rounding leaves over goes to where it is missed most.
  function inSteps(shares, sum) {
    const kept = shares.map((s) => Math.max(0, s));
    const all = kept.reduce((a, b) => a + b, 0);
    const exact = kept.map((s) => (all ? (s * sum) / all : sum / kept.length));
    const whole = exact.map((e) => Math.floor(e + 1e-9));
    const order = exact.map((e, i) => i).sort((a, b) => exact[b] - whole[b] - (exact[a] - whole[a]));
    for (let left = sum - whole.reduce((a, b) => a + b, 0), k = 0; left > 0; left--, k++) whole[order[k]]++;
    return whole;
  }

  // Where the reader points, as shares of the corners.
  function shares(event) {
    const matrix = drawing.getScreenCTM();
    if (!matrix) return null;
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    const [[ax, ay], [bx, by], c] = corners;
    if (!c) {
      const along = Math.min(1, Math.max(0, (x - ax) / (bx - ax)));
      return [1 - along, along];
    }
    const whole = (by - c[1]) * (ax - c[0]) + (c[0] - bx) * (ay - c[1]);
    const a = ((by - c[1]) * (x - c[0]) + (c[0] - bx) * (y - c[1])) / whole;
    const b = ((c[1] - ay) * (x - c[0]) + (ax - c[0]) * (y - c[1])) / whole;
    return [a, b, 1 - a - b];
  }

  function point(event) {
    const found = shares(event);
    if (!found || Math.min(...found) < -0.12) return;
    at = wish = inSteps(found, steps);
    show();
  }

  // One group counts so much; the others share the rest as the reader left them.
  function slide(moved) {
    const count = Number(sliders[moved].value);
    const others = wish.filter((_, i) => i !== moved);
    const shared = inSteps(others, steps - count);
    at = wish.map((_, i) => (i === moved ? count : shared[i > moved ? i - 1 : i]));
    wish = wish.map((w, i) => (i === moved ? count : w));
    show();
  }

  drawing.addEventListener("click", point);
  drawing.addEventListener("pointermove", (event) => {
    if (event.buttons === 1 && event.pointerType !== "touch") point(event);
  });
  sliders.forEach((slider, i) => slider.addEventListener("input", () => slide(i)));
  drawing.classList.add("open-to-pointing");
  box.hidden = false;
  show();
}
