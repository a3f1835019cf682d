// Offers to explore a chart; what that takes is loaded when a reader asks for it, and not before.
"use strict";
{
  const here = document.currentScript;
  const PARTS = ["chart.js", "walk.js", "owners.js", "closer.js"];
  let parts; // once asked for, a promise that all of them are there

  window.exploring = { parts: [], charts: new Map() };

  function load(address) {
    return new Promise((there, missing) => {
      const script = document.createElement("script");
      script.src = address;
      script.async = false;
      script.addEventListener("load", there);
      script.addEventListener("error", missing);
      document.head.append(script);
    });
  }

  function loadParts() {
    const sheet = document.createElement("link");
    sheet.rel = "stylesheet";
    sheet.href = new URL("exploring/exploring.css", here.src).href;
    const styled = new Promise((there) => ["load", "error"].forEach((end) => sheet.addEventListener(end, there)));
    document.head.append(sheet);
    return Promise.all([styled, ...PARTS.map((name) => load(new URL(`exploring/${name}`, here.src).href))]);
  }

  async function explore(button, offer) {
    const figure = button.closest("figure");
    let box = figure.querySelector(".exploring");
    if (!box) {
      button.disabled = true;
      try {
        parts = parts || loadParts();
        await Promise.all([parts, load(here.dataset.charts + button.dataset.chart + ".js")]);
      } catch {
        button.hidden = true; // a file is missing: the page is whole without it
        return;
      }
      button.disabled = false;
      box = window.exploring.begin(figure, button.dataset.chart);
      box.hidden = true;
    }
    box.hidden = !box.hidden;
    button.setAttribute("aria-expanded", String(!box.hidden));
    button.textContent = box.hidden ? offer : window.exploring.charts.get(button.dataset.chart).says.close;
    figure.dispatchEvent(new CustomEvent(box.hidden ? "explored" : "explore"));
    if (!box.hidden) box.querySelector("input").focus({ preventScroll: true });
  }

  for (const button of document.querySelectorAll("button.explore")) {
    button.hidden = false;
    button.setAttribute("aria-expanded", "false");
    const offer = button.textContent;
    button.addEventListener("click", () => explore(button, offer));
  }
}
