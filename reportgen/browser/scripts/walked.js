// After the keys were pressed: what was passed over, met out of order, or hidden when it had the focus.
() => {
  const named = (e) => `${e.tagName.toLowerCase()} “${e.textContent.trim().replace(/\s+/g, " ").slice(0, 30)}”`;
  const { wanted, met, hidden } = window.__walk;
  const faults = [];
  const passed = wanted.filter((e) => !met.includes(e));
  if (passed.length) faults.push(`Tab passes over ${passed.slice(0, 3).map(named).join(", ")}`);
  const order = met.filter((e) => wanted.includes(e)).slice(0, wanted.length - passed.length);
  const wrong = order.find((e, n) => n && wanted.indexOf(e) < wanted.indexOf(order[n - 1]));
  if (wrong) faults.push(`Tab comes to ${named(wrong)} too late`);
  if (hidden.length) faults.push(`something covers ${hidden.slice(0, 3).map(named).join(", ")} when it has the focus`);
  return faults;
}
