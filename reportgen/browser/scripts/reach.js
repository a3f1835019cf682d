// What lies outside the page at this width, unless it is in a box of its own that scrolls.
() => {
  const named = (e) =>
    e.tagName.toLowerCase() + (e.id ? "#" + e.id : "") + [...e.classList].map((c) => "." + c).join("");
  const root = document.documentElement;
  const across = root.clientWidth;
  const faults = [];

  if (root.scrollWidth > across) {
    const spills = (e) =>
      getComputedStyle(e).overflowX === "visible" ? Math.max(0, e.scrollWidth - e.clientWidth) : 0;
    const outside = (e) => {
      const box = e.getBoundingClientRect();
      return box.right + spills(e) > across + 1 || box.left < -1;
    };
    const boxed = (e) => {
      for (let up = e.parentElement; up && up !== document.body; up = up.parentElement) {
        if (getComputedStyle(up).overflowX !== "visible") return true;
      }
      return false;
    };
    const wide = [...document.body.querySelectorAll("*")].filter((e) => outside(e) && !boxed(e));
    const innermost = wide.filter((e) => !wide.some((other) => other !== e && e.contains(other)));
    faults.push(innermost.slice(0, 3).map(named).join(", ") || "the page");
  }
  return faults;
}
