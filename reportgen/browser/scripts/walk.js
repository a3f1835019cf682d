// Before keys are pressed: what they should reach, in order. Each arrival is written down, with whether it is hidden.
() => {
  const radios = (e) => e.type !== "radio" || e.checked || !document.querySelector(`input[name="${e.name}"]:checked`);
  const wanted = [...document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex]")].filter(
    (e) => e.tabIndex >= 0 && !e.disabled && radios(e) && e.checkVisibility({ visibilityProperty: true }),
  );
  const walk = { wanted, met: [], hidden: [] };
  window.__walk = walk;
  document.activeElement?.blur();
  addEventListener("focusin", ({ target }) => {
    walk.met.push(target);
    const box = [...target.getClientRects()].find((b) => b.width && b.height);
    if (!box) return;
    const points = [
      [box.left + box.width / 2, box.top + box.height / 2],
      [box.left + 2, box.top + 2],
      [box.right - 2, box.bottom - 2],
    ];
    const above = points.map(([x, y]) => document.elementFromPoint(x, y));
    if (above.every((e) => e && !target.contains(e) && !e.contains(target))) walk.hidden.push(target);
  });
  return wanted.length;
}
