// Contenders on and off: every mark of one that is off stays away.
"use strict";
window.exploring.parts.push((chart) => {
  const { made, drawn } = window.exploring;
  const { told, people, says, hidden } = chart;
  const there = new Set([...Object.values(told.owners).flat(), ...told.walks.map((walk) => walk.of)]);
  const shown = people.map((_, place) => place).filter((place) => there.has(place));
  if (shown.length < 2) return;

  function turn(place, on) {
    if (on) hidden.delete(place);
    else hidden.add(place);
    for (const [layer, owners] of Object.entries(told.owners)) {
      chart.layer(layer).forEach((mark, n) => {
        if (owners[n] === place) mark.classList.toggle("off", !on);
      });
    }
    chart.change();
  }

  // A contender's mark, as it stands in the drawing.
  function sign(place) {
    const layers = Object.entries(told.owners).filter(([layer, owners]) => /marks/.test(layer) && owners.includes(place));
    const found = layers.map(([layer, owners]) => chart.layer(layer)[owners.indexOf(place)])[0];
    const mark = drawn("svg", { class: `mark ${people[place].css}`, viewBox: "-5 -5 10 10", "aria-hidden": "true" });
    if (found) mark.append(drawn("path", { d: found.getAttribute("d") }));
    return mark;
  }

  const choices = shown.map((place) => {
    const tick = made("input", { type: "checkbox" });
    tick.checked = true;
    tick.addEventListener("change", () => turn(place, tick.checked));
    return made("label", {}, tick, sign(place), ` ${people[place].letter} ${people[place].title}`);
  });
  const group = made("fieldset", { class: "owners" }, made("legend", {}, says.shown), ...choices);
  chart.figure.addEventListener("explored", () => {
    for (const [n, place] of shown.entries()) {
      if (hidden.has(place)) turn(place, true);
      choices[n].querySelector("input").checked = true;
    }
  });
  chart.box.append(group);
});
