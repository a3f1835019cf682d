// When something was first seen, in ms, and how far things moved by themselves; the page is gone through to its end.
async () => {
  const shifts = [];
  const watch = new PerformanceObserver((list) => shifts.push(...list.getEntries()));
  watch.observe({ type: "layout-shift", buffered: true });
  const still = (ms) => new Promise((done) => setTimeout(done, ms));
  const root = document.documentElement;
  for (let at = 0; at < root.scrollHeight && at < 40000; at += 2 * innerHeight) {
    scrollTo({ top: at, behavior: "instant" });
    await still(20);
  }
  await still(300);
  shifts.push(...watch.takeRecords());
  const moved = shifts.filter((shift) => !shift.hadRecentInput);
  const what = moved.flatMap((s) => s.sources.map((o) => o.node?.className || o.node?.nodeName || "")).slice(0, 3);
  const paint = performance.getEntriesByName("first-contentful-paint")[0];
  return { painted: paint ? paint.startTime : 0, shift: moved.reduce((sum, s) => sum + s.value, 0), what };
}
