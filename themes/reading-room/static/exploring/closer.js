// Looking closer along time: twice, four times, eight times as close, with ticks that were printed for each.
"use strict";
window.exploring.parts.push((chart) => {
  const { made, drawn, filled } = window.exploring;
  const { told, says, box, drawing, field } = chart;
  if (!told.ticks || told.ticks.length < 2) return;
  const { wide, high, ticks, moving } = told;
  let level = 0;
  let from = 0; // left edge of what is on view, on the whole field

  const id = `on-view-${chart.figure.id}`;
  const clip = drawn("clipPath", { id });
  clip.append(drawn("rect", { x: -7, y: -40, width: wide + 14, height: high + 80 }));
  drawing.prepend(clip);
  const own = drawn("g", { class: "own-ticks" });
  const marks = moving.map((name) => ({ name, all: chart.layer(name) }));
  const places = new Map(marks.flatMap(({ all }) => all).map((mark) => [mark, mark.getAttribute("transform")]));
  const [tick] = chart.layer("ticks");
  tick.parentNode.after(own);
  for (const { all } of marks) if (all.length) all[0].parentNode.setAttribute("clip-path", `url(#${id})`);
  const ends = told.walks.map((_, n) =>
    [...chart.layer(`end-marks-${n}`), ...chart.layer(`end-names-${n}`)].map((mark) => [mark, mark.getAttribute("transform")]),
  );

  const times = () => 2 ** level;
  chart.across = (x) => (x - from) * times();
  chart.back = (x) => x / times() + from;

  function place(mark, was) {
    const moved = /^translate\(([-\d.]+),([-\d.]+)\)$/.exec(was || "");
    if (level === 0) {
      mark.removeAttribute("vector-effect");
      if (was) mark.setAttribute("transform", was);
      else mark.removeAttribute("transform");
    } else if (!moved) {
      mark.setAttribute("transform", `matrix(${times()} 0 0 1 ${-from * times()} 0)`);
      mark.setAttribute("vector-effect", "non-scaling-stroke");
    } else {
      const long = mark.tagName === "line" && Number(mark.getAttribute("x2"));
      const to = `translate(${chart.across(Number(moved[1]))},${moved[2]})`;
      mark.setAttribute("transform", long ? `${to} scale(${times()} 1)` : to);
    }
  }

  // Mark and letter of each line stand where it leaves the view, moved apart.
  function placeEnds() {
    const right = from + wide / times();
    const wanted = told.walks.map(({ stops }, n) => {
      const last = stops.reduce((kept, s) => (s[0] <= right ? s : kept), stops[0]);
      return { n, x: Math.min(wide, chart.across(last[0])), y: last[1], gone: chart.across(last[0]) < 0 };
    });
    let floor = -Infinity;
    for (const { n, x, y, gone } of wanted.sort((a, b) => a.y - b.y)) {
      const to = Math.max(y, floor + 13);
      if (!gone) floor = to;
      ends[n].forEach(([mark, was], turn) => {
        mark.classList.toggle("away", level > 0 && gone);
        mark.setAttribute("transform", level ? `translate(${x + (turn ? 13 : 7)},${to + (turn ? 3 : 0)})` : was);
      });
    }
  }

  function show() {
    for (const [mark, was] of places) place(mark, was);
    placeEnds();
    for (const name of ["ticks", "notches"]) {
      for (const mark of chart.layer(name)) mark.classList.toggle("away", level > 0);
    }
    const seen = ticks[level].filter(([x]) => chart.across(x) >= -1 && chart.across(x) <= wide + 1);
    own.replaceChildren();
    for (const [x, text] of level ? seen : []) {
      const named = tick.cloneNode();
      named.classList.remove("away");
      for (const name of tick.parentNode.attributes) if (name.name !== "class" && name.name !== "clip-path") named.setAttribute(name.name, name.value);
      named.setAttribute("transform", `translate(${chart.across(x)},${/,([-\d.]+)\)/.exec(tick.getAttribute("transform"))[1]})`);
      named.textContent = text;
      own.append(named);
    }
    const [first, last] = [seen[0], seen[seen.length - 1]];
    view.textContent = level && first ? filled(says.view, { from: first[1], to: last[1], unit: told.unit }) : says.whole;
    buttons.closer.disabled = level === ticks.length - 1;
    buttons.wider.disabled = level === 0;
    buttons.earlier.disabled = from <= 0;
    buttons.later.disabled = from >= wide - wide / times() - 0.01;
  }

  function move(to) {
    from = Math.min(Math.max(0, to), wide - wide / times());
    show();
  }

  chart.reach = (x) => {
    const view = wide / times();
    if (x < from) move(x - view / 4);
    else if (x > from + view) move(x - (3 * view) / 4);
  };
  chart.zoom = (by) => {
    level = Math.min(Math.max(0, level + by), ticks.length - 1);
    move((chart.at ?? wide / 2) - wide / times() / 2);
    chart.change();
  };
  function shift(by) {
    const x = chart.across(chart.at);
    move(from + (by * wide) / times() / 2);
    chart.meet(chart.back(x));
  }

  const does = { closer: () => chart.zoom(1), wider: () => chart.zoom(-1), earlier: () => shift(-1), later: () => shift(1) };
  const buttons = Object.fromEntries(
    Object.entries(does).map(([name, act]) => {
      const button = made("button", { type: "button" }, says[name]);
      button.addEventListener("click", act);
      return [name, button];
    }),
  );
  const view = made("span", { class: "view", role: "status" });
  box.append(made("p", { class: "closer", role: "group", "aria-label": says.time }, ...Object.values(buttons), view));
  chart.figure.addEventListener("explored", () => {
    level = 0;
    move(0);
  });
  show();
});
