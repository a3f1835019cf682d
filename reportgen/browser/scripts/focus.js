// Whether keyboards reach everything that can be used, in the order it is read, and whether that is seen.
() => {
  const named = (e) =>
    e.tagName.toLowerCase() +
    (e.id ? "#" + e.id : "") +
    [...e.classList].map((c) => "." + c).join("") +
    (e.textContent.trim() ? ` “${e.textContent.trim().replace(/\s+/g, " ").slice(0, 30)}”` : "");
  const usable = [...document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex]")].filter(
    (e) => e.checkVisibility({ visibilityProperty: true }) && !e.disabled && !e.closest("[inert]"),
  );
  const faults = [];
  const tell = (what, which) => {
    if (which.length) faults.push(`${what}: ${which.slice(0, 3).map(named).join(", ")}`);
  };
  tell(
    "comes before what stands above it",
    usable.filter((e) => e.tabIndex > 0),
  );
  const moved = (e) => {
    const around = getComputedStyle(e.parentElement);
    const lies = /flex|grid/.test(around.display);
    return lies && (getComputedStyle(e).order !== "0" || /reverse/.test(around.flexDirection + around.flexWrap));
  };
  tell("is read in another order than it is seen", [...document.body.querySelectorAll("*")].filter(moved));
  tell(
    "can be pressed but not reached by keys",
    usable.filter((e) => e.tabIndex < 0 && e.matches("a, button, input, select, textarea, summary")),
  );
  const shown = (e) => {
    const s = getComputedStyle(e);
    const ring = s.outlineStyle !== "none" && parseFloat(s.outlineWidth) >= 1 ? s.outlineColor + s.outlineWidth : "";
    return [ring, s.backgroundColor, s.borderColor, s.boxShadow, s.textDecorationLine, s.color].join("|");
  };
  const lost = [];
  const unseen = [];
  for (const e of usable.filter((one) => one.tabIndex >= 0)) {
    const before = shown(e);
    e.focus({ preventScroll: true, focusVisible: true });
    if (document.activeElement !== e) lost.push(e);
    else if (shown(e) === before) unseen.push(e);
    e.blur();
  }
  tell("can't be given the focus", lost);
  tell("doesn't show that it has the focus", unseen);
  return faults;
}
