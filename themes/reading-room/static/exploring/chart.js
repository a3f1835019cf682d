// A chart that is explored: its drawing, its values and words as they were compiled, and where the reader is.
"use strict";
{
  const SVG = "http://www.w3.org/2000/svg";

  window.exploring.drawn = (name, attributes) => {
    const made = document.createElementNS(SVG, name);
    for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
    return made;
  };

  window.exploring.made = (name, attributes, ...children) => {
    const made = document.createElement(name);
    for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
    made.append(...children);
    return made;
  };

  // Gaps of a phrase filled with words that were printed at compile time.
  window.exploring.filled = (phrase, gaps) => phrase.replace(/\{(\w+)\}/g, (_, gap) => gaps[gap]);

  window.exploring.begin = (figure, address) => {
    const { chart: told, people, says } = window.exploring.charts.get(address);
    const drawing = figure.querySelector("svg.drawing");
    const box = window.exploring.made("div", { class: "exploring", role: "group", "aria-label": says.exploring });
    drawing.after(box);
    const chart = {
      figure, drawing, box, told, people, says,
      field: drawing.querySelector("g"), // its origin is that of all places in `told`
      hidden: new Set(), // places of contenders that the reader has turned off
      across: (x) => x, // from the whole field to what is on view, in px
      back: (x) => x,
      reach: () => {}, // brings a place into view
      changed: [], // who wants to hear of any change
      layer: (name) => {
        const found = drawing.querySelector(`.d-${CSS.escape(name)}`);
        return !found ? [] : found.tagName === "g" ? [...found.children] : [found];
      },
      change: () => chart.changed.forEach((hear) => hear()),
    };
    for (const part of window.exploring.parts) part(chart);
    return box;
  };
}
