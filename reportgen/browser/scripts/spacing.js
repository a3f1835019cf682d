// What is cut or leaves the page once text is spaced as WCAG 1.4.12 allows a reader to space it.
() => {
  const named = (e) =>
    e.tagName.toLowerCase() + (e.id ? "#" + e.id : "") + [...e.classList].map((c) => "." + c).join("");
  const spaced = new CSSStyleSheet();
  spaced.replaceSync(
    "* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important }" +
      " p { margin-block-end: 2em !important }",
  );
  const before = [...document.adoptedStyleSheets]; // the list itself would change with the next line
  document.adoptedStyleSheets = [...before, spaced];
  const hides = (style) => [style.overflowX, style.overflowY].some((way) => way === "hidden" || way === "clip");
  const seen = (e) => e.clientWidth > 2 && e.clientHeight > 2 && e.checkVisibility();
  const cut = [...document.body.querySelectorAll("*:not(svg, svg *)")].filter(
    (e) =>
      e.textContent.trim() &&
      hides(getComputedStyle(e)) &&
      seen(e) &&
      (e.scrollWidth > e.clientWidth + 1 || e.scrollHeight > e.clientHeight + 1),
  );
  const faults = cut.slice(0, 3).map((e) => `${named(e)} is cut`);
  const root = document.documentElement;
  if (root.scrollWidth > root.clientWidth) faults.push("the page is wider than its window");
  document.adoptedStyleSheets = before;
  return faults;
}
