// Run in a page, with axe already there: what can only be seen once it is laid out.
async () => {
  const named = (e) =>
    e.tagName.toLowerCase() + (e.id ? "#" + e.id : "") + [...e.classList].map((c) => "." + c).join("");

  const across = document.documentElement.clientWidth;
  const overflows = document.documentElement.scrollWidth > across;
  const reach = (e) => {
    const box = e.getBoundingClientRect();
    const spills = getComputedStyle(e).overflowX === "visible" ? e.scrollWidth - e.clientWidth : 0;
    return box.right + Math.max(0, spills);
  };
  const wide = [...document.body.querySelectorAll("*")].filter((e) => reach(e) > across + 1);

  const withoutText = [...document.querySelectorAll("img:not([alt]), svg[role=img]")].filter(
    (e) =>
      e.tagName === "IMG" ||
      !(e.getAttribute("aria-label") || e.getAttribute("aria-labelledby") || e.querySelector(":scope > title")),
  );

  const told = await axe.run(document, { resultTypes: ["violations"] });
  return {
    overflow: overflows ? wide.slice(0, 3).map(named).join(", ") || "the page" : "",
    without: withoutText.map((e) => (e.tagName === "IMG" ? "the image " + e.getAttribute("src") : "a drawing")),
    barriers: told.violations.map((v) => ({
      id: v.id,
      impact: v.impact,
      help: v.help,
      where: v.nodes.slice(0, 3).map((n) => n.target.join(" ")),
    })),
  };
}
