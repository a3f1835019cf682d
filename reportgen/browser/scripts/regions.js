// Boxes that scroll sideways and that keyboards or voices can't use.
() => {
  const named = (e) =>
    e.tagName.toLowerCase() + (e.id ? "#" + e.id : "") + [...e.classList].map((c) => "." + c).join("");
  const scrolls = (e) =>
    e.scrollWidth > e.clientWidth + 1 && ["auto", "scroll"].includes(getComputedStyle(e).overflowX);
  const reachable = (e) => e.tabIndex >= 0;
  const hasName = (e) => e.getAttribute("aria-label") || e.getAttribute("aria-labelledby");
  return [...document.body.querySelectorAll("*")]
    .filter((e) => scrolls(e) && !(reachable(e) && hasName(e)))
    .slice(0, 3)
    .map(named);
}
