// What still moves for a reader whose system asks for less motion.
() => {
  const named = (e) =>
    e.tagName.toLowerCase() + (e.id ? "#" + e.id : "") + [...e.classList].map((c) => "." + c).join("");
  const long = (times) => times.split(",").some((time) => parseFloat(time) > 0.001);
  const moves = (e) => {
    const s = getComputedStyle(e);
    return (s.animationName !== "none" && long(s.animationDuration)) || long(s.transitionDuration);
  };
  const faults = [...document.querySelectorAll("*")].filter(moves).slice(0, 3).map(named);
  if (getComputedStyle(document.documentElement).scrollBehavior === "smooth") faults.push("scrolling");
  if (document.querySelector("marquee, blink, svg animate, svg animateTransform, svg animateMotion")) {
    faults.push("a drawing");
  }
  return faults;
}
