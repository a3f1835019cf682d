// With axe-core there: barriers by those of its rules that are given, or by the success criteria of WCAG 2.2, A and AA, and its good practices.
async (rules) => {
  const all = { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"], rules: { "target-size": { enabled: true } } };
  const told = await axe.run(document, { ...(rules.length ? { runOnly: { type: "rule", values: rules } } : all), resultTypes: ["violations"] });
  return told.violations.map((v) => {
    const where = v.nodes.slice(0, 3).map((n) => n.target.join(" "));
    return `${v.help} (${v.id}, ${v.impact}): ${where.join(", ")}`;
  });
}
