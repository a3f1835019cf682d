// What a sheet as wide as the window would cut off. A box that scrolls on a screen is cut on paper.
() => {
  const named = (e) =>
    e.tagName.toLowerCase() + (e.id ? "#" + e.id : "") + [...e.classList].map((c) => "." + c).join("");
  const across = document.documentElement.clientWidth;
  const seen = (e) => {
    const box = e.getBoundingClientRect();
    return box.width > 2 && box.height > 2 && e.checkVisibility({ visibilityProperty: true });
  };
  const cut = (e) => {
    const style = getComputedStyle(e);
    return style.overflowX !== "visible" && e.scrollWidth > e.clientWidth + 1;
  };
  return [...document.body.querySelectorAll("*:not(svg *)")]
    .filter((e) => seen(e) && (e.getBoundingClientRect().right > across + 1 || e.getBoundingClientRect().left < -1 || cut(e)))
    .slice(0, 3)
    .map(named);
}
