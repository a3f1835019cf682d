// Controls that are seen though scripts are off, and do nothing then.
() => {
  const named = (e) => `${e.tagName.toLowerCase()} “${(e.textContent || e.name).trim().slice(0, 40)}”`;
  const controls = [...document.querySelectorAll("button, input, select, textarea")].filter(
    (e) => e.checkVisibility({ visibilityProperty: true }) && !e.closest("form[action]"),
  );
  const faults = controls.slice(0, 3).map((e) => `${named(e)} does nothing without scripts`);
  if (!document.querySelector("main")?.innerText.trim()) faults.push("nothing to read without scripts");
  return faults;
}
