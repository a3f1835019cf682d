// From value to value, by keys and by pointing: a ring round its mark, and its words.
"use strict";
window.exploring.parts.push((chart) => {
  const { made, drawn } = window.exploring;
  const { told, people, says, box, drawing, field, hidden } = chart;
  const status = made("p", { class: "met", role: "status" });
  const slider = made("input", { type: "range", min: "0", step: "1", dir: "ltr" });
  const halo = drawn("circle", { class: "met-halo", r: "9" });
  const ring = drawn("circle", { class: "met-ring", r: "9" });
  let walk = 0;
  let stop = 0;
  field.append(halo, ring);

  const seen = () => told.walks.map((_, n) => n).filter((n) => !hidden.has(told.walks[n].of));

  function show() {
    const open = seen();
    for (const circle of [halo, ring]) circle.classList.toggle("off", !open.length || box.hidden);
    slider.disabled = !open.length;
    if (!open.length) {
      status.textContent = says.nothing;
      return;
    }
    if (!open.includes(walk)) [walk, stop] = [open.find((n) => n > walk) ?? open[0], 0];
    const { of, stops } = told.walks[walk];
    const [x, y, words] = stops[stop];
    chart.at = x;
    chart.reach(x);
    for (const circle of [halo, ring]) {
      circle.setAttribute("cx", chart.across(x));
      circle.setAttribute("cy", y);
    }
    if (status.textContent !== words) status.textContent = words;
    slider.max = stops.length - 1;
    slider.value = stop;
    slider.setAttribute("aria-valuetext", people[of] ? people[of].title : words);
  }

  function nearest(stops, x, y) {
    const off = stops.map((s) => Math.hypot(s[0] - x, y === undefined ? 0 : s[1] - y));
    const least = Math.min(...off);
    return { n: off.indexOf(least), least };
  }

  // To the line above or below: along traces to the same time, else to the value at the same turn.
  function change(by) {
    const open = seen();
    const next = open[open.indexOf(walk) + by];
    if (next === undefined) return;
    const { stops } = told.walks[next];
    stop = told.ticks ? nearest(stops, told.walks[walk].stops[stop][0]).n : Math.min(stop, stops.length - 1);
    walk = next;
  }

  function step(by) {
    const open = seen();
    const { stops } = told.walks[walk];
    const to = stop + by;
    const next = open[open.indexOf(walk) + Math.sign(by)];
    if (to >= 0 && to < stops.length) stop = to;
    else if (Math.abs(by) > 1 || next === undefined) stop = by > 0 ? stops.length - 1 : 0;
    else [walk, stop] = [next, by > 0 ? 0 : told.walks[next].stops.length - 1];
  }

  const KEYS = {
    ArrowRight: () => step(1),
    ArrowLeft: () => step(-1),
    ArrowDown: () => change(1),
    ArrowUp: () => change(-1),
    PageUp: () => step(-10),
    PageDown: () => step(10),
    Home: () => (stop = 0),
    End: () => (stop = told.walks[walk].stops.length - 1),
    "+": () => chart.zoom && chart.zoom(1),
    "-": () => chart.zoom && chart.zoom(-1),
  };
  slider.addEventListener("keydown", (event) => {
    const go = KEYS[event.key];
    if (!go || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    if (seen().length) go();
    show();
  });
  slider.addEventListener("input", () => {
    stop = Number(slider.value);
    show();
  });

  function point(event) {
    const matrix = field.getScreenCTM();
    if (box.hidden || !matrix || !seen().length) return;
    const spot = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    const found = seen().map((n) => ({ walk: n, ...nearest(told.walks[n].stops, chart.back(spot.x), spot.y) }));
    const best = found.reduce((a, b) => (b.least < a.least ? b : a));
    [walk, stop] = [best.walk, best.n];
    show();
  }
  drawing.addEventListener("pointermove", (event) => event.pointerType !== "touch" && point(event));
  drawing.addEventListener("pointerdown", point);

  chart.meet = (x) => {
    stop = nearest(told.walks[walk].stops, x).n;
    show();
  };

  const label = made("label", { class: "walk" }, made("span", {}, says.walk), slider);
  box.append(status, label, made("p", { class: "ways" }, says.ways));
  chart.changed.push(show);
  chart.figure.addEventListener("explore", show);
  chart.figure.addEventListener("explored", show);
});
