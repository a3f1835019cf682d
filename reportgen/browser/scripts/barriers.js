// With axe-core there: barriers by the rules it is given, or by WCAG 2.2, A and AA, and axe-core's good practices.
async (rules) => {
  const all = {
    runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    rules: { "target-size": { enabled: true } },
  };
  const some = { runOnly: { type: "rule", values: rules } };
  const told = await axe.run(document, { ...(rules.length ? some : all), resultTypes: ["violations"] });
  return told.violations.map((v) => {
    const where = v.nodes.slice(0, 3).map((n) => n.target.join(" "));
    return `${v.help} (${v.id}, ${v.impact}): ${where.join(", ")}`;
  });
}
